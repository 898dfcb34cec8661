/**
 * Pure numerics: numbers in, a small immutable result out.
 *
 * <p>No dates, files, locale, logging or laboratory words live here. A statistic is a noun with one
 * way in, such as {@link org.quietline.stats.ControlLimits#fromMovingRange}, and its result carries
 * degrees of freedom and bounds. Arguments are checked so that NaN fails; a broken argument is an
 * {@link java.lang.IllegalArgumentException} with the value in it. Results never hold NaN.
 *
 * <p>Each method names its source and is held to reference data from outside the project in {@code
 * shared/reference}. Distributions come from Apache Commons Math where it is accurate; the
 * noncentral t distribution, which it lacks, is our own.
 */
package org.quietline.stats;
