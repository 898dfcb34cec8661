package org.quietline.assess;

import java.util.List;

/**
 * What the bench's precision and bias mean for its batches.
 *
 * @param uncertainty the uncertainty of a reported result, one entry an instrument
 * @param outside samples that an outside laboratory measured, too
 * @param comparisons instruments, reagent lots, people and laboratories on the same samples
 * @param costs what wrong decisions cost, one entry an instrument; none where no costs are set
 * @param releases the batches of the period, in the order of their first results
 */
public record Batches(
    List<Uncertainty> uncertainty,
    List<OutsideScore> outside,
    List<PairedComparison> comparisons,
    List<Answer<CostAdvice>> costs,
    List<Release> releases) {
  /** Nothing was asked. */
  public static final Batches NONE =
      new Batches(List.of(), List.of(), List.of(), List.of(), List.of());

  /** Copies the lists. */
  public Batches {
    uncertainty = List.copyOf(uncertainty);
    outside = List.copyOf(outside);
    comparisons = List.copyOf(comparisons);
    costs = List.copyOf(costs);
    releases = List.copyOf(releases);
  }
}
