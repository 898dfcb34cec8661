package org.quietline.assess;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.InstrumentCalibrations.Response;
import org.quietline.bench.Calibration;
import org.quietline.stats.model.StraightLine;

/**
 * The straight line through the calibrators of one calibration: the line through two, by least
 * squares through more. Sources: ISO 11095:1996; ISO 8466-1:2021.
 *
 * @param calibration the calibration
 * @param responses the calibrators that show a response, in the order of their assigned values
 * @param slope response for one unit of the method
 * @param offset response at zero
 * @param residual the deviation about the line; zero for two calibrators, whose line has none
 */
record CalibrationLine(
    Calibration calibration,
    List<Response> responses,
    double slope,
    double offset,
    double residual) {
  private static final double ROOT_TWELVE = Math.sqrt(12);

  CalibrationLine {
    responses = List.copyOf(responses);
  }

  /** Empty where fewer than two different calibrators show a response. */
  static Optional<CalibrationLine> of(Calibration calibration) {
    List<Response> seen =
        calibration.calibrators().stream()
            .filter(c -> c.response().isPresent())
            .map(c -> new Response(c.assigned(), c.response().get()))
            .sorted((a, b) -> a.assigned().compareTo(b.assigned()))
            .toList();
    if (seen.stream().map(r -> r.assigned().stripTrailingZeros()).distinct().count() < 2) {
      return Optional.empty();
    }
    double[] x = seen.stream().mapToDouble(r -> r.assigned().doubleValue()).toArray();
    double[] y = seen.stream().mapToDouble(r -> r.value().doubleValue()).toArray();
    if (x.length == 2) {
      double slope = (y[1] - y[0]) / (x[1] - x[0]);
      return Optional.of(new CalibrationLine(calibration, seen, slope, y[0] - slope * x[0], 0));
    }
    StraightLine line = StraightLine.fit(x, y);
    return Optional.of(
        new CalibrationLine(
            calibration, seen, line.slope(), line.intercept(), line.residualDeviation()));
  }

  double heightAt(double level) {
    return offset + slope * level;
  }

  double read(double response) {
    return (response - offset) / slope;
  }

  /** The degrees of freedom of the residual deviation. */
  int degreesOfFreedom() {
    return responses.size() - 2;
  }

  /** The variance of the height over that of one response, {@code 1/n + (x − x̄)²/Sxx}. */
  double leverageAt(double level) {
    double[] x = responses.stream().mapToDouble(r -> r.assigned().doubleValue()).toArray();
    double mean = Arrays.stream(x).average().orElseThrow();
    double off = level - mean;
    return 1.0 / x.length + off * off / squares(x, mean);
  }

  /** The variance of the slope over that of one response, {@code 1/Sxx}. */
  double leverageOfSlope() {
    double[] x = responses.stream().mapToDouble(r -> r.assigned().doubleValue()).toArray();
    return 1 / squares(x, Arrays.stream(x).average().orElseThrow());
  }

  private static double squares(double[] x, double mean) {
    return Arrays.stream(x).map(v -> (v - mean) * (v - mean)).sum();
  }

  boolean holds(double level) {
    return responses.get(0).assigned().doubleValue() <= level
        && level <= responses.get(responses.size() - 1).assigned().doubleValue();
  }

  /** The deviation that reading responses in steps of their last digit leaves behind, q/√12. */
  double rounding() {
    return roundingOf(responses.stream().map(Response::value).toList());
  }

  static double roundingOf(List<BigDecimal> written) {
    int digits = written.stream().mapToInt(BigDecimal::scale).max().orElse(0);
    return Math.pow(10, -digits) / ROOT_TWELVE;
  }
}
