package org.quietline.report;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.assess.InForce;
import org.quietline.assess.InForce.Origin;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.ChartSettings.RestartAt;
import org.quietline.report.Chart.Axis;
import org.quietline.report.Chart.Level;
import org.quietline.report.Chart.Mark;
import org.quietline.report.Chart.Mark.Shape;
import org.quietline.report.Chart.Spot;
import org.quietline.report.ControlChart.Event;
import org.quietline.report.ControlChart.Ring;
import org.quietline.report.ControlChart.Span;
import org.quietline.report.ControlChart.Strip;

/** Control streams as charts. */
final class Pictures {
  /** A result further than this many action widths from the centre is drawn at the edge. */
  private static final double FURTHEST = 2.5;

  /** Limits from fewer results are provisional. */
  private static final int FEWEST_FOR_FIRM_LIMITS = 15;

  /** The share of the height that the bracket of the baseline needs. */
  private static final double FOOT = 0.04;

  private Pictures() {}

  /** The results that can be charted since a moment. */
  static List<Point> shown(StreamFindings stream, LocalDateTime since) {
    return stream.points().stream()
        .filter(p -> p.value().isPresent() && !p.at().isBefore(since))
        .toList();
  }

  /**
   * The control chart of a stream.
   *
   * @param shown the results to show, at least one, each with a value
   */
  static ControlChart control(
      StreamFindings stream, List<Point> shown, List<Episode> episodes, Numbers numbers) {
    Optional<Baseline> baseline = stream.baseline().value();
    Axis value = withFoot(valueAxis(shown, baseline, true));
    Axis time = Axes.time(shown.get(0).at(), shown.get(shown.size() - 1).at());
    List<Spot> runs = shown.stream().filter(Point::counts).map(p -> spot(p, value)).toList();
    return new ControlChart(
        time,
        value,
        strips(shown, time),
        stream.next().map(b -> levels(b, numbers)).orElse(List.of()),
        Bounds.of(stream, shown, time, value),
        events(shown),
        marks(shown, episodes, value, numbers),
        runs,
        weighted(shown, value),
        rings(shown, episodes, value),
        span(shown, baseline));
  }

  /** A year of a stream, small; empty when nothing of it can be drawn. */
  static Optional<Miniature> miniature(StreamFindings stream, LocalDateTime end) {
    LocalDateTime start = end.minusMonths(12);
    List<Point> shown = shown(stream, start);
    if (shown.isEmpty()) {
      return Optional.empty();
    }
    Optional<Baseline> baseline = stream.baseline().value();
    Axis value = valueAxis(shown, baseline, false);
    List<Level> levels =
        baseline
            .map(
                b ->
                    List.of(
                        new Level(b.centre(), "", Level.Kind.CENTRE),
                        new Level(b.limits().upperAction(), "", Level.Kind.ACTION),
                        new Level(b.limits().lowerAction(), "", Level.Kind.ACTION)))
            .orElse(List.of());
    List<Mark> marks = shown.stream().filter(Point::counts).map(p -> plain(p, value)).toList();
    List<Ring> rings =
        rings(shown, Episode.of(stream, start), value).stream().filter(Ring::open).toList();
    return Optional.of(
        new Miniature(Axes.bare(Axes.time(start, end)), Axes.bare(value), levels, marks, rings));
  }

  private static Axis valueAxis(
      List<Point> shown, Optional<Baseline> baseline, boolean withWeighted) {
    List<Double> values = new ArrayList<>();
    double low = baseline.map(Pictures::lowest).orElse(Double.NEGATIVE_INFINITY);
    double high = baseline.map(Pictures::highest).orElse(Double.POSITIVE_INFINITY);
    for (Point point : shown) {
      boolean far = point.value().getAsDouble() < low || point.value().getAsDouble() > high;
      if (!far && (point.counts() || withWeighted)) {
        values.add(point.value().getAsDouble());
      }
    }
    baseline.ifPresent(
        b -> {
          values.add(b.limits().lowerAction());
          values.add(b.limits().upperAction());
        });
    if (values.isEmpty()) {
      shown.forEach(p -> values.add(p.value().getAsDouble()));
    }
    return Axes.around(values, Axes.MOST_TICKS);
  }

  /** Leaves room at the foot for the bracket of the baseline. */
  private static Axis withFoot(Axis axis) {
    double foot = axis.lower() - FOOT * (axis.upper() - axis.lower());
    return new Axis(foot, axis.upper(), axis.ticks());
  }

  private static double lowest(Baseline b) {
    return b.centre() - FURTHEST * (b.centre() - b.limits().lowerAction());
  }

  private static double highest(Baseline b) {
    return b.centre() + FURTHEST * (b.limits().upperAction() - b.centre());
  }

  private static List<Level> levels(InForce b, Numbers numbers) {
    return List.of(
        new Level(b.upperAction(), "action " + numbers.fine(b.upperAction()), Level.Kind.ACTION),
        new Level(
            b.upperWarning(), "warning " + numbers.fine(b.upperWarning()), Level.Kind.WARNING),
        new Level(b.centre(), "centre " + numbers.fine(b.centre()), Level.Kind.CENTRE),
        new Level(
            b.lowerWarning(), "warning " + numbers.fine(b.lowerWarning()), Level.Kind.WARNING),
        new Level(b.lowerAction(), "action " + numbers.fine(b.lowerAction()), Level.Kind.ACTION));
  }

  /** New reagent lots, and signals that were closed, between the results shown. */
  private static List<Event> events(List<Point> shown) {
    List<Event> events = new ArrayList<>();
    for (int i = 1; i < shown.size(); i++) {
      Set<RestartAt> since = shown.get(i).since();
      if (since.contains(RestartAt.REAGENT_LOT) || since.contains(RestartAt.CLOSED_SIGNAL)) {
        double x = (Dates.onAxis(shown.get(i - 1).at()) + Dates.onAxis(shown.get(i).at())) / 2;
        events.add(new Event(x, shown.get(i).restarted()));
      }
    }
    return events;
  }

  /** Open where provisional limits judged it, or none. */
  private static Mark plain(Point point, Axis axis) {
    boolean firm =
        point
            .judgedBy()
            .filter(l -> l.origin() == Origin.FIRST_RESULTS || l.origin() == Origin.CHOSEN)
            .filter(l -> l.results() >= FEWEST_FOR_FIRM_LIMITS)
            .isPresent();
    double y = clamp(point.value().getAsDouble(), axis);
    return new Mark(Dates.onAxis(point.at()), y, firm ? Shape.DOT : Shape.OPEN, "");
  }

  private static List<Mark> marks(
      List<Point> shown, List<Episode> episodes, Axis axis, Numbers numbers) {
    boolean before = false;
    List<Mark> marks = new ArrayList<>();
    for (Point point : shown) {
      double y = point.value().getAsDouble();
      double x = Dates.onAxis(point.at());
      if (!axis.holds(y)) {
        String letter =
            episodes.stream()
                .filter(e -> e.from().equals(point.at()))
                .map(e -> e.letter() + "  ")
                .findFirst()
                .orElse("");
        String label = before && letter.isEmpty() ? "" : letter + numbers.result(y);
        marks.add(new Mark(x, y, Shape.OFF, label));
      } else if (point.excluded()) {
        marks.add(new Mark(x, y, Shape.CROSS, ""));
      } else {
        marks.add(plain(point, axis));
      }
      before = !axis.holds(y);
    }
    return marks;
  }

  private static double clamp(double y, Axis axis) {
    return Math.max(axis.lower(), Math.min(axis.upper(), y));
  }

  private static Spot spot(Point point, Axis axis) {
    return new Spot(Dates.onAxis(point.at()), clamp(point.value().getAsDouble(), axis));
  }

  private static List<List<Spot>> weighted(List<Point> shown, Axis axis) {
    List<List<Spot>> stretches = new ArrayList<>();
    List<Spot> running = new ArrayList<>();
    for (Point point : shown) {
      if (point.weightedMean().isPresent()) {
        double y = clamp(point.weightedMean().getAsDouble(), axis);
        running.add(new Spot(Dates.onAxis(point.at()), y));
      } else if (point.counts() && !running.isEmpty()) {
        stretches.add(List.copyOf(running));
        running.clear();
      }
    }
    if (!running.isEmpty()) {
      stretches.add(List.copyOf(running));
    }
    return stretches;
  }

  private static List<Ring> rings(List<Point> shown, List<Episode> episodes, Axis axis) {
    List<Ring> rings = new ArrayList<>();
    for (Episode episode : episodes) {
      Set<LocalDateTime> times = new HashSet<>();
      episode.signals().forEach(s -> times.add(s.id().at()));
      String letter = episode.letter();
      for (Point point : shown) {
        if (times.contains(point.at())) {
          if (episode.open() || axis.holds(point.value().getAsDouble())) {
            Spot spot = spot(point, axis);
            rings.add(new Ring(spot.x(), spot.y(), episode.open(), letter));
          }
          letter = "";
        }
      }
    }
    return rings;
  }

  private static List<Strip> strips(List<Point> shown, Axis time) {
    List<Strip> strips = new ArrayList<>();
    String key = "";
    double from = time.lower();
    double before = time.lower();
    boolean tinted = true;
    for (Point point : shown) {
      String here = point.calibration().orElse("");
      double x = Dates.onAxis(point.at());
      if (!here.equals(key)) {
        double edge = key.isEmpty() && strips.isEmpty() ? time.lower() : (before + x) / 2;
        if (!key.isEmpty()) {
          strips.add(new Strip(from, edge, key, tinted));
          tinted = !tinted;
        }
        key = here;
        from = edge;
      }
      before = x;
    }
    if (!key.isEmpty()) {
      strips.add(new Strip(from, time.upper(), key, tinted && !strips.isEmpty()));
    }
    return strips;
  }

  private static Optional<Span> span(List<Point> shown, Optional<Baseline> baseline) {
    List<Point> inside = shown.stream().filter(Point::inBaseline).toList();
    if (inside.isEmpty() || baseline.isEmpty()) {
      return Optional.empty();
    }
    double from = Dates.onAxis(inside.get(0).at());
    double to = Dates.onAxis(inside.get(inside.size() - 1).at());
    return Optional.of(new Span(from, to, "baseline"));
  }
}
