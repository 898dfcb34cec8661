package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.quietline.assess.InForce;
import org.quietline.assess.InForce.Origin;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.report.Chart.Axis;
import org.quietline.report.Chart.Level.Kind;
import org.quietline.report.Chart.Spot;
import org.quietline.report.ControlChart.Bound;

/** The limits that judged the results of a stream, as lines with steps. */
final class Bounds {
  private final Axis value;
  private final List<Stretch> stretches = new ArrayList<>();

  private record Stretch(double from, double to, Optional<InForce> limits) {}

  private Bounds(Axis value) {
    this.value = value;
  }

  /**
   * Centre, action and, where limits are settled, warning lines; none where a limit lies beyond the
   * axis or there were no limits. After the last result stand the limits of the next one.
   *
   * @param shown the results shown, at least one
   */
  static List<Bound> of(StreamFindings stream, List<Point> shown, Axis time, Axis value) {
    Bounds bounds = new Bounds(value);
    double from = time.lower();
    for (int i = 0; i < shown.size(); i++) {
      double here = Dates.onAxis(shown.get(i).at());
      double to = i + 1 < shown.size() ? (here + Dates.onAxis(shown.get(i + 1).at())) / 2 : here;
      bounds.stretches.add(new Stretch(from, to, shown.get(i).judgedBy()));
      from = to;
    }
    bounds.stretches.add(new Stretch(from, time.upper(), stream.next()));
    List<Bound> lines = new ArrayList<>();
    bounds.add(lines, Kind.CENTRE, InForce::centre);
    bounds.add(lines, Kind.WARNING, l -> settled(l) ? l.upperWarning() : Double.NaN);
    bounds.add(lines, Kind.WARNING, l -> settled(l) ? l.lowerWarning() : Double.NaN);
    bounds.add(lines, Kind.ACTION, InForce::upperAction);
    bounds.add(lines, Kind.ACTION, InForce::lowerAction);
    return lines;
  }

  private static boolean settled(InForce limits) {
    return limits.origin() == Origin.FIRST_RESULTS || limits.origin() == Origin.CHOSEN;
  }

  private void add(List<Bound> lines, Kind kind, ToDoubleFunction<InForce> which) {
    List<Spot> path = new ArrayList<>();
    for (Stretch stretch : stretches) {
      double y = stretch.limits().map(which::applyAsDouble).orElse(Double.NaN);
      if (!value.holds(y)) {
        finish(lines, kind, path);
        continue;
      }
      if (path.isEmpty() || path.get(path.size() - 1).y() != y) {
        path.add(new Spot(stretch.from(), y));
      } else {
        path.remove(path.size() - 1);
      }
      path.add(new Spot(stretch.to(), y));
    }
    finish(lines, kind, path);
  }

  private static void finish(List<Bound> lines, Kind kind, List<Spot> path) {
    if (path.size() > 1) {
      lines.add(new Bound(kind, path));
    }
    path.clear();
  }
}
