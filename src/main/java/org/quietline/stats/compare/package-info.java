/**
 * Tests and intervals: is this sample, variance or share like another, or like a given value.
 *
 * <p>Means: {@link org.quietline.stats.compare.MeanTest}, {@link org.quietline.stats.compare.Bias}
 * against an uncertain reference, {@link org.quietline.stats.compare.Equivalence}. Deviations:
 * {@link org.quietline.stats.compare.DeviationTest}, {@link
 * org.quietline.stats.compare.VarianceRatio}, {@link org.quietline.stats.compare.EqualVariances}.
 * Order: {@link org.quietline.stats.compare.VonNeumannTest}, {@link
 * org.quietline.stats.compare.RunsTest}. Outliers: {@link org.quietline.stats.compare.OutlierTest}
 * and {@link org.quietline.stats.compare.ExtremeStudentizedDeviates}. Whole samples: {@link
 * org.quietline.stats.compare.SamplesAlike}. Counts: {@link
 * org.quietline.stats.compare.ObservedShare}, {@link org.quietline.stats.compare.ObservedCount}.
 *
 * <p>A {@code chance} is that of a result at least so far out if there is nothing to find. A small
 * sample decides little; results carry their intervals, not only a verdict.
 */
package org.quietline.stats.compare;
