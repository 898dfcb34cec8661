package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.PairedAgreement;
import org.quietline.assess.PairedAgreement.Point;
import org.quietline.assess.PairedComparison;
import org.quietline.report.Chart.Level;
import org.quietline.report.Chart.Mark;
import org.quietline.report.Chart.Mark.Shape;

/** The differences of samples measured in two ways, against their levels, as a chart. */
final class DifferencePictures {
  private DifferencePictures() {}

  /** The chart of a comparison. */
  static DotChart of(PairedComparison comparison, PairedAgreement agreement, Numbers numbers) {
    List<Double> levels = agreement.points().stream().map(Point::level).toList();
    List<Double> differences =
        new ArrayList<>(agreement.points().stream().map(Point::difference).toList());
    differences.add(agreement.limits().lower());
    differences.add(agreement.limits().upper());
    differences.add(0.0);
    List<Level> lines =
        List.of(
            limit(agreement.limits().upper(), numbers),
            new Level(
                comparison.mean(), "mean " + numbers.signed(comparison.mean()), Level.Kind.CENTRE),
            new Level(0, "no difference", Level.Kind.WARNING),
            limit(agreement.limits().lower(), numbers));
    List<Mark> marks =
        agreement.points().stream()
            .map(p -> new Mark(p.level(), p.difference(), Shape.DOT, ""))
            .toList();
    return new DotChart(
        Axes.around(levels, Axes.MOST_TICKS),
        Axes.around(differences, Axes.FEW_TICKS),
        lines,
        marks,
        List.of());
  }

  private static Level limit(double at, Numbers numbers) {
    return new Level(at, "limit " + numbers.signed(at), Level.Kind.ACTION);
  }
}
