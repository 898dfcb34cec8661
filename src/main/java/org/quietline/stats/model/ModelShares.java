package org.quietline.stats.model;

import java.util.Arrays;
import java.util.List;
import org.quietline.stats.numeric.Require;

/**
 * How much several models of the same values are each supported: a criterion that sets the misfit
 * against the number of parameters, and each model's share of the relative likelihood.
 *
 * <p>Criteria are for normal errors of one unknown deviation, which counts as a parameter; they
 * mean something only as differences between models of the same values. The model with the least is
 * best supported; with d its distance from the least, a model's relative likelihood is {@code
 * exp(−d/2)}, and its share that over the sum of all. Shares speak about the models compared, and
 * about no other. Sources: Akaike (1974), IEEE Transactions on Automatic Control 19, 716–723;
 * Hurvich and Tsai (1989), Biometrika 76, 297–307; Schwarz (1978), Annals of Statistics 6, 461–464;
 * Burnham and Anderson (2002), Model Selection and Multimodel Inference, chapter 2.
 *
 * @param shares the share of each model, in the order of the criteria; they sum to 1
 */
public record ModelShares(List<Double> shares) {

  /**
   * Copies.
   *
   * @param shares the share of each model
   */
  public ModelShares {
    shares = List.copyOf(shares);
  }

  /**
   * The shares of models.
   *
   * @param criteria the criterion of each, finite, at least one
   * @return the shares
   * @throws IllegalArgumentException if there is none or one is NaN or infinite
   */
  public static ModelShares of(double... criteria) {
    Require.values(criteria, 1);
    double least = Arrays.stream(criteria).min().orElseThrow();
    double[] relative = Arrays.stream(criteria).map(c -> Math.exp((least - c) / 2)).toArray();
    double sum = Arrays.stream(relative).sum();
    return new ModelShares(Arrays.stream(relative).mapToObj(r -> r / sum).toList());
  }

  /**
   * Akaike's criterion with its correction for few values, {@code n·ln(SSE/n) + 2k + 2k(k + 1)/(n −
   * k − 1)}.
   *
   * @param residualSquares the sum SSE of squared residuals, above zero
   * @param n how many values, at least k + 2
   * @param parameters how many parameters k, the deviation included, at least 1
   * @return the criterion
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double corrected(double residualSquares, int n, int parameters) {
    double misfit = misfit(residualSquares, n, parameters);
    double k = parameters;
    return misfit + 2 * k + 2 * k * (k + 1) / (n - k - 1);
  }

  /**
   * Schwarz's criterion, {@code n·ln(SSE/n) + k·ln(n)}; with many values it asks more of a further
   * parameter than Akaike's.
   *
   * @param residualSquares the sum SSE of squared residuals, above zero
   * @param n how many values, at least k + 2
   * @param parameters how many parameters k, the deviation included, at least 1
   * @return the criterion
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double schwarz(double residualSquares, int n, int parameters) {
    return misfit(residualSquares, n, parameters) + parameters * Math.log(n);
  }

  private static double misfit(double residualSquares, int n, int parameters) {
    Require.positive(residualSquares, "sum of squared residuals");
    Require.atLeast(parameters, 1, "parameters");
    Require.atLeast(n, parameters + 2, "number of values");
    return n * Math.log(residualSquares / n);
  }
}
