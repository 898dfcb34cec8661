package org.quietline.assess;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.quietline.assess.ControlHistory.Entry;
import org.quietline.assess.Hint.Estimate;
import org.quietline.stats.mixed.NestedGroups;
import org.quietline.stats.mixed.StudentEstimate;
import org.quietline.stats.mixed.VarianceComponents;
import org.quietline.stats.model.LeastSquares;
import org.quietline.stats.model.Terms;

/**
 * How far off results are under a pattern. Results under one calibration err together, and so do
 * those of one sitting; where the results show it, both are counted as components of variance, else
 * the interval would be too narrow: by least squares alone 95 % intervals of a lasting step held 70
 * %.
 */
final class OriginFit {
  private static final double LEVEL = 0.95;

  private final List<Entry> entries;
  private final double[] deviations;
  private final StreamNumbers streams;
  private final Optional<NestedGroups> groups;

  OriginFit(List<Entry> entries, List<Double> deviations, StreamNumbers streams) {
    this.entries = entries;
    this.deviations = deviations.stream().mapToDouble(u -> u).toArray();
    this.streams = streams;
    this.groups = groups();
  }

  LeastSquares leastSquares(OriginModel model) {
    Terms terms = Terms.linear(1 + streams.count()).throughOrigin();
    return LeastSquares.fit(terms, streams.beside(model.predictor()), deviations);
  }

  Estimate estimate(OriginModel model, LeastSquares plain) {
    return groups
        .flatMap(g -> components(deviations, g, columns(model)))
        .map(
            fit -> {
              StudentEstimate estimate = fit.coefficient(1);
              return new Estimate(estimate.value(), estimate.interval(LEVEL), model.per());
            })
        .orElseGet(
            () ->
                new Estimate(
                    plain.coefficient(0), plain.coefficientInterval(0, LEVEL), model.per()));
  }

  /** Empty where the results do not differ within the innermost groups, so that nothing shows. */
  static Optional<VarianceComponents> components(
      double[] values, NestedGroups groups, double[][] columns) {
    try {
      return Optional.of(VarianceComponents.fit(values, groups, columns));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  /** The predictor, and one column for each stream but the first. */
  private double[][] columns(OriginModel model) {
    double[][] rows = streams.beside(model.predictor());
    double[][] columns = new double[streams.count()][rows.length];
    for (int i = 0; i < rows.length; i++) {
      columns[0][i] = rows[i][0];
      for (int k = 1; k < streams.count(); k++) {
        columns[k][i] = rows[i][1 + k];
      }
    }
    return columns;
  }

  /** Calibrations, and sittings within them where some have several results. */
  private Optional<NestedGroups> groups() {
    int[] calibrations =
        labels(e -> List.of(e.instrument(), e.calibrationKey().map(List::of).orElse(List.of())));
    int[] sessions = labels(Entry::session);
    List<int[]> levels = new ArrayList<>();
    int windows = count(calibrations);
    if (windows > 1 && windows < entries.size()) {
      levels.add(calibrations);
    }
    int sittings = count(sessions);
    if (sittings > windows && sittings < entries.size()) {
      levels.add(sessions);
    }
    return levels.isEmpty()
        ? Optional.empty()
        : Optional.of(NestedGroups.of(levels.toArray(int[][]::new)));
  }

  private int[] labels(Function<Entry, Object> of) {
    Map<Object, Integer> numbers = new HashMap<>();
    return entries.stream()
        .mapToInt(e -> numbers.computeIfAbsent(of.apply(e), k -> numbers.size()))
        .toArray();
  }

  private static int count(int[] labels) {
    Set<Integer> different = new HashSet<>();
    for (int label : labels) {
      different.add(label);
    }
    return different.size();
  }
}
