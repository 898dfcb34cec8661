package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.Capability;
import org.quietline.assess.Capability.Batch;
import org.quietline.report.Chart.Axis;
import org.quietline.report.Chart.Level;
import org.quietline.report.Chart.Mark;
import org.quietline.report.Chart.Mark.Shape;
import org.quietline.report.ControlChart.Ring;

/** Batches against the limits as a chart. */
final class BatchPictures {
  private BatchPictures() {}

  /** The chart of the batches, of which there is at least one. */
  static DotChart of(Capability capability, Numbers numbers) {
    List<Batch> batches = capability.batches();
    List<Double> values = new ArrayList<>();
    batches.forEach(b -> values.add(b.value()));
    capability.lowerLimit().ifPresent(values::add);
    capability.upperLimit().ifPresent(values::add);
    Axis value = Axes.around(values, Axes.MOST_TICKS);
    List<Level> levels = new ArrayList<>();
    capability
        .upperLimit()
        .ifPresent(u -> levels.add(new Level(u, "limit " + numbers.result(u), Level.Kind.ACTION)));
    levels.add(
        new Level(capability.mean(), "mean " + numbers.fine(capability.mean()), Level.Kind.CENTRE));
    capability
        .lowerLimit()
        .ifPresent(l -> levels.add(new Level(l, "limit " + numbers.result(l), Level.Kind.ACTION)));
    List<Mark> marks =
        batches.stream()
            .map(b -> new Mark(Dates.onAxis(b.at()), b.value(), Shape.DOT, ""))
            .toList();
    List<Ring> rings =
        batches.stream()
            .filter(b -> beyond(b, capability))
            .map(b -> new Ring(Dates.onAxis(b.at()), b.value(), true, ""))
            .toList();
    Axis time = Axes.time(batches.get(0).at(), batches.get(batches.size() - 1).at());
    return new DotChart(time, value, levels, marks, rings);
  }

  /** Whether a batch is beyond a limit. */
  static boolean beyond(Batch batch, Capability capability) {
    return batch.value() > capability.upperLimit().orElse(Double.POSITIVE_INFINITY)
        || batch.value() < capability.lowerLimit().orElse(Double.NEGATIVE_INFINITY);
  }
}
