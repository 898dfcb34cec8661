package org.quietline.assess;

import java.util.Comparator;
import java.util.List;

/**
 * How precise a method is on its control materials, all instruments together.
 *
 * @param repeatability the repeatability deviation of its control pairs
 * @param intermediate the deviation of single control results about their stream's mean, over days,
 *     calibrations and people
 * @param splits where the scatter of each control material comes from, one entry an instrument and
 *     material, in the order of the streams
 */
public record Precision(
    Answer<Double> repeatability, Answer<Double> intermediate, List<Split> splits) {
  /** Copies the list. */
  public Precision {
    splits = List.copyOf(splits);
  }

  /**
   * A precision whose sources were not looked at.
   *
   * @param repeatability the repeatability deviation
   * @param intermediate the deviation over days, calibrations and people
   */
  public Precision(Answer<Double> repeatability, Answer<Double> intermediate) {
    this(repeatability, intermediate, List.of());
  }

  /**
   * The split of one control stream.
   *
   * @param instrument the instrument's key
   * @param material the material's key
   * @param split the components, or why they cannot be told
   */
  public record Split(String instrument, String material, Answer<VarianceSplit> split) {}

  /**
   * The split that rests on most results: the one that speaks for the method.
   *
   * @return the split, or why there is none
   */
  public Answer<VarianceSplit> leading() {
    return splits.stream()
        .flatMap(s -> s.split().value().stream())
        .max(Comparator.comparingInt(VarianceSplit::results))
        .map(Answer::of)
        .orElseGet(
            () ->
                Answer.cannotSay(
                    splits.isEmpty()
                        ? "there is no control result"
                        : splits.get(0).split().why().orElseThrow()));
  }
}
