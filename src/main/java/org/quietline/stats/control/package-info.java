/**
 * Limits and charts of a series of values.
 *
 * <p>Where to start: {@link org.quietline.stats.control.ControlLimits} from a baseline of single
 * values. Before there is one: {@link org.quietline.stats.control.QStatistics} and {@link
 * org.quietline.stats.control.PredictiveLimits}. Beside single values, for small changes: {@link
 * org.quietline.stats.control.WeightedMean}, {@link org.quietline.stats.control.CumulativeSum} and
 * {@link org.quietline.stats.control.RunRules}. For subgroups, {@link
 * org.quietline.stats.control.SubgroupLimits}; for new sample deviations, {@link
 * org.quietline.stats.control.PrecisionLimits}; for counts, {@link
 * org.quietline.stats.control.CountLimits} and {@link org.quietline.stats.control.ShareLimits}.
 * {@link org.quietline.stats.capability.PerformanceIndex} holds values against limits of another
 * kind.
 *
 * <p>After a signal, {@link org.quietline.stats.control.StepChange} says when the change most
 * likely began.
 *
 * <p>A value on a limit is inside it. A change is looked for in deviations from the centre; who
 * estimates centre and deviation, and from what, is the caller's. Charts that are followed in time
 * take a mark for each value before which they start anew.
 */
package org.quietline.stats.control;
