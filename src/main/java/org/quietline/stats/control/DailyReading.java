package org.quietline.stats.control;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How the latest value of a chart is read from day to day, in three words.
 *
 * <p>Out of control: beyond the action limits at three deviations, or beyond the warning limits at
 * two for the second time in three values, on whichever side. Drifting, though in control: seven
 * values in a row each above the one before or each below it, or ten of eleven on one side of the
 * centre. In control otherwise; one value between warning and action limit is, if the two before it
 * were inside the warning limits. Source: Nordtest TR 569, Internal Quality Control, chapter on the
 * interpretation of charts (from memory); the handbook names no side for the second rule and counts
 * values, not steps, in the third.
 */
public enum DailyReading {
  /** Nothing to be seen. */
  IN_CONTROL,
  /** Within limits, but on the move or off the centre. */
  DRIFTING,
  /** Beyond limits. */
  OUT_OF_CONTROL;

  private static final RunRules OUT =
      RunRules.of(new RunRule.Beyond(1, 1, 3), new RunRule.EitherSide(2, 3, 2));
  private static final RunRules DRIFT =
      RunRules.of(new RunRule.Steady(7), new RunRule.Beyond(10, 11, 0));

  /**
   * The rules for out of control: one value beyond three deviations, or two of three beyond two on
   * whichever side.
   *
   * @return the rules
   */
  public static RunRules outOfControl() {
    return OUT;
  }

  /**
   * Reads a series value by value.
   *
   * @param series the series
   * @return the reading at each place; none at places left out
   */
  public static List<Optional<DailyReading>> of(ChartedSeries series) {
    List<Optional<DailyReading>> readings =
        new ArrayList<>(
            Collections.nCopies(series.deviations().size(), Optional.of(DailyReading.IN_CONTROL)));
    places(DRIFT, series).forEach(at -> readings.set(at, Optional.of(DRIFTING)));
    places(OUT, series).forEach(at -> readings.set(at, Optional.of(OUT_OF_CONTROL)));
    series.leftOut().forEach(at -> readings.set(at, Optional.empty()));
    return List.copyOf(readings);
  }

  private static Set<Integer> places(RunRules rules, ChartedSeries series) {
    return rules.find(series).stream().map(RunRules.Met::at).collect(Collectors.toSet());
  }
}
