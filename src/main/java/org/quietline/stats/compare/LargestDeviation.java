package org.quietline.stats.compare;

import java.util.Arrays;
import org.apache.commons.math3.special.Gamma;
import org.quietline.stats.distribution.Student;

/**
 * The distribution of the largest standardised deviation of n normal values, on one side.
 *
 * <p>With {@code w = (x − mean)/√(SS·(n − 1)/n)}, the sine of an angle φ, the largest w exceeds a
 * value with the chance {@code Q(n, w) = n·∫ f(n, w)·(1 − Q(n − 1, b(w))) dw}: one value is at w,
 * and all the others, which are independent of that when standardised among themselves, stay below
 * it, {@code b(w) = w·√(n/(n − 2))/√(1 − w²)}. From {@code Q(3, φ) = (3/π)(π/2 − φ)} upwards each
 * is computed from the one before, from both ends, by the Gauss rule on cells that crowd at the
 * angles where several values can be equal and largest, and its root of order n − 2 kept as a cubic
 * with the exact slope. Accurate to about 1e-7 up to 30 values and 2e-6 at 60; where no two values
 * can be so far out together, to 1e-12 relative. Source: Grubbs (1950), Ann. Math. Statist. 21,
 * 27–58; David (1956), Biometrika 43, 85–91.
 */
final class LargestDeviation {
  private static final int CELLS = 96;
  private static final int MOST_KNOTS = 6;

  /** A chance that adds nothing to any other. */
  private static final double NOTHING = 1e-18;

  private static final double[] POINTS = points();
  private static final double[] WEIGHTS = weights();

  private final int n;
  private final double[] angles;
  private final double[] above;
  private final double[] below;
  private final double[] densities;

  private LargestDeviation(int n, double[] angles) {
    this.n = n;
    this.angles = angles;
    this.above = new double[angles.length];
    this.below = new double[angles.length];
    this.densities = new double[angles.length];
  }

  /** The points of the Gauss rule of four on the unit interval. */
  private static double[] points() {
    double far = Math.sqrt(3.0 / 7 + 2.0 / 7 * Math.sqrt(1.2)) / 2;
    double near = Math.sqrt(3.0 / 7 - 2.0 / 7 * Math.sqrt(1.2)) / 2;
    return new double[] {0.5 - far, 0.5 - near, 0.5 + near, 0.5 + far};
  }

  private static double[] weights() {
    double far = (18 - Math.sqrt(30)) / 72;
    double near = (18 + Math.sqrt(30)) / 72;
    return new double[] {far, near, near, far};
  }

  /** The distribution for n values, at least 3. */
  static LargestDeviation of(int n) {
    LargestDeviation distribution = ofThree();
    for (int i = 4; i <= n; i++) {
      distribution = next(distribution);
    }
    return distribution;
  }

  private static LargestDeviation ofThree() {
    LargestDeviation three = new LargestDeviation(3, new double[] {Math.PI / 6, Math.PI / 2});
    three.above[0] = 1;
    three.below[1] = 1;
    Arrays.fill(three.densities, 3 / Math.PI);
    return three;
  }

  private static LargestDeviation next(LargestDeviation fewer) {
    int n = fewer.n + 1;
    LargestDeviation result = new LargestDeviation(n, mesh(n));
    double scale = n * densityAtZero(n);
    double[] angles = result.angles;
    double[] cells = new double[angles.length - 1];
    for (int i = 0; i < cells.length; i++) {
      double width = angles[i + 1] - angles[i];
      for (int j = 0; j < POINTS.length; j++) {
        cells[i] += scale * width * WEIGHTS[j] * fewer.others(angles[i] + width * POINTS[j]);
      }
    }
    for (int i = 0; i < cells.length; i++) {
      int back = cells.length - 1 - i;
      result.densities[i] = scale * fewer.others(angles[i]);
      result.below[i + 1] = result.below[i] + cells[i];
      result.above[back] = result.above[back + 1] + cells[back];
    }
    return result;
  }

  /** The density of w at zero for n values; elsewhere times {@code cos(φ)^(n − 4)}. */
  static double densityAtZero(int n) {
    return Math.exp(Gamma.logGamma((n - 1) / 2.0) - Gamma.logGamma((n - 2) / 2.0))
        / Math.sqrt(Math.PI);
  }

  /** {@code cos(φ)^(n' − 3)} times the chance that all others stay below, for n' = n + 1. */
  private double others(double angle) {
    double most = Math.tan(angle) * Math.sqrt((n + 1.0) / (n - 1.0));
    return Math.pow(Math.cos(angle), n - 2.0) * below(most);
  }

  /** The angles where k values are equal and largest, and cells between that crowd at them. */
  private static double[] mesh(int n) {
    int knots = Math.min(n - 1, MOST_KNOTS);
    double[] edges = new double[knots];
    for (int k = 1; k <= knots; k++) {
      int equal = k == knots ? n - 1 : k;
      edges[knots - k] = Math.asin(Math.sqrt((n - equal) / (equal * (n - 1.0))));
    }
    double[] mesh = new double[(knots - 1) * CELLS + 1];
    for (int i = 0; i < mesh.length; i++) {
      int panel = Math.min(i / CELLS, knots - 2);
      double part = (i - panel * CELLS) / (double) CELLS;
      double crowded = panel == 0 ? part * (2 - part) : part * part * (3 - 2 * part);
      mesh[i] = edges[panel] + (edges[panel + 1] - edges[panel]) * crowded;
    }
    return mesh;
  }

  /** The chance that the largest w exceeds a value. */
  double above(double w) {
    return w >= 1 ? 0 : above(w, 1 - w * w);
  }

  /** The same, {@code 1 − w²} with all its digits. */
  double above(double w, double rest) {
    if (w > 0 && w * w >= (n - 2) / (2.0 * (n - 1))) {
      return n * Student.above(w * Math.sqrt((n - 2) / rest), n - 2);
    }
    double angle = Math.asin(Math.max(0, w));
    return angle <= angles[0] ? 1 : Math.min(1, between(above, -1, angle));
  }

  /** The chance that all w stay below a value; small chances keep their digits. */
  private double below(double w) {
    if (w >= 1) {
      return 1;
    }
    double angle = Math.asin(w);
    if (angle <= angles[0]) {
      return 0;
    }
    double sum = between(below, 1, angle);
    return sum < 0.5 ? sum : 1 - between(above, -1, angle);
  }

  /** The root of order n − 2, which is nearly straight at both ends, as a cubic of the angle. */
  private double between(double[] chances, int direction, double angle) {
    int found = Arrays.binarySearch(angles, angle);
    int i = found >= 0 ? Math.min(found, angles.length - 2) : -found - 2;
    if (Math.max(chances[i], chances[i + 1]) < NOTHING) {
      return 0;
    }
    double width = angles[i + 1] - angles[i];
    double t = (angle - angles[i]) / width;
    double u = 1 - t;
    double left = Math.pow(chances[i], 1 / (n - 2.0));
    double right = Math.pow(chances[i + 1], 1 / (n - 2.0));
    double secant = right - left;
    double leftRise = rise(direction * densities[i] * width, chances[i], left, secant);
    double rightRise = rise(direction * densities[i + 1] * width, chances[i + 1], right, secant);
    double root =
        u * u * ((1 + 2 * t) * left + t * leftRise) + t * t * ((1 + 2 * u) * right - u * rightRise);
    return Math.pow(root, n - 2.0);
  }

  /** The slope of the root over a cell; at a chance of nothing that of the straight line. */
  private double rise(double density, double chance, double root, double secant) {
    return chance < NOTHING ? secant : density * root / chance / (n - 2);
  }

  /** What the whole distribution sums up to, which is 1 but for rounding. */
  double total() {
    return above[0];
  }
}
