package org.quietline.assess;

import org.quietline.bench.Role;

/**
 * How the pairs of one person compare with everyone else's on the same method, instrument and kind
 * of sample.
 *
 * @param person the sign in the operator column
 * @param instrument the instrument's key
 * @param role what the samples were
 * @param pairs the person's pairs
 * @param deviation the repeatability deviation of the person's pairs
 * @param othersPairs everyone else's pairs
 * @param othersDeviation the repeatability deviation of everyone else's pairs
 * @param chance the chance of a ratio of variances at least so large if both are equally precise
 *     (one-sided F test, times the number of people compared)
 * @param differs whether that chance is below 1 %, with at least 8 pairs on each side
 */
public record PersonPairs(
    String person,
    String instrument,
    Role role,
    int pairs,
    double deviation,
    int othersPairs,
    double othersDeviation,
    double chance,
    boolean differs) {}
