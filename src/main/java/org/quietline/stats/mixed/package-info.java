/**
 * Mixed models by restricted maximum likelihood: what groups within groups add to the scatter, and
 * lines that differ from group to group.
 *
 * <p>Where to start: {@link org.quietline.stats.mixed.VarianceComponents} and {@link
 * org.quietline.stats.mixed.GroupedLines}; {@link org.quietline.stats.mixed.LinesGivenRatios} is
 * the closed form for given ratios of variances. A group enters by its own small block, so that the
 * cost grows with the number of groups and no matrix of all values is ever made.
 */
package org.quietline.stats.mixed;
