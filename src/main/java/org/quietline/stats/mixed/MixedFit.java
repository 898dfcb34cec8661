package org.quietline.stats.mixed;

/**
 * The best ratios by restricted likelihood with what follows from them: residual variance,
 * covariance of the components, and judged estimates.
 */
final class MixedFit {
  /** Below this share of the sum of squares a residual is rounding. */
  private static final double ROUNDING = 1e-24;

  /** Information whose scaled pivot is below this cannot tell components apart. */
  private static final double SINGULAR = 1e-9;

  private final GivenRatios given;
  private final RatioScale scale;
  private final double residualVariance;
  private final double[][] unitCovariance;

  private MixedFit(GivenRatios given, RatioScale scale) {
    this.given = given;
    this.scale = scale;
    this.residualVariance = given.residualVariance(Likelihood.RESTRICTED);
    this.unitCovariance = SymmetricFactor.inPlace(new Traces(given).information()).inverse();
  }

  /**
   * Fits.
   *
   * @throws IllegalArgumentException if nothing is left for the residual, or the components cannot
   *     be told apart
   */
  static MixedFit of(Blocks blocks, RatioScale scale) {
    Blocks.Residual residual = blocks.residual();
    if (residual.degreesOfFreedom() < 1) {
      throw new IllegalArgumentException(
          "no value is left for the residual: no innermost group has more values than it has"
              + " effects");
    }
    if (!(residual.squares() > ROUNDING * blocks.fixed().restSquares())) {
      throw new IllegalArgumentException(
          "the values do not scatter within the innermost groups: nothing to measure effects by");
    }
    requireTellable(blocks, scale);
    return new MixedFit(RatioSearch.best(blocks, scale, Likelihood.RESTRICTED), scale);
  }

  private static void requireTellable(Blocks blocks, RatioScale scale) {
    double[] typical = scale.ratios(scale.typical());
    double[][] information = new Traces(GivenRatios.of(blocks, typical)).information();
    double[] root = new double[information.length];
    for (int i = 0; i < root.length; i++) {
      root[i] = Math.sqrt(information[i][i]);
    }
    for (int i = 0; i < root.length; i++) {
      for (int j = 0; j < root.length; j++) {
        information[i][j] /= root[i] * root[j];
      }
    }
    if (!SymmetricFactor.inPlace(information).isDefinite(SINGULAR)) {
      throw new IllegalArgumentException(
          "the components of variance cannot be told apart by these groups");
    }
  }

  GivenRatios given() {
    return given;
  }

  double residualVariance() {
    return residualVariance;
  }

  double component(int k) {
    return residualVariance * given.ratio(k);
  }

  double logLikelihood() {
    return given.logLikelihood(Likelihood.RESTRICTED);
  }

  /** The ratios that make the full likelihood largest. */
  GivenRatios byFullLikelihood() {
    return RatioSearch.best(given.blocks(), scale, Likelihood.FULL);
  }

  StudentEstimate judged(Target target) {
    return new Prediction(given, target).judged(unitCovariance, residualVariance);
  }

  /** The covariance matrix of the components, residual last, for a residual variance of one. */
  double[][] unitCovariance() {
    return unitCovariance;
  }

  /** The covariance matrix of the components, residual last. */
  double[][] covariance() {
    double square = residualVariance * residualVariance;
    double[][] covariance = new double[unitCovariance.length][unitCovariance.length];
    for (int i = 0; i < covariance.length; i++) {
      for (int j = 0; j < covariance.length; j++) {
        covariance[i][j] = square * unitCovariance[i][j];
      }
    }
    return covariance;
  }
}
