package org.quietline.assess;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.quietline.assess.ControlHistory.Entry;
import org.quietline.assess.Story.Size;
import org.quietline.stats.Interval;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.mixed.NestedGroups;
import org.quietline.stats.mixed.VarianceComponents;

/** How far each control material was off during a story. */
final class StorySizes {
  private static final double BEYOND_95 = 0.025;

  /** Without a baseline the deviation comes from limits that already allow for few results. */
  private static final double NORMAL_95 = 1.959_963_984_540_054;

  private final ControlHistory history;

  StorySizes(ControlHistory history) {
    this.history = history;
  }

  List<Size> of(StoryGroup group) {
    List<Entry> results = group.results();
    return results.stream()
        .map(Entry::material)
        .distinct()
        .map(m -> size(results.stream().filter(e -> e.material().equals(m)).toList()))
        .toList();
  }

  private Size size(List<Entry> during) {
    Entry any = during.get(0);
    double mean = during.stream().mapToDouble(Entry::difference).average().orElseThrow();
    double half =
        error(during)
            * (any.baselineResults() == 0
                ? NORMAL_95
                : Student.exceededWith(BEYOND_95, Math.max(1, any.baselineResults() - 1)));
    return new Size(any.material(), during.size(), mean, new Interval(mean - half, mean + half));
  }

  private double error(List<Entry> during) {
    Entry any = during.get(0);
    List<Entry> stream = history.counted(any.instrument(), any.material());
    List<Entry> base = stream.stream().filter(Entry::inBaseline).toList();
    double plain =
        during.stream()
            .mapToDouble(e -> e.sigma().orElseThrow())
            .map(s -> s * s)
            .max()
            .orElseThrow();
    double centre = any.baselineResults() == 0 ? 0 : 1.0 / any.baselineResults();
    Optional<List<Double>> components = components(stream, during);
    double calibrations = components.map(c -> c.get(0)).orElse(0.0);
    double within = Math.max(plain, components.map(c -> c.get(1)).orElse(plain));
    return Math.sqrt(
        calibrations * (shared(during) + shared(base)) + within * (1.0 / during.size() + centre));
  }

  /** {@code Σ(n(c)/n)²}: the part of an error common to each calibration that a mean keeps. */
  private static double shared(List<Entry> results) {
    Map<Optional<String>, Integer> counts = new LinkedHashMap<>();
    results.forEach(e -> counts.merge(e.calibrationKey(), 1, Integer::sum));
    return counts.values().stream()
        .mapToDouble(n -> (double) n * n / results.size() / results.size())
        .sum();
  }

  /** The variances of calibrations and within them, beside the story's step. */
  private static Optional<List<Double>> components(List<Entry> stream, List<Entry> during) {
    Map<Optional<String>, Integer> keys = new HashMap<>();
    Set<ControlPlace> places = new HashSet<>();
    during.forEach(e -> places.add(e.place()));
    int[] labels = new int[stream.size()];
    double[] values = new double[stream.size()];
    double[] step = new double[stream.size()];
    int inStep = 0;
    for (int i = 0; i < labels.length; i++) {
      Entry entry = stream.get(i);
      labels[i] = keys.computeIfAbsent(entry.calibrationKey(), k -> keys.size());
      values[i] = entry.difference();
      step[i] = places.contains(entry.place()) ? 1 : 0;
      inStep += (int) step[i];
    }
    if (keys.size() < 2) {
      return Optional.empty();
    }
    NestedGroups groups = NestedGroups.of(labels);
    double[][] columns = {step};
    boolean differs = inStep > 0 && inStep < stream.size();
    return OriginFit.components(values, groups, differs ? columns : new double[0][])
        .map(VarianceComponents::components);
  }
}
