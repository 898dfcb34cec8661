package org.quietline.assess;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Hint.Pattern;
import org.quietline.assess.Hint.Per;

/** One pattern at one place, as a predictor of the deviations of control results. */
final class OriginModel {

  /** Of a predictor, the share of squares within streams that may be rounding. */
  private static final double ROUNDING = 1e-12;

  private final Pattern pattern;
  private final Optional<String> subject;
  private final Per per;
  private final int searched;
  private final double[] predictor;
  private final double[] centred;
  private final double squares;

  /**
   * A pattern at a place.
   *
   * @param pattern the pattern
   * @param subject whom or what it is about
   * @param per what its coefficient is of
   * @param searched how many places were searched for
   * @param predictor its value at each result
   * @param centred the same less the mean of each stream
   */
  OriginModel(
      Pattern pattern,
      Optional<String> subject,
      Per per,
      int searched,
      double[] predictor,
      double[] centred) {
    this.pattern = pattern;
    this.subject = subject;
    this.per = per;
    this.searched = searched;
    this.predictor = predictor.clone();
    this.centred = centred.clone();
    this.squares = product(centred, centred);
  }

  Pattern pattern() {
    return pattern;
  }

  Optional<String> subject() {
    return subject;
  }

  Per per() {
    return per;
  }

  int searched() {
    return searched;
  }

  List<Double> predictor() {
    return Arrays.stream(predictor).boxed().toList();
  }

  /**
   * The sum of squares that it explains beside a mean for each stream, {@code (Σxu)²/Σx²} with both
   * less their streams' means.
   */
  double explained(double[] deviations) {
    double product = product(centred, deviations);
    return product / squares * product;
  }

  /** Whether it differs within any stream. */
  boolean saysSomething() {
    return squares > ROUNDING * product(predictor, predictor);
  }

  /** How two predictors correlate within streams, from 0 to 1. */
  double correlation(OriginModel other) {
    return Math.abs(product(centred, other.centred)) / Math.sqrt(squares * other.squares);
  }

  private static double product(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
