package org.quietline.stats.mixed;

import java.util.Arrays;
import org.quietline.stats.distribution.ChiSquare;

/**
 * Independent chi-squares of nested groups: one for each level and one for the residual.
 *
 * <p>Stage s takes the levels outside s as fixed and projects them out; {@code q(s)} is the
 * quadratic form of what is left under the components from s inwards. At the true components {@code
 * (q(s) − q(s + 1))/σ²} has the chi-square distribution with as many degrees of freedom as level s
 * adds, independently of the stages inside it: it is the part of a generalised least-squares
 * residual that the further contrasts add.
 */
final class StagePivots {
  private static final int DRAWS = 1021;

  /** Spreads two to four stages most evenly, by Korobov's measure of the worst error. */
  private static final int GENERATOR = 89;

  private static final int MOST_STEPS = 100;
  private static final double CLOSE = 1e-9;

  private final Blocks[] stages;
  private final int[] degreesOfFreedom;
  private final double residualSquares;

  private StagePivots(Blocks[] stages, int[] degreesOfFreedom, double residualSquares) {
    this.stages = stages;
    this.degreesOfFreedom = degreesOfFreedom;
    this.residualSquares = residualSquares;
  }

  static StagePivots of(FixedPart fixed, NestedGroups groups) {
    int levels = groups.levels();
    Blocks[] stages = new Blocks[levels];
    int[] rank = new int[levels + 2];
    rank[0] = fixed.columns();
    rank[levels + 1] = fixed.observations();
    stages[0] = NestedBlocks.of(fixed, groups);
    double squares = 0;
    for (int level = 0; level < levels; level++) {
      FixedPart inner = fixed.within(groups.groupOf(level), groups.count(level));
      rank[level + 1] = groups.count(level) + inner.columns();
      squares = inner.restSquares();
      if (level + 1 < levels) {
        stages[level + 1] = NestedBlocks.within(inner, groups, level);
      }
    }
    int[] df = new int[levels + 1];
    for (int s = 0; s <= levels; s++) {
      df[s] = rank[s + 1] - rank[s];
      if (df[s] < 1) {
        throw new IllegalArgumentException(
            s == levels
                ? "no value is left for the residual: needs innermost groups of two or more"
                : "level " + s + " adds no groups to what stands outside it");
      }
    }
    return new StagePivots(stages, df, squares);
  }

  /** All levels random. */
  Blocks blocks() {
    return stages[0];
  }

  /** For each stage its chi-squares. */
  double[][] draws() {
    return draws(DRAWS, GENERATOR);
  }

  /**
   * Equal steps of chance for each stage, put together in the order of a lattice: place {@code
   * i·g^s} modulo the count, which must be a prime, for the i-th draw of stage s.
   */
  double[][] draws(int count, int generator) {
    double[][] draws = new double[degreesOfFreedom.length][count];
    long factor = 1;
    for (int s = 0; s < draws.length; s++) {
      double[] steps = new double[count];
      for (int i = 0; i < count; i++) {
        steps[i] = ChiSquare.quantile((i + 0.5) / count, degreesOfFreedom[s]);
      }
      for (int i = 0; i < count; i++) {
        draws[s][i] = steps[(int) (i * factor % count)];
      }
      factor = factor * generator % count;
    }
    return draws;
  }

  /** For each set of chi-squares the components that it stands for, residual last. */
  double[][] components(double[][] draws) {
    double[][] components = new double[draws[0].length][];
    Arrays.setAll(components, i -> components(draws, i));
    return components;
  }

  private double[] components(double[][] draws, int draw) {
    int levels = stages.length;
    double[] components = new double[levels + 1];
    double residual = residualSquares / draws[levels][draw];
    components[levels] = residual;
    double inside = residualSquares;
    double[] ratios = new double[0];
    for (int s = levels - 1; s >= 0; s--) {
      double[] all = new double[levels - s];
      System.arraycopy(ratios, 0, all, 1, ratios.length);
      ratios = all;
      inside = solve(stages[s], ratios, inside, residual * draws[s][draw]);
      components[s] = residual * ratios[0];
    }
    return components;
  }

  /**
   * Moves the first ratio to where the quadratic form exceeds that of the stages inside it by a
   * wanted amount, below zero if need be, and returns the quadratic form there.
   *
   * <p>The reciprocal of the excess is concave and nearly straight in the ratio, so Newton's method
   * needs a few steps; where one would leave the covariance matrices it is halved. Where the form
   * does not depend on the ratio, because all means are equal, it stays.
   */
  private static double solve(Blocks blocks, double[] ratios, double inside, double wanted) {
    GivenRatios given = GivenRatios.of(blocks, ratios);
    while (!given.isLegal()) {
      ratios[0] = 2 * ratios[0] + 1;
      given = GivenRatios.of(blocks, ratios);
    }
    for (int i = 0; i < MOST_STEPS; i++) {
      double excess = given.quadraticForm() - inside;
      double step = excess * (1 - excess / wanted) / given.slopeOfQuadraticForm(0);
      if (Math.abs(excess - wanted) <= CLOSE * wanted || !Double.isFinite(step)) {
        break;
      }
      double from = ratios[0];
      do {
        ratios[0] = from + step;
        step /= 2;
        given = GivenRatios.of(blocks, ratios);
      } while (!given.isLegal() && ratios[0] != from);
    }
    return given.quadraticForm();
  }
}
