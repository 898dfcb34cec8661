package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
 * @param signals rules broken, in time order
 * @param expectedFalseSignals how many false stop signals chance alone gives in the period under
 *     the rules in use, if the limits were exactly right
 * @param bias the baseline's mean against the assigned value
 */
public record StreamFindings(
    String instrument,
    Material material,
    List<Point> points,
    int pointsInPeriod,
    Answer<Baseline> baseline,
    List<Signal> signals,
    Answer<Double> expectedFalseSignals,
    Answer<MaterialBias> bias) {
  /** Copies the lists. */
  public StreamFindings {
    points = List.copyOf(points);
    signals = List.copyOf(signals);
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
   * How many results that count lie beyond a warning limit. The warning limits are those in force
   * now; a normal result lies beyond them with 4.55 % chance where they are two deviations out.
   *
   * @return results; none without limits
   */
  public int beyondWarning() {
    return baseline
        .value()
        .map(
            b ->
                (int)
                    points.stream()
                        .filter(Point::counts)
                        .mapToDouble(p -> p.value().getAsDouble())
                        .filter(v -> v < b.limits().lowerWarning() || v > b.limits().upperWarning())
                        .count())
        .orElse(0);
  }

  /**
   * One control result on the chart.
   *
   * @param at when it was taken
   * @param value the result; absent when censored, which stays listed and is not charted
   * @param range how far its pair is apart, if it has a pair
   * @param excluded whether an action took it out
   * @param inBaseline whether the limits come from it
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
      Optional<String> calibration,
      OptionalDouble weightedMean,
      OptionalDouble weightedLower,
      OptionalDouble weightedUpper,
      String file,
      long line) {
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
      double meanMovingRange,
      double sampleDeviation,
      ControlLimits limits,
      ControlLimits.Basis limitsFrom,
      boolean provisional,
      Answer<Double> readingsRangeUpper,
      double weightedLower,
      double weightedUpper) {}
}
