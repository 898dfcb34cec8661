package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import org.quietline.stats.Interval;

/**
 * Blanks of one kind on one instrument in time order.
 *
 * <p>Each blank is put on a scale on which blanks like those before it are independent standard
 * normal numbers, {@code q = Φ⁻¹(T((x − mean)/(s·√(1 + 1/n))))}; their weighted mean {@code z}
 * follows with the chart's weight. Both are held against one bound: q against {@code ±c}, z against
 * {@code ±c·√(λ/(2 − λ)·(1 − (1 − λ)^2k))}, with c such that a blank with nothing wrong breaks at
 * least one of the two with 0.27 %. Sources: Quesenberry (1991), J. Qual. Technol. 23, 213–224;
 * Roberts (1959), Technometrics 1, 239–250.
 *
 * @param kind which blanks
 * @param marks the blanks
 * @param rate how many blanks of the period were judged, and how many gave notice
 */
public record BlankTrack(Kind kind, List<Mark> marks, NoticeRate rate) {
  /** Copies the list. */
  public BlankTrack {
    marks = List.copyOf(marks);
  }

  /** Which blanks. */
  public enum Kind {
    /** Those of the calibrations, in units of response. */
    OF_CALIBRATIONS,
    /** Results of role blank, in the method's unit. */
    OF_RESULTS
  }

  /**
   * One blank.
   *
   * @param at when it was read
   * @param value what was read
   * @param takenOut whether an action took it out of what later ones are judged by
   * @param judged how it compares with those before it
   */
  public record Mark(LocalDateTime at, double value, boolean takenOut, Answer<Judged> judged) {}

  /**
   * A blank against those before it.
   *
   * @param limits the limits of the value
   * @param weightedMean the weighted mean z, in deviations
   * @param weightedLimit its limit, on either side of zero
   * @param valueBeyond whether the value is beyond its limits
   * @param meanBeyond whether the weighted mean is beyond its limit
   * @param provisional whether fewer than 15 blanks were before it
   */
  public record Judged(
      Interval limits,
      double weightedMean,
      double weightedLimit,
      boolean valueBeyond,
      boolean meanBeyond,
      boolean provisional) {
    /**
     * Whether the blank gives notice.
     *
     * @return true when value or mean is beyond
     */
    public boolean isBeyond() {
      return valueBeyond || meanBeyond;
    }
  }
}
