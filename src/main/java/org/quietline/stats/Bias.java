package org.quietline.stats;

/**
 * A mean against a reference value.
 *
 * @param difference the mean less the reference
 * @param standardUncertainty the standard uncertainty of the difference
 * @param degreesOfFreedom effective degrees of freedom
 */
public record Bias(double difference, double standardUncertainty, double degreesOfFreedom) {}
