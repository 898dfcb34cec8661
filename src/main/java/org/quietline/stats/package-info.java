/**
 * Pure numerics: numbers in, a small immutable result out.
 *
 * <p>No dates, files, locale, logging or laboratory words live here. A statistic is a noun with one
 * way in, such as {@link org.quietline.stats.ControlLimits#fromMovingRange}, and its result carries
 * degrees of freedom and bounds. Arguments are checked so that NaN fails; a broken argument is an
 * {@link java.lang.IllegalArgumentException} with the value in it. Results never hold NaN.
 *
 * <p>Where to start: {@link org.quietline.stats.Summary} and {@link
 * org.quietline.stats.DuplicateDeviation} describe values and pairs; {@link
 * org.quietline.stats.ControlLimits}, {@link org.quietline.stats.WeightedMean} and {@link
 * org.quietline.stats.RunLength} are the charts and what they cost; {@link
 * org.quietline.stats.StraightLine} is drift; {@link org.quietline.stats.PerformanceIndex} is
 * capability.
 *
 * <p>Each method names its source and is held to reference data from outside the project in {@code
 * shared/reference}. Sums run in two doubles, so that an offset costs no digits. Special functions
 * come from Apache Commons Math where they are accurate; tails and quantiles of the normal,
 * Student's t and chi-square distributions are polished here, and the noncentral t distribution,
 * which it lacks, is our own.
 */
package org.quietline.stats;
