package org.quietline.stats.model;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;
import org.quietline.stats.numeric.Roots;

/**
 * The likelihood of differences of pairs whose variance is {@code 2·scale·(w + (1 − w)·r)}, with r
 * the squared level over that of a middle level, and the logit u of w from −∞ (proportional) to ∞
 * (constant).
 *
 * <p>For a given u the best scale is {@code S(u)/m} with {@code S = Σ q/g}, {@code q = d²/2},
 * {@code g = w + (1 − w)·r}; what is left is a function of u alone, {@code P(u) = ½·Σ ln g +
 * (m/2)·ln(S/m)}.
 */
final class PrecisionLikelihood {
  private static final double BEYOND = 9;
  private static final double STEP = 0.4;
  private static final int FINE_STEPS = 60;

  private final double[] q;
  private final double[] r;
  private final double middle;

  PrecisionLikelihood(double[] levels, double[] differences) {
    int m = levels.length;
    double logs = 0;
    for (double level : levels) {
      logs += Math.log(level);
    }
    middle = Math.exp(logs / m);
    q = new double[m];
    r = new double[m];
    for (int i = 0; i < m; i++) {
      q[i] = differences[i] * differences[i] / 2;
      r[i] = relative(levels[i]);
    }
  }

  int pairs() {
    return q.length;
  }

  /** The squared level over that of the middle level. */
  double relative(double level) {
    return level / middle * (level / middle);
  }

  /** The variance at a relative squared level, for scale 1. */
  static double shape(double u, double r) {
    return logistic(u) + logistic(-u) * r;
  }

  private static double logistic(double u) {
    return 1 / (1 + Math.exp(-u));
  }

  /** The best scale for a given u. */
  double scale(double u) {
    double sum = 0;
    for (int i = 0; i < q.length; i++) {
      sum += q[i] / shape(u, r[i]);
    }
    return sum / q.length;
  }

  /** The negative logarithm of the likelihood at the best scale, but for a constant. */
  double misfit(double u) {
    double sum = 0;
    for (double relative : r) {
      sum += Math.log(shape(u, relative));
    }
    return sum / 2 + q.length / 2.0 * Math.log(scale(u));
  }

  /** The expected information of the two parts: sums over the pairs, for scale 1. */
  Information information(double u) {
    double ones = 0;
    double mixed = 0;
    double squares = 0;
    for (double relative : r) {
      double g = shape(u, relative);
      double weight = 1 / (2 * g * g);
      ones += weight;
      mixed += weight * relative;
      squares += weight * relative * relative;
    }
    return new Information(u, ones, mixed, squares);
  }

  /** The information of the two parts; scale and unit of the levels cancel in what follows. */
  record Information(double u, double ones, double mixed, double squares) {
    /** {@code 2·V²/var(V)} of the variance at a relative squared level. */
    double degreesOfFreedom(double at) {
      double spread = squares - 2 * at * mixed + at * at * ones;
      double value = shape(u, at);
      return 2 * value * value * (ones * squares - mixed * mixed) / spread;
    }
  }

  /** Proportional to the derivative of the misfit by u, with the same sign. */
  private double slope(double u) {
    double logs = 0;
    double squares = 0;
    for (int i = 0; i < q.length; i++) {
      double g = shape(u, r[i]);
      double change = (1 - r[i]) / g;
      logs += change;
      squares += change * q[i] / g;
    }
    return logs - squares / scale(u);
  }

  /** The u of the largest likelihood, perhaps infinite. */
  double best() {
    List<Double> grid = grid();
    int least = 0;
    for (int i = 1; i < grid.size(); i++) {
      if (misfit(grid.get(i)) < misfit(grid.get(least))) {
        least = i;
      }
    }
    double u = grid.get(least);
    if (Double.isInfinite(u)) {
      return u;
    }
    double low = u - STEP;
    double high = u + STEP;
    return slope(low) < 0 && slope(high) > 0 ? Roots.between(this::slope, low, high) : u;
  }

  private List<Double> grid() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double relative : r) {
      low = Math.min(low, Math.log(relative) - BEYOND);
      high = Math.max(high, Math.log(relative) + BEYOND);
    }
    List<Double> grid = new ArrayList<>(List.of(Double.NEGATIVE_INFINITY));
    for (double u = low; u <= high; u += STEP) {
      grid.add(u);
    }
    grid.add(Double.POSITIVE_INFINITY);
    return grid;
  }

  /**
   * The end of the profile-likelihood interval of {@code ln(scale·of)}: the smallest (sign −1) or
   * largest (sign 1) over all u and scales whose misfit is at most {@code allowed} above the least.
   */
  double end(DoubleUnaryOperator logOf, int sign, double best, double allowed) {
    double most = misfit(best) + allowed;
    DoubleUnaryOperator gain =
        u -> {
          double excess = Math.max(0, 2 * (most - misfit(u)) / q.length);
          return sign * (logOf.applyAsDouble(u) + Math.log(scale(u))) + reach(sign, excess);
        };
    List<Double> inside = inside(best, most);
    double largest = gain.applyAsDouble(best);
    int at = -1;
    for (int i = 0; i < inside.size(); i++) {
      double value = gain.applyAsDouble(inside.get(i));
      if (value > largest) {
        largest = value;
        at = i;
      }
    }
    List<Double> finite = inside.stream().filter(u -> !Double.isInfinite(u)).toList();
    if (finite.size() < 2 || (at >= 0 && Double.isInfinite(inside.get(at)))) {
      return sign * largest;
    }
    double middleOf = at >= 0 ? inside.get(at) : best;
    double stride = finite.get(1) - finite.get(0);
    double low = Math.max(finite.get(0), middleOf - stride);
    double high = Math.min(finite.get(finite.size() - 1), middleOf + stride);
    return sign * Math.max(largest, highest(gain, low, high));
  }

  /** The u whose misfit is allowed: a fine grid between the outermost, infinite ones included. */
  private List<Double> inside(double best, double most) {
    List<Double> grid = grid();
    double low = best;
    double high = best;
    List<Double> inside = new ArrayList<>();
    for (double u : grid) {
      if (misfit(u) <= most) {
        if (Double.isInfinite(u)) {
          inside.add(u);
        } else {
          low = Math.min(low, u);
          high = Math.max(high, u);
        }
      }
    }
    double first = grid.get(1);
    double last = grid.get(grid.size() - 2);
    low = Double.isInfinite(low) ? first : low;
    high = Double.isInfinite(high) ? last : high;
    low = Math.max(first, edge(Math.min(low, last), -STEP, most));
    high = Math.min(last, edge(Math.max(high, first), STEP, most));
    for (int i = 0; i <= FINE_STEPS; i++) {
      inside.add(low + (high - low) * i / FINE_STEPS);
    }
    return inside;
  }

  private double edge(double inner, double step, double most) {
    double outer = inner + step;
    if (misfit(inner) >= most || misfit(outer) <= most) {
      return inner;
    }
    return Roots.between(u -> misfit(u) - most, Math.min(inner, outer), Math.max(inner, outer));
  }

  /** The positive y with {@code sign·y + e^(−sign·y) − 1 = excess}. */
  private static double reach(int sign, double excess) {
    if (excess == 0) {
      return 0;
    }
    double high = 1;
    while (miss(sign, high, excess) < 0) {
      high *= 2;
    }
    return Roots.between(y -> miss(sign, y, excess), 0, high);
  }

  private static double miss(int sign, double y, double excess) {
    return Math.expm1(-sign * y) + sign * y - excess;
  }

  private static double highest(DoubleUnaryOperator gain, double low, double high) {
    if (!(high > low)) {
      return gain.applyAsDouble(low);
    }
    UnivariatePointValuePair found =
        new BrentOptimizer(1e-10, 1e-12)
            .optimize(
                GoalType.MAXIMIZE,
                new UnivariateObjectiveFunction(gain::applyAsDouble),
                new SearchInterval(low, high),
                new MaxEval(1000));
    return found.getValue();
  }
}
