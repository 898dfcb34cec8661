/**
 * Pages as values become PDF bytes, in two steps.
 *
 * <p>Start with {@link org.quietline.report.pdf.PdfReport}. The first step, layout, is pure: it
 * measures words with the bundled faces and turns a {@link org.quietline.report.Document} into
 * sheets of placed items (text runs, rules, boxes, pictures), each with its box in points and its
 * role in the text. The second step paints them. Only this package sees the PDF library; it writes
 * straight to the page content, so that each item can carry a structure tag.
 *
 * <p>Conventions: points, 72 to an inch; in layout the origin is the upper left corner of the sheet
 * and y runs down. Nothing stands outside the margins of 18 mm, no text is under 7.5 points. Equal
 * documents give equal bytes: dates, the file id and the names of font subsets are derived from the
 * content, never from a clock or a random source.
 */
package org.quietline.report.pdf;
