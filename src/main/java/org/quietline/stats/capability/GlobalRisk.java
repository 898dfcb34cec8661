package org.quietline.stats.capability;

import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import org.quietline.stats.Interval;
import org.quietline.stats.capability.Conformance.Population;
import org.quietline.stats.capability.Conformance.Risks;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Quadrature;

/**
 * The chances of wrong decisions over a population, by quadrature over the true value: on panels as
 * narrow as the population or, about the ends of acceptance, as the error. Source: JCGM 106:2012,
 * clause 9.5.
 */
record GlobalRisk(Conformance conformance, Population population, Interval accepted) {
  /** Beyond this many deviations nothing is left that counts. */
  private static final double REACH = 10;

  /** Panels on each side of the middle of the population and of an end of acceptance. */
  private static final int PANELS = 6;

  Risks risks() {
    double from = population.mean() - REACH * population.deviation();
    double to = population.mean() + REACH * population.deviation();
    double low = conformance.lower().orElse(Double.NEGATIVE_INFINITY);
    double high = conformance.upper().orElse(Double.POSITIVE_INFINITY);
    double consumers =
        expected(this::taken, from, Math.min(low, to))
            + expected(this::taken, Math.max(high, from), to);
    double producers = expected(this::left, Math.max(low, from), Math.min(high, to));
    return new Risks(Math.min(1, consumers), Math.min(1, producers));
  }

  private double taken(double value) {
    double above = (value - accepted.lower()) / conformance.uncertainty();
    double below = (accepted.upper() - value) / conformance.uncertainty();
    return above < below
        ? Normal.below(above) - Normal.above(below)
        : Normal.below(below) - Normal.above(above);
  }

  private double left(double value) {
    return Normal.above((value - accepted.lower()) / conformance.uncertainty())
        + Normal.above((accepted.upper() - value) / conformance.uncertainty());
  }

  /** The mean of a chance over the part of the population between two ends. */
  private double expected(DoubleUnaryOperator chance, double from, double to) {
    if (from >= to) {
      return 0;
    }
    double m = population.mean();
    double s = population.deviation();
    return Quadrature.integrate(
        v -> chance.applyAsDouble(v) * Normal.density((v - m) / s) / s, edges(from, to));
  }

  private double[] edges(double from, double to) {
    TreeSet<Double> edges = new TreeSet<>();
    edges.add(from);
    edges.add(to);
    for (int i = -PANELS; i <= PANELS; i++) {
      double step = REACH * i / PANELS;
      edges.add(population.mean() + step * population.deviation());
      edges.add(accepted.lower() + step * conformance.uncertainty());
      edges.add(accepted.upper() + step * conformance.uncertainty());
    }
    return edges.stream().mapToDouble(e -> e).filter(e -> from <= e && e <= to).toArray();
  }
}
