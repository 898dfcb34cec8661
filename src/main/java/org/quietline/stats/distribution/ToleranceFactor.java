package org.quietline.stats.distribution;

import java.util.HashMap;
import java.util.Map;
import org.quietline.stats.numeric.Quadrature;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * Factors k of normal tolerance intervals: {@code mean ± k·s}, or {@code mean + k·s} on one side,
 * holds at least a content of the population with a given confidence, whatever the true mean and
 * deviation.
 *
 * <p>Two-sided: {@code confidence = ∫ P(χ²(n−1) ≥ (n−1)·r(z)²/k²) dP(z)}, with z the error of the
 * mean in true deviations and r(z) the half-width that holds the content about it. One-sided:
 * {@code k = t(confidence; n−1, δ)/√n} with {@code δ = √n·Φ⁻¹(content)} of the noncentral t. Both
 * exact, to about 1e-10 relative. Source: ISO 16269-6:2014, annexes; Odeh and Owen (1980).
 */
public final class ToleranceFactor {
  private static final int PANELS = 8;
  private static final double REACH = 9;

  /** Wide enough that rounding cannot hide the change of sign. */
  private static final double MARGIN = 1e-6;

  private ToleranceFactor() {}

  /**
   * The factor of an interval with two ends.
   *
   * @param n how many values the mean and deviation come from, at least 2
   * @param content the share of the population to hold, between 0 and 1
   * @param confidence the chance of holding it, between 0 and 1
   * @return k
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double twoSided(int n, double content, double confidence) {
    Require.share(content, "content");
    return twoSidedLeaving(n, 1 - content, confidence);
  }

  /**
   * The same by the share left outside, exact for contents close to 1.
   *
   * @param n how many values the mean and deviation come from, at least 2
   * @param outside the share of the population left outside, between 0 and 1
   * @param confidence the chance of holding the rest, between 0 and 1
   * @return k
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double twoSidedLeaving(int n, double outside, double confidence) {
    Require.atLeast(n, 2, "n");
    Require.share(outside, "share outside");
    Require.share(confidence, "confidence");
    HalfWidths widths = new HalfWidths(n, outside);
    double narrow = Normal.exceededWith(outside / 2);
    double start =
        narrow * Math.sqrt((n - 1) * (1 + 1.0 / n) / ChiSquare.quantile(1 - confidence, n - 1));
    double logStart = Math.log(start);
    return Math.exp(
        Roots.of(logK -> widths.confidence(Math.exp(logK)) - confidence, logStart, 0.2));
  }

  /**
   * The factor of an interval with one end.
   *
   * @param n how many values the mean and deviation come from, at least 2
   * @param content the share of the population to hold, between 0 and 1
   * @param confidence the chance of holding it, between 0 and 1
   * @return k, negative where a content below one half asks for less than the mean
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double oneSided(int n, double content, double confidence) {
    Require.atLeast(n, 2, "n");
    Require.share(content, "content");
    Require.share(confidence, "confidence");
    double root = Math.sqrt(n);
    double delta = root * Normal.quantile(content);
    double t =
        Roots.of(at -> NoncentralT.cdf(at, n - 1, delta) - confidence, delta, 1 + Math.abs(delta));
    return t / root;
  }

  /** The half-widths r(z) at the quadrature points, which do not depend on k. */
  private static final class HalfWidths {
    private final int n;
    private final double[] edges = new double[PANELS + 1];
    private final double outside;
    private final Map<Double, Double> known = new HashMap<>();

    HalfWidths(int n, double outside) {
      this.n = n;
      this.outside = outside;
      for (int i = 0; i <= PANELS; i++) {
        edges[i] = REACH * i / PANELS;
      }
    }

    /** The confidence of a factor; z runs in deviations of the mean. */
    double confidence(double k) {
      return 2
          * Quadrature.integrate(
              z -> {
                double ratio = known.computeIfAbsent(z, this::halfWidth) / k;
                return Normal.density(z) * ChiSquare.above((n - 1) * ratio * ratio, n - 1);
              },
              edges);
    }

    private double halfWidth(double z) {
      double off = z / Math.sqrt(n);
      double narrow = Normal.exceededWith(outside / 2);
      if (off == 0) {
        return narrow;
      }
      return Roots.between(
          r -> Normal.above(r - off) + Normal.above(r + off) - outside,
          narrow - MARGIN,
          narrow + off + MARGIN);
    }
  }
}
