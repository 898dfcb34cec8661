package org.quietline.assess;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/**
 * A result on the scale of logarithms, where a slip by a factor is a shift.
 *
 * @param result the result
 * @param numbers its readings that are numbers
 * @param value its value
 * @param readings the logarithms of its readings
 * @param level the logarithm of its value
 * @param digit what one unit of its last written digit is worth on this scale
 * @param counts whether no action took it out
 */
record Logged(
    Result result,
    List<Double> numbers,
    double value,
    List<Double> readings,
    double level,
    double digit,
    boolean counts) {

  Logged {
    numbers = List.copyOf(numbers);
    readings = List.copyOf(readings);
  }

  /**
   * Empty for what has no place on this scale: blanks, and results with a reading that is zero,
   * negative or only a bound.
   */
  static Optional<Logged> of(Result result, ReportedValue reported, boolean counts) {
    List<BigDecimal> numbers = new ArrayList<>();
    for (Reading reading : result.readings()) {
      if (reading instanceof Reading.Measured measured && measured.value().signum() > 0) {
        numbers.add(measured.value());
      } else if (!(reading instanceof Reading.Missing)) {
        return Optional.empty();
      }
    }
    if (numbers.isEmpty() || result.role() == Role.BLANK) {
      return Optional.empty();
    }
    double value = reported.value().orElseThrow();
    return Optional.of(
        new Logged(
            result,
            numbers.stream().map(BigDecimal::doubleValue).toList(),
            value,
            numbers.stream().map(n -> Math.log(n.doubleValue())).toList(),
            Math.log(value),
            lastDigit(result) / value,
            counts));
  }

  /** One unit of the last digit as it was written, in the method's unit. */
  private static double lastDigit(Result result) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < result.readings().size(); i++) {
      if (result.writtenReadings().get(i) instanceof Reading.Measured written
          && result.readings().get(i) instanceof Reading.Measured kept
          && written.value().signum() > 0) {
        double factor = kept.value().doubleValue() / written.value().doubleValue();
        least = Math.min(least, factor * Math.pow(10, -written.value().scale()));
      }
    }
    return least;
  }

  /** How far its readings lie apart. */
  double range() {
    return range(readings);
  }

  static double range(List<Double> logs) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      least = Math.min(least, log);
      most = Math.max(most, log);
    }
    return most - least;
  }

  static double mean(List<Double> logs) {
    double sum = 0;
    for (double log : logs) {
      sum += log;
    }
    return sum / logs.size();
  }

  /** Letters before the first digit or hyphen. */
  String kind() {
    String sample = result.sample();
    int end = 0;
    while (end < sample.length()
        && !Character.isDigit(sample.charAt(end))
        && sample.charAt(end) != '-') {
      end++;
    }
    return sample.substring(0, end).strip();
  }
}
