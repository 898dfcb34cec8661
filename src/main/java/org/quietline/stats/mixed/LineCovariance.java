package org.quietline.stats.mixed;

import org.quietline.stats.numeric.Require;

/**
 * One group's line at given ratios: height at a reference time and slope, and how well they are
 * known, as variances and covariance per unit of the residual variance.
 */
record LineCovariance(
    double reference, double height, double slope, double variance, double cross, double rise) {
  static LineCovariance of(LinesGivenRatios lines, int group, double reference, double... zeros) {
    LinesGivenRatios.Height here = lines.groupLineAt(group, reference, zeros);
    LinesGivenRatios.Height next = lines.groupLineAt(group, reference + 1, zeros);
    LinesGivenRatios.Height slope = lines.groupSlope(group);
    double cross =
        (next.unscaledVariance() - here.unscaledVariance() - slope.unscaledVariance()) / 2;
    return new LineCovariance(
        reference,
        here.value(),
        slope.value(),
        here.unscaledVariance(),
        cross,
        slope.unscaledVariance());
  }

  double valueAt(double time) {
    return height + slope * (time - reference);
  }

  double varianceAt(double time) {
    double step = time - reference;
    return Math.max(0, variance + step * (2 * cross + step * rise));
  }

  /** After values of the group at further times, by one rank-one update for each. */
  LineCovariance after(double... times) {
    double v = variance;
    double c = cross;
    double r = rise;
    for (double time : times) {
      Require.finite(time, "time");
      double step = time - reference;
      double withHeight = v + step * c;
      double withSlope = c + step * r;
      double all = 1 + withHeight + step * withSlope;
      v -= withHeight * withHeight / all;
      c -= withHeight * withSlope / all;
      r -= withSlope * withSlope / all;
    }
    return new LineCovariance(reference, height, slope, v, c, r);
  }
}
