/**
 * Pure numerics: numbers in, a small immutable result out.
 *
 * <p>No dates, files, locale, logging or laboratory words live here. A statistic is a noun with one
 * way in, such as {@link org.quietline.stats.control.ControlLimits#fromMovingRange}, and its result
 * carries degrees of freedom and bounds. Arguments are checked so that NaN fails; a broken argument
 * is an {@link java.lang.IllegalArgumentException} with the value in it. Results never hold NaN.
 *
 * <p>The rooms, each resting only on those before it: {@code numeric} (sums, roots, quadrature,
 * checks), {@code distribution} (chances and quantiles), {@code sample} (what one sample says),
 * {@code compare} (tests and intervals), {@code model} (lines, components of variance, comparisons
 * of methods), {@code control} (limits, charts, capability), {@code runlength} (what a chart
 * costs).
 *
 * <p>Each method names its source and is held to reference data from outside the project in {@code
 * shared/reference}; {@code mvn -q -Pevidence test} prints every case. Sums run in two doubles, so
 * that an offset costs no digits.
 */
package org.quietline.stats;
