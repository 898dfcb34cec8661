package org.quietline.stats.mixed;

import java.util.List;
import org.quietline.stats.numeric.Require;

/**
 * A model fitted by full (not restricted) maximum likelihood, for comparing models that differ in
 * their fixed part.
 *
 * <p>Components come out smaller than by restricted likelihood, which counts the fixed coefficients
 * and is the one to use for the components themselves.
 *
 * @param components the components of variance (and for correlated lines the covariance last but
 *     one), residual last
 * @param logLikelihood the largest log likelihood, {@code −½·(ln|V| + r'V⁻¹r + n·ln 2π)}
 * @param parameters how many were fitted, fixed coefficients and components
 * @param n how many values there were
 */
public record FullLikelihood(List<Double> components, double logLikelihood, int parameters, int n) {
  /**
   * Copies the components and checks.
   *
   * @param components the components, residual last
   * @param logLikelihood the largest log likelihood
   * @param parameters how many were fitted
   * @param n how many values there were
   * @throws IllegalArgumentException if the log likelihood is not finite or there are no parameters
   */
  public FullLikelihood {
    components = List.copyOf(components);
    Require.finite(logLikelihood, "log likelihood");
    Require.atLeast(parameters, 1, "parameters");
    Require.atLeast(n, 1, "n");
  }

  static FullLikelihood of(GivenRatios best, List<Double> components) {
    return new FullLikelihood(
        components,
        best.logLikelihood(Likelihood.FULL),
        best.blocks().fixed().columns() + components.size(),
        best.blocks().fixed().observations());
  }

  /**
   * Akaike's criterion with the correction for small samples, {@code −2ℓ + 2k + 2k(k + 1)/(n − k −
   * 1)}; the smaller the better. Source: Hurvich and Tsai, Biometrika 76 (1989) 297–307.
   *
   * @return the criterion, infinite where there are at most k + 1 values
   */
  public double correctedAkaike() {
    int spare = n - parameters - 1;
    return spare <= 0
        ? Double.POSITIVE_INFINITY
        : -2 * logLikelihood + 2.0 * parameters + 2.0 * parameters * (parameters + 1) / spare;
  }
}
