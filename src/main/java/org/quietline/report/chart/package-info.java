/** Charts as data become pictures. */
package org.quietline.report.chart;
