package org.quietline.stats.mixed;

/**
 * Lines at one pair of ratios, and what that pair counts for.
 *
 * @param weight the chance of the pair; those of all pairs add to one
 * @param lines the lines
 */
record RatioNode(double weight, LinesGivenRatios lines) {}
