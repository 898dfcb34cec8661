package org.quietline.assess;

/**
 * How precise a method is on its control materials, all instruments together.
 *
 * @param repeatability the repeatability deviation of its control pairs
 * @param intermediate the deviation of single control results about their stream's mean, over days,
 *     calibrations and people
 */
public record Precision(Answer<Double> repeatability, Answer<Double> intermediate) {}
