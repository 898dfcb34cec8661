package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.quietline.bench.ChartSettings.RestartAt;
import org.quietline.bench.Material;
import org.quietline.stats.control.ControlLimits;

/**
 * One control stream: the results of one material by one method on one instrument, in time order.
 *
 * @param instrument the instrument's key
 * @param material the material
 * @param points every control result up to the end of the period, in time order
 * @param pointsInPeriod how many of them fall in the period
 * @param baseline the results the limits come from, and the limits
 * @param choiceNotUsed why the latest baseline that a person chose is not in force, if it is not
 * @param next the limits that will judge the next result, where there are any
 * @param signals rules broken, in time order
 * @param price what the rules cost and find
 * @param bias the baseline's mean against the assigned value
 * @param diagnosis whether the limits fit the results they come from
 * @param revisions the changes of limits that were made, and what they rested on
 * @param proposal what the results since the baseline say to a change of limits
 */
public record StreamFindings(
    String instrument,
    Material material,
    List<Point> points,
    int pointsInPeriod,
    Answer<Baseline> baseline,
    Optional<String> choiceNotUsed,
    Optional<InForce> next,
    List<Signal> signals,
    Price price,
    Answer<MaterialBias> bias,
    Answer<Diagnosis> diagnosis,
    List<Revision> revisions,
    Answer<Revision> proposal) {
  /** Copies the lists. */
  public StreamFindings {
    points = List.copyOf(points);
    signals = List.copyOf(signals);
    revisions = List.copyOf(revisions);
  }

  /**
   * How many results count: those that are a number and that no action took out.
   *
   * @return results
   */
  public int counted() {
    return (int) points.stream().filter(Point::counts).count();
  }

  /**
   * How many results that count lie beyond a warning limit of those that judged them; a normal
   * result lies beyond settled ones with about 5 % chance.
   *
   * @return results; none without limits
   */
  public int beyondWarning() {
    return (int)
        points.stream()
            .filter(Point::counts)
            .filter(
                p ->
                    p.judgedBy()
                        .filter(
                            l ->
                                p.value().getAsDouble() < l.lowerWarning()
                                    || p.value().getAsDouble() > l.upperWarning())
                        .isPresent())
            .count();
  }

  /**
   * One control result on the chart.
   *
   * @param at when it was taken
   * @param value the result; absent when censored, which stays listed and is not charted
   * @param range how far its pair is apart, if it has a pair
   * @param excluded whether an action took it out
   * @param inBaseline whether the limits come from it
   * @param judgedBy the limits that judged it, where there were any
   * @param rangeUpper how far its pair may be apart, where that is known
   * @param since what happened since the result before it that counts
   * @param restarted whether the weighted mean, sums and run counts start anew with it
   * @param calibration the key of its calibration, if known
   * @param weightedMean the weighted mean after it, where limits exist and it counts
   * @param weightedLower the lower limit of that mean
   * @param weightedUpper the upper limit of that mean
   * @param file the file it was read from
   * @param line the line in it
   */
  public record Point(
      LocalDateTime at,
      OptionalDouble value,
      OptionalDouble range,
      boolean excluded,
      boolean inBaseline,
      Optional<InForce> judgedBy,
      OptionalDouble rangeUpper,
      Set<RestartAt> since,
      boolean restarted,
      Optional<String> calibration,
      OptionalDouble weightedMean,
      OptionalDouble weightedLower,
      OptionalDouble weightedUpper,
      String file,
      long line) {
    /** Copies the events. */
    public Point {
      EnumSet<RestartAt> events = EnumSet.noneOf(RestartAt.class);
      events.addAll(since);
      since = Collections.unmodifiableSet(events);
    }

    /**
     * Whether it enters statistics.
     *
     * @return true for a number that no action took out
     */
    public boolean counts() {
      return value.isPresent() && !excluded;
    }
  }

  /**
   * A baseline and its limits.
   *
   * @param results how many results
   * @param from the first one's time
   * @param to the last one's time
   * @param chosen whether a person chose it; otherwise it is the first results of the stream
   * @param centre the centre line
   * @param deviation the deviation behind the limits
   * @param betweenDeviation the part of that deviation that lies between calibrations, where the
   *     limits allow for it; otherwise zero
   * @param meanMovingRange the mean moving range
   * @param sampleDeviation the sample deviation
   * @param limits the limits
   * @param limitsFrom how they were computed
   * @param provisional whether there are fewer than 15 results, so that the limits are wide t-based
   *     ones whatever the settings ask for
   * @param readingsRangeUpper how far a pair may be apart before {@code readings-disagree}
   * @param weightedLower the lower limit of the weighted mean long after a start
   * @param weightedUpper the upper limit of the weighted mean long after a start
   */
  public record Baseline(
      int results,
      LocalDateTime from,
      LocalDateTime to,
      boolean chosen,
      double centre,
      double deviation,
      double betweenDeviation,
      double meanMovingRange,
      double sampleDeviation,
      ControlLimits limits,
      ControlLimits.Basis limitsFrom,
      boolean provisional,
      Answer<Double> readingsRangeUpper,
      double weightedLower,
      double weightedUpper) {}
}
