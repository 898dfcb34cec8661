package org.quietline.assess;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A sample that the bench and an outside laboratory both measured.
 *
 * @param sample the sample's id
 * @param instrument the instrument of the bench's own results
 * @param laboratory the outside laboratory
 * @param reportedOn the day it reported, if given
 * @param own the mean of the bench's own results of the sample, in the method's unit
 * @param ownResults how many results that is the mean of
 * @param outside the outside laboratory's value
 * @param stated its standard uncertainty, where it stated an expanded one with its factor; never
 *     filled in otherwise
 * @param assessment the deviation for assessment of the proficiency round it comes from, if given
 * @param file the file the outside value was read from
 * @param line the line in it
 */
public record OutsideDifference(
    String sample,
    String instrument,
    String laboratory,
    Optional<LocalDate> reportedOn,
    double own,
    int ownResults,
    double outside,
    OptionalDouble stated,
    OptionalDouble assessment,
    String file,
    long line) {
  /** From so many samples on, differences say how large the bias may be. */
  static final int FEWEST_FOR_BIAS = 6;

  /**
   * The difference.
   *
   * @return own less outside, in the method's unit
   */
  public double difference() {
    return own - outside;
  }
}
