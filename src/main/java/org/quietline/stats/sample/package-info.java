/**
 * What one sample says: centre, spread, shape and order.
 *
 * <p>Where to start: {@link org.quietline.stats.sample.Summary}, and {@link
 * org.quietline.stats.sample.DuplicateDeviation} for pairs. Robust against wild values: {@link
 * org.quietline.stats.sample.RobustSummary} for a limit, {@link
 * org.quietline.stats.sample.AlgorithmA} and {@link org.quietline.stats.sample.QMethod} where a
 * standard asks for them.
 */
package org.quietline.stats.sample;
