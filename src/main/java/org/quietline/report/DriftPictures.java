package org.quietline.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Drift;
import org.quietline.assess.Drift.FanDay;
import org.quietline.bench.Calibration;
import org.quietline.report.Chart.Axis;
import org.quietline.report.Chart.Level;
import org.quietline.report.Chart.Mark;
import org.quietline.report.Chart.Mark.Shape;
import org.quietline.report.Chart.Spot;
import org.quietline.report.Chart.Upright;
import org.quietline.report.DriftChart.Ends;
import org.quietline.report.DriftChart.Slice;
import org.quietline.stats.Interval;

/** Drift since a calibration as a chart. */
final class DriftPictures {
  private DriftPictures() {}

  /** The chart of a window, empty when there is neither a deviation nor a calibration to show. */
  static Optional<DriftChart> of(Drift drift, LocalDate today, Numbers numbers) {
    if (drift.deviations().isEmpty() || drift.calibration().isEmpty()) {
      return Optional.empty();
    }
    Calibration calibration = drift.calibration().get();
    LocalDate start = calibration.calibratedAt().toLocalDate();
    List<Slice> fan = fan(drift);
    Axis days = Axes.days(lastDay(drift, start, today));
    Axis deviation = deviations(drift, fan);
    return Optional.of(
        new DriftChart(
            days,
            deviation,
            levels(drift, deviation, numbers),
            marks(drift, deviation, numbers),
            fan,
            uprights(drift, start, today),
            earlier(drift, days, deviation)));
  }

  /** Earlier windows of two results or more, as far as the axes hold them. */
  private static List<List<Spot>> earlier(Drift drift, Axis days, Axis deviation) {
    return drift.earlier().stream()
        .map(
            window ->
                window.deviations().stream()
                    .filter(Drift.Deviation::used)
                    .filter(d -> days.holds(d.day()) && deviation.holds(d.deviation()))
                    .map(d -> new Spot(d.day(), d.deviation()))
                    .toList())
        .filter(spots -> spots.size() > 1)
        .toList();
  }

  private static double lastDay(Drift drift, LocalDate start, LocalDate today) {
    double last = (double) Dates.days(start, today);
    for (Drift.Deviation deviation : drift.deviations()) {
      last = Math.max(last, deviation.day());
    }
    if (drift.expires().isPresent()) {
      last = Math.max(last, (double) Dates.days(start, drift.expires().get()));
    }
    return last;
  }

  private static List<Slice> fan(Drift drift) {
    List<FanDay> days = drift.line().value().map(Drift.Line::fan).orElse(List.of());
    return days.stream()
        .map(
            d ->
                new Slice(d.day(), d.middle(), ends(d.half()), ends(d.most()), ends(d.nearlyAll())))
        .toList();
  }

  private static Ends ends(Interval interval) {
    return new Ends(interval.lower(), interval.upper());
  }

  /**
   * The axis covers the results, the allowance and the 80 % fan; a 95 % fan that runs far beyond is
   * cut at the edge, so that the results stay readable.
   */
  private static Axis deviations(Drift drift, List<Slice> fan) {
    List<Double> values = new ArrayList<>(List.of(0.0));
    drift.allowance().ifPresent(a -> values.addAll(List.of(a, -a)));
    drift.deviations().forEach(d -> values.add(d.deviation()));
    double reach = values.stream().mapToDouble(Math::abs).max().orElse(1);
    double most = 2 * (reach > 0 ? reach : 1);
    for (Slice slice : fan) {
      values.add(Math.max(-most, Math.min(most, slice.most().lower())));
      values.add(Math.max(-most, Math.min(most, slice.most().upper())));
    }
    return Axes.around(values, fan.isEmpty() ? Axes.FEW_TICKS : Axes.MOST_TICKS);
  }

  private static List<Level> levels(Drift drift, Axis axis, Numbers numbers) {
    List<Level> levels = new ArrayList<>();
    levels.add(new Level(0, "no deviation", Level.Kind.CENTRE));
    if (drift.allowance().isPresent()) {
      double allowance = drift.allowance().getAsDouble();
      for (double side : new double[] {allowance, -allowance}) {
        if (axis.holds(side)) {
          levels.add(new Level(side, "allowance " + numbers.signed(side), Level.Kind.ACTION));
        }
      }
    }
    return levels;
  }

  private static List<Mark> marks(Drift drift, Axis axis, Numbers numbers) {
    return drift.deviations().stream()
        .map(
            d ->
                axis.holds(d.deviation())
                    ? new Mark(d.day(), d.deviation(), shape(d), "")
                    : new Mark(d.day(), d.deviation(), Shape.OFF, numbers.signed(d.deviation())))
        .toList();
  }

  private static Shape shape(Drift.Deviation deviation) {
    if (!deviation.used()) {
      return Shape.CROSS;
    }
    return deviation.assigned() ? Shape.DOT : Shape.OPEN;
  }

  private static List<Upright> uprights(Drift drift, LocalDate start, LocalDate today) {
    List<Upright> uprights = new ArrayList<>();
    uprights.add(
        new Upright(
            Math.max(0, Dates.days(start, today)),
            "today, " + Dates.brief(today),
            Colour.GREY,
            false));
    drift
        .expires()
        .ifPresent(
            day ->
                uprights.add(
                    new Upright(
                        Dates.days(start, day),
                        "expiry, " + Dates.brief(day),
                        Colour.GREY,
                        false)));
    drift
        .pool()
        .value()
        .filter(Drift.Pool::extended)
        .ifPresent(
            p -> uprights.add(new Upright(p.followedTo(), "followed so far", Colour.PALE, false)));
    Optional<LocalDate> safe = drift.lastSafeDay().value();
    if (safe.isPresent()
        && !safe.get().isBefore(start)
        && drift.expires().map(safe.get()::isBefore).orElse(true)) {
      uprights.add(
          new Upright(
              Dates.days(start, safe.get()),
              "last safe day, " + Dates.brief(safe.get()),
              Colour.ACCENT,
              true));
    }
    return uprights;
  }
}
