package org.quietline.stats.runlength;

/**
 * The upper cumulative sum {@code C = max(0, C + x − k)}, alone or with single values watched
 * beside it.
 *
 * <p>The sum stands at zero or on a line up to the decision interval; the integral equation over
 * both is taken at zero and at Gauss–Legendre points.
 */
final class CumulativeSumWalk {
  private final double reference;
  private final double interval;
  private final double width;
  private final Line line;

  private CumulativeSumWalk(double reference, double interval, double width) {
    this.reference = reference;
    this.interval = interval;
    this.width = width;
    double up = width - reference;
    double down = width + reference;
    double high = interval - up;
    this.line =
        new Line(
            1, Line.edges(0, interval, high, down, high - up, high + down, down - up, down + down));
  }

  /** The walk of the sum from its start. */
  static Walk of(double reference, double interval, double start, double width) {
    CumulativeSumWalk sum = new CumulativeSumWalk(reference, interval, width);
    double[] places = new double[sum.line.size() + 1];
    for (int i = 0; i < sum.line.size(); i++) {
      places[i + 1] = sum.line.node(i);
    }
    return new SumWalk(sum.ways(start), sum.ways(places));
  }

  private Ways ways(double... places) {
    Ways ways = new Ways(line.size() + 1);
    for (double place : places) {
      double kept = place - reference;
      double highest = Math.min(width, interval - kept);
      ways.source(-width, highest, -width, -kept);
      ways.go(line, 1, Math.max(0, kept - width), Math.min(interval, kept + width), kept, 1);
    }
    return ways;
  }
}
