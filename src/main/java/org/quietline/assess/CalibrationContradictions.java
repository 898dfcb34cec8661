package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.quietline.assess.Contradiction.BeforeFirstCalibration;
import org.quietline.assess.Contradiction.CalibratedLater;
import org.quietline.assess.Contradiction.CalibrationIdTwice;
import org.quietline.bench.Calibration;
import org.quietline.bench.Check;
import org.quietline.bench.Method;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Result;

/** Do results and calibrations fit each other in time and name? */
final class CalibrationContradictions {
  private CalibrationContradictions() {}

  static List<Contradiction> ask(Asking asking) {
    List<Contradiction> found = new ArrayList<>();
    found.addAll(madeLater(asking));
    asking.bench().settings().methods().stream()
        .filter(m -> m.calibrationValidDays().isPresent())
        .filter(m -> asking.isOn(Check.BEFORE_FIRST_CALIBRATION, m.key()))
        .forEach(m -> found.addAll(beforeFirst(asking, m)));
    found.addAll(idTwice(asking));
    return found;
  }

  /** Looks at all calibrations: the one named may be later than the moment the review speaks of. */
  private static List<Contradiction> madeLater(Asking asking) {
    List<Contradiction> found = new ArrayList<>();
    for (Result result : asking.bench().results()) {
      if (result.calibration().isEmpty()
          || !asking.isOn(Check.RESULT_BEFORE_CALIBRATION, result.method())) {
        continue;
      }
      String named = result.calibration().get();
      asking.whole().calibrations().stream()
          .filter(c -> c.key().equals(named) && c.isFor(result.method(), result.instrument()))
          .filter(c -> c.calibratedAt().isAfter(result.takenAt()))
          .findFirst()
          .ifPresent(
              c ->
                  found.add(
                      new CalibratedLater(
                          asking.about(Check.RESULT_BEFORE_CALIBRATION, result, c.origin()),
                          result,
                          c)));
    }
    return found;
  }

  private static List<Contradiction> beforeFirst(Asking asking, Method method) {
    Map<String, Calibration> first = new TreeMap<>();
    asking.bench().calibrations().stream()
        .filter(c -> c.method().equals(method.key()))
        .forEach(c -> first.putIfAbsent(c.instrument(), c));
    List<Contradiction> found = new ArrayList<>();
    first.forEach(
        (instrument, calibration) -> {
          List<Result> results =
              asking.bench().results().stream()
                  .filter(r -> calibration.isFor(r.method(), r.instrument()))
                  .filter(r -> r.calibration().isEmpty())
                  .filter(r -> r.takenAt().isBefore(calibration.calibratedAt()))
                  .toList();
          QuestionId id =
              new QuestionId(method.key() + "/" + instrument, Check.BEFORE_FIRST_CALIBRATION);
          found.addAll(
              asking.aboutMany(
                  id,
                  results,
                  (asked, some) -> new BeforeFirstCalibration(asked, some, calibration)));
        });
    return found;
  }

  /** Two methods calibrated in one sitting may share an id; every row names its method, too. */
  private static boolean isOneDay(List<Calibration> all) {
    return all.stream().map(c -> c.calibratedAt().toLocalDate()).distinct().count() == 1;
  }

  private static List<Contradiction> idTwice(Asking asking) {
    Map<String, List<Calibration>> byKey = new TreeMap<>();
    asking.bench().calibrations().stream()
        .filter(c -> asking.isOn(Check.CALIBRATION_ID_TWICE, c.method()))
        .forEach(c -> byKey.computeIfAbsent(c.key(), k -> new ArrayList<>()).add(c));
    List<Contradiction> found = new ArrayList<>();
    byKey.forEach(
        (key, all) -> {
          if (all.size() > 1 && !isOneDay(all)) {
            TreeSet<String> methods = new TreeSet<>();
            all.forEach(c -> methods.add(c.method()));
            Optional<String> method =
                methods.size() == 1 ? Optional.of(methods.first()) : Optional.empty();
            Calibration latest = all.get(all.size() - 1);
            found.add(
                new CalibrationIdTwice(
                    asking.about(
                        new QuestionId(key, Check.CALIBRATION_ID_TWICE),
                        method,
                        latest.calibratedAt(),
                        all.stream().map(Calibration::origin).toList()),
                    all));
          }
        });
    return found;
  }
}
