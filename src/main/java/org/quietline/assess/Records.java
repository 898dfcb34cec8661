package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.quietline.bench.Bench;
import org.quietline.bench.Calibration;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/**
 * What one method's questions look at: its own records up to now, and the period under review.
 *
 * @param bench the whole bench as of now
 * @param method the method
 * @param period the days under review
 * @param now the moment the review speaks from
 * @param results the method's results up to now, in time order
 * @param reportedValues the value of each, computed once and when first asked for
 */
record Records(
    Bench bench,
    Method method,
    Period period,
    LocalDateTime now,
    List<Result> results,
    ReportedValues reportedValues) {

  Records {
    results = List.copyOf(results);
  }

  static Records of(Bench bench, Method method, Period period, LocalDateTime now) {
    List<Result> own =
        bench.results().stream().filter(r -> r.method().equals(method.key())).toList();
    return new Records(bench, method, period, now, own, ReportedValues.of(bench, method, own));
  }

  /** The value a result is reported with; empty when a reading is censored or none is a number. */
  OptionalDouble value(Result result) {
    return reported(result).value();
  }

  /** The value a result is reported with, and the path to it. */
  ReportedValue reported(Result result) {
    return reportedValues.of(result);
  }

  /** Whether a result enters statistics: a number that no action took out. */
  boolean counts(Result result) {
    return value(result).isPresent() && !bench.isExcluded(result);
  }

  List<Result> of(Role role) {
    return results.stream().filter(r -> r.role() == role).toList();
  }

  /** The control results of each stream, streams in the order in which they began. */
  Map<StreamKey, List<Result>> streams() {
    Map<StreamKey, List<Result>> streams = new LinkedHashMap<>();
    for (Result result : of(Role.CONTROL)) {
      Optional<Material> material = bench.settings().material(method.key(), result.sample());
      material.ifPresent(
          m ->
              streams
                  .computeIfAbsent(new StreamKey(result.instrument(), m), k -> new ArrayList<>())
                  .add(result));
    }
    return streams;
  }

  /** The instruments the method was calibrated or run on, in key order. */
  List<String> instruments() {
    TreeSet<String> keys = new TreeSet<>();
    results.forEach(r -> keys.add(r.instrument()));
    calibrations().forEach(c -> keys.add(c.instrument()));
    return List.copyOf(keys);
  }

  /** The method's calibrations up to now, in time order. */
  List<Calibration> calibrations() {
    return bench.calibrations().stream().filter(c -> c.method().equals(method.key())).toList();
  }

  /** A stream's instrument and material. */
  record StreamKey(String instrument, Material material) {}
}
