/** Findings become pages as values: words, tables, and charts as data. */
package org.quietline.report;
