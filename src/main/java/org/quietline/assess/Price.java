package org.quietline.assess;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What the stop rules of a stream cost and find: false signals to expect, and how soon a shift is
 * seen. Both count what the limits owe to a short baseline, and the restarts; both are for
 * independent normal results.
 *
 * @param expectedStops how many false stop signals chance gives in the period
 * @param stopsSeen how many stop signals the period had, false or not
 * @param testsPerWeek how often the bench tests this material, over the last three months
 * @param betweenRestarts how many results lie between two restarts, on average
 * @param delays how soon shifts are seen
 */
public record Price(
    Answer<Double> expectedStops,
    int stopsSeen,
    OptionalDouble testsPerWeek,
    int betweenRestarts,
    Answer<List<Delay>> delays) {

  /** Copies the list. */
  public Price {
    delays = delays.map(List::copyOf);
  }

  /**
   * How soon a lasting shift is seen, counted in control results from its beginning.
   *
   * @param shift the shift in the method's unit
   * @param deviations the same in deviations of the baseline
   * @param allowance whether it is the method's allowable bias
   * @param withinFour the chance that one of the first four results gives a stop signal
   * @param half within how many results half of such shifts are seen; infinite beyond 500
   * @param nineTenths within how many nine tenths are; infinite beyond 500
   */
  public record Delay(
      double shift,
      double deviations,
      boolean allowance,
      double withinFour,
      double half,
      double nineTenths) {}
}
