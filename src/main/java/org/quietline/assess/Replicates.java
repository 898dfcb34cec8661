package org.quietline.assess;

import java.util.List;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.Interval;

/**
 * How the two readings of a result agree, for one instrument and role, over all pairs recorded up
 * to the end of the period. Source: ISO 5725-6; the pairs beyond the limit are judged against the
 * binomial chance of the 5 % that chance alone puts there.
 *
 * @param instrument the instrument's key
 * @param role what the samples were
 * @param kind what the second reading repeats
 * @param pairs how many pairs
 * @param leftOut results left out: censored, a single reading, or excluded by an action
 * @param deviation the repeatability deviation {@code sqrt(sum d^2 / 2m)}
 * @param degreesOfFreedom its degrees of freedom, the number of pairs
 * @param interval the 95 % interval of the deviation
 * @param limit the repeatability limit, {@code 1.96·√2} deviations
 * @param pairsInPeriod pairs of the period
 * @param beyondInPeriod results of the period whose pair is beyond the limit, oldest first
 * @param chanceOfSoMany chance of at least so many beyond the limit in the period if each pair is
 *     beyond with 5 %; 1 when there are none
 */
public record Replicates(
    String instrument,
    Role role,
    ReplicateKind kind,
    int pairs,
    int leftOut,
    double deviation,
    int degreesOfFreedom,
    Interval interval,
    double limit,
    int pairsInPeriod,
    List<Result> beyondInPeriod,
    double chanceOfSoMany) {
  /** Copies the list. */
  public Replicates {
    beyondInPeriod = List.copyOf(beyondInPeriod);
  }
}
