package org.quietline.stats.model;

import org.quietline.stats.numeric.Require;

/**
 * The terms of a model that is linear in its coefficients: an intercept or none, and each predictor
 * with its powers up to a degree, {@code y = b0 + Σ(b·x + b·x² + …)}.
 *
 * <p>Coefficients are counted from 0 in that order: the intercept first where there is one, then
 * the powers of the first predictor, then those of the second.
 *
 * @param predictors how many predictors, at least 1
 * @param degree the highest power of each, at least 1
 * @param intercept whether the height at zero is free
 */
public record Terms(int predictors, int degree, Intercept intercept) {

  /** Whether the height at zero is free. */
  public enum Intercept {
    /** It is estimated. */
    FREE,
    /** It is zero: the model goes through the origin. */
    ZERO
  }

  /**
   * Checks the ranges.
   *
   * @param predictors how many predictors
   * @param degree the highest power of each
   * @param intercept whether the height at zero is free
   * @throws IllegalArgumentException if there is no predictor or the degree is below 1
   */
  public Terms {
    Require.atLeast(predictors, 1, "predictors");
    Require.atLeast(degree, 1, "degree");
  }

  /**
   * Predictors without powers, and an intercept.
   *
   * @param predictors how many predictors, at least 1
   * @return the terms
   * @throws IllegalArgumentException if there is no predictor
   */
  public static Terms linear(int predictors) {
    return new Terms(predictors, 1, Intercept.FREE);
  }

  /**
   * One predictor with its powers, and an intercept.
   *
   * @param degree the highest power, at least 1
   * @return the terms
   * @throws IllegalArgumentException if the degree is below 1
   */
  public static Terms polynomial(int degree) {
    return new Terms(1, degree, Intercept.FREE);
  }

  /**
   * The same terms without the intercept.
   *
   * @return the terms
   */
  public Terms throughOrigin() {
    return new Terms(predictors, degree, Intercept.ZERO);
  }

  /**
   * How many coefficients there are.
   *
   * @return the count
   */
  public int count() {
    return intercepts() + predictors * degree;
  }

  /** 1 with an intercept, 0 without. */
  int intercepts() {
    return intercept == Intercept.FREE ? 1 : 0;
  }

  /** The terms at a point whose predictors are scaled by powers of two; powers in two doubles. */
  Twofold[] row(double[] point, int[] exponents) {
    Twofold[] row = new Twofold[count()];
    int at = 0;
    if (intercept == Intercept.FREE) {
      row[at++] = Twofold.ONE;
    }
    for (int j = 0; j < predictors; j++) {
      Twofold x = Twofold.of(Math.scalb(point[j], -exponents[j]));
      Twofold power = Twofold.ONE;
      for (int d = 0; d < degree; d++) {
        power = power.times(x);
        row[at++] = power;
      }
    }
    return row;
  }

  /** The exponent of two by which each term of {@link #row} is smaller than the true one. */
  int[] exponents(int[] ofPredictors) {
    int[] exponents = new int[count()];
    int at = intercepts();
    for (int j = 0; j < predictors; j++) {
      for (int d = 1; d <= degree; d++) {
        exponents[at++] = d * ofPredictors[j];
      }
    }
    return exponents;
  }

  void check(double[] point) {
    if (point.length != predictors) {
      throw new IllegalArgumentException(
          "a point of " + point.length + " numbers for " + predictors + " predictors");
    }
    Require.values(point, 1);
  }
}
