/**
 * Charts as data become pictures, in one style.
 *
 * <p>Start with {@link org.quietline.report.chart.ChartPainter}. Only this package sees the chart
 * library. It draws what {@link org.quietline.report.Chart} says, on any {@link
 * java.awt.Graphics2D}, one unit a point; it computes no number and makes no text, apart from
 * replacing characters that the bundled face lacks. No grids, boxes, legends or coloured zones:
 * lines carry their names at the right edge, and each mark differs in shape, so that a grey print
 * says the same.
 */
package org.quietline.report.chart;
