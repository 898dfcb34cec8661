package org.quietline.assess;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Recheck.Side;
import org.quietline.assess.Recheck.Step;
import org.quietline.bench.Calibration;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Student;

/** What did the control read on both sides of each recalibration? */
final class Rechecks {
  /** A check of last week is not as found, and one of next week not as left. */
  private static final Duration NEAR = Duration.ofDays(3);

  private static final double HALF_OF_5_PERCENT = 0.025;

  private Rechecks() {}

  /** One for each recalibration, in time order. */
  static List<Recheck> of(DriftPoints points, Optional<DriftModel> model) {
    List<Recheck> rechecks = new ArrayList<>();
    for (int window = 1; window <= points.currentWindow(); window++) {
      Calibration calibration = points.calibrations().get(window);
      Optional<WindowPoint> found =
          points.of(window - 1).stream()
              .filter(p -> isNear(p, calibration))
              .reduce((earlier, later) -> later);
      Optional<WindowPoint> left =
          points.of(window).stream()
              .filter(p -> isNear(p, calibration))
              .filter(p -> found.map(f -> f.material().equals(p.material())).orElse(true))
              .findFirst();
      rechecks.add(
          new Recheck(
              calibration,
              found.map(Rechecks::side),
              left.map(Rechecks::side),
              step(found, left, model)));
    }
    return rechecks;
  }

  private static boolean isNear(WindowPoint point, Calibration calibration) {
    return Duration.between(calibration.calibratedAt(), point.result().takenAt())
            .abs()
            .compareTo(NEAR)
        <= 0;
  }

  private static Side side(WindowPoint point) {
    return new Side(point.result().takenAt(), point.material(), point.deviation());
  }

  private static Answer<Step> step(
      Optional<WindowPoint> found, Optional<WindowPoint> left, Optional<DriftModel> model) {
    if (found.isEmpty()) {
      return Answer.cannotSay("as found not taken");
    }
    if (left.isEmpty()) {
      return Answer.cannotSay("as left not taken");
    }
    double change = left.get().deviation() - found.get().deviation();
    if (model.isEmpty()) {
      return Answer.cannotSay("needs the scatter of control results about lines of windows");
    }
    double half =
        Math.sqrt(2)
            * model.get().scatterOf(left.get())
            * Student.exceededWith(HALF_OF_5_PERCENT, model.get().outlook().degreesOfFreedom());
    return Answer.of(new Step(change, new Interval(change - half, change + half)));
  }
}
