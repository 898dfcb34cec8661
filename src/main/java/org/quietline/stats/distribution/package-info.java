/**
 * Distributions: chances and quantiles, and the factors that follow from them alone.
 *
 * <p>Tails are given by themselves, never as one minus the rest, so that small chances keep their
 * digits. Where to start: {@link org.quietline.stats.distribution.Normal} and {@link
 * org.quietline.stats.distribution.ToleranceFactor}; constants of charts are in {@link
 * org.quietline.stats.distribution.ChartConstants}. Each is held to values of 40-digit arithmetic.
 */
package org.quietline.stats.distribution;
