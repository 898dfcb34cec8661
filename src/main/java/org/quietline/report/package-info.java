/**
 * Findings become pages as values: words, tables, and charts as data; and the lines of the screen.
 *
 * <p>Start with {@link org.quietline.report.MonthlyReview}, which turns {@link
 * org.quietline.assess.Findings} into a {@link org.quietline.report.Document}; {@link
 * org.quietline.report.ScreenLines} makes the short table for the terminal. Nothing is computed
 * here: this package words, rounds and scales. It knows neither a chart library nor a PDF library;
 * {@link org.quietline.report.chart} draws its charts and {@link org.quietline.report.pdf} sets its
 * pages.
 *
 * <p>Conventions: questions are headings, answers come first, sizes stand in the method's unit. An
 * answer that cannot be given is printed as such with what it needs. Results keep the method's
 * decimals, limits and means carry one more, uncertainties two significant digits, by the rounding
 * rule of {@link org.quietline.report.Numbers}. Every label is a finished text, so that no picture
 * depends on a language or a time zone.
 */
package org.quietline.report;
