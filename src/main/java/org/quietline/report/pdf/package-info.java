/** Pages as values become PDF bytes. */
package org.quietline.report.pdf;
