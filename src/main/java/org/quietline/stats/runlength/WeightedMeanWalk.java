package org.quietline.stats.runlength;

import org.quietline.stats.distribution.Normal;
import org.quietline.stats.runlength.Chart.Limits;

/**
 * An exponentially weighted mean that starts at the centre, alone or with single values watched
 * beside it.
 *
 * <p>The chance of staying within the limits obeys an integral equation over where the mean stands;
 * its kernel is taken at Gauss–Legendre points. Limits of single values give the solution bends,
 * where panels meet. Limits that still grow are followed until they are within 1e-11 of steady.
 */
final class WeightedMeanWalk implements Walk {
  private static final double AS_GOOD_AS_STEADY = 1 - 1e-11;

  private final double weight;
  private final double steadyLimit;
  private final boolean growing;
  private final double width;
  private int since;
  private Line line;
  private double[] standing = {1};
  private double knownMean = Double.NaN;
  private boolean knownIsSteady;
  private Transition known = new Transition(0, 0);

  WeightedMeanWalk(Chart.WeightedMean chart, double width) {
    this.weight = chart.weight();
    this.steadyLimit = chart.width() * Math.sqrt(weight / (2 - weight));
    this.growing = chart.limits() == Limits.GROWING;
    this.width = width;
    this.line = line(1);
  }

  @Override
  public double step(double mean) {
    boolean steady = since > 0 && limit(since) == steadyLimit;
    Line next = steady ? line : line(since + 1);
    if (!(steady && knownIsSteady && knownMean == mean)) {
      known = transition(mean, next);
      knownMean = mean;
      knownIsSteady = steady;
    }
    double signal = known.signalFrom(standing);
    standing = known.after(standing);
    line = next;
    since++;
    return signal;
  }

  @Override
  public double[] standing() {
    return standing.clone();
  }

  private Transition transition(double mean, Line next) {
    Transition transition = new Transition(standing.length, next.size());
    double limit = limit(since + 1);
    for (int i = 0; i < standing.length; i++) {
      double kept = since == 0 ? 0 : (1 - weight) * line.node(i);
      double highest = Math.min(width, (limit - kept) / weight);
      double lowest = Math.max(-width, (-limit - kept) / weight);
      transition.signal(i, Normal.above(highest - mean) + Normal.above(mean - lowest));
      double[] row = new double[next.size()];
      next.add(row, 0, kept + weight * lowest, kept + weight * highest, kept + weight * mean);
      transition.go(i, 0, row);
    }
    return transition;
  }

  /** The limit after so many values. */
  private double limit(int values) {
    if (!growing) {
      return steadyLimit;
    }
    double share = -Math.expm1(2.0 * values * Math.log1p(-weight));
    return share >= AS_GOOD_AS_STEADY ? steadyLimit : steadyLimit * Math.sqrt(share);
  }

  /** Where the mean can stand after so many values, with panels that meet at the bends. */
  private Line line(int values) {
    double limit = limit(values);
    double reach = weight * width;
    double first = (limit(values + 1) - reach) / (1 - weight);
    double later = (limit(values + 2) - reach) / (1 - weight);
    double inner = (later - reach) / (1 - weight);
    double outer = (later + reach) / (1 - weight);
    return new Line(weight, Line.edges(-limit, limit, first, -first, inner, -inner, outer, -outer));
  }
}
