package org.quietline.stats.agreement;

import java.util.List;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * A result against an assigned value, in units of what the difference may be.
 *
 * <p>{@code (x − X)/d} with d by {@link Kind}. Source: ISO 13528:2022, clause 9; ISO/IEC
 * 17043:2023; both from memory.
 *
 * @param kind what the difference is measured in
 * @param value the score, with the sign of the difference
 */
public record ComparisonScore(Kind kind, double value) {

  /** Up to here a z score is acceptable. */
  private static final double WARNING = 2;

  /** From here a z score asks for action. */
  private static final double ACTION = 3;

  /** Up to this share of the deviation for assessment the assigned value's uncertainty is small. */
  private static final double SMALL = 0.3;

  /**
   * Checks the value.
   *
   * @param kind what the difference is measured in
   * @param value the score
   * @throws IllegalArgumentException if the value is not finite
   */
  public ComparisonScore {
    Require.finite(value, "score");
  }

  /** What a difference is measured in. */
  public enum Kind {
    /** The standard deviation for assessment, σ. */
    Z,
    /** That and the uncertainty of the assigned value, {@code √(σ² + u(X)²)}. */
    Z_PRIME,
    /** The standard uncertainties of both, {@code √(u(x)² + u(X)²)}. */
    ZETA,
    /** The expanded uncertainties of both, {@code √(U(x)² + U(X)²)}. */
    E_N
  }

  /** What a score says. */
  public enum Verdict {
    /** No reason to ask. */
    ACCEPTABLE,
    /** A warning: rare, one in twenty, where all is well. */
    QUESTIONABLE,
    /** A cause must be looked for. */
    UNACCEPTABLE
  }

  /**
   * The z score.
   *
   * @param result the result x, finite
   * @param assigned the assigned value X, finite
   * @param sigma the standard deviation for assessment, above zero
   * @return {@code (x − X)/σ}
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static ComparisonScore z(double result, double assigned, double sigma) {
    Require.positive(sigma, "deviation for assessment");
    return of(Kind.Z, result, assigned, sigma, 0);
  }

  /**
   * The z′ score, to be used where {@link #isUncertain} says so.
   *
   * @param result the result x, finite
   * @param assigned the assigned value X, finite
   * @param sigma the standard deviation for assessment, above zero
   * @param uncertainty the standard uncertainty of the assigned value, zero or more
   * @return {@code (x − X)/√(σ² + u(X)²)}
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static ComparisonScore zPrime(
      double result, double assigned, double sigma, double uncertainty) {
    Require.positive(sigma, "deviation for assessment");
    Require.notNegative(uncertainty, "uncertainty of the assigned value");
    return of(Kind.Z_PRIME, result, assigned, sigma, uncertainty);
  }

  /**
   * The zeta score.
   *
   * @param result the result x, finite
   * @param uncertainty its standard uncertainty, above zero
   * @param assigned the assigned value X, finite
   * @param ofAssigned its standard uncertainty, zero or more
   * @return {@code (x − X)/√(u(x)² + u(X)²)}
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static ComparisonScore zeta(
      double result, double uncertainty, double assigned, double ofAssigned) {
    return ofUncertainties(Kind.ZETA, result, uncertainty, assigned, ofAssigned);
  }

  /**
   * The E<sub>n</sub> number.
   *
   * @param result the result x, finite
   * @param expanded its expanded uncertainty with a coverage factor of 2, above zero
   * @param assigned the assigned value X, finite
   * @param ofAssigned its expanded uncertainty with a coverage factor of 2, zero or more
   * @return {@code (x − X)/√(U(x)² + U(X)²)}
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static ComparisonScore en(
      double result, double expanded, double assigned, double ofAssigned) {
    return ofUncertainties(Kind.E_N, result, expanded, assigned, ofAssigned);
  }

  private static ComparisonScore ofUncertainties(
      Kind kind, double result, double own, double assigned, double ofAssigned) {
    Require.positive(own, "uncertainty of the result");
    Require.notNegative(ofAssigned, "uncertainty of the assigned value");
    return of(kind, result, assigned, own, ofAssigned);
  }

  private static ComparisonScore of(
      Kind kind, double result, double assigned, double one, double other) {
    Require.finite(result, "result");
    Require.finite(assigned, "assigned value");
    return new ComparisonScore(kind, (result - assigned) / Math.hypot(one, other));
  }

  /**
   * Whether the uncertainty of an assigned value is too large to leave out of the score, {@code
   * u(X) > 0.3·σ}. Source: ISO 13528:2022, 9.2.1.
   *
   * @param uncertainty the standard uncertainty of the assigned value, zero or more
   * @param sigma the standard deviation for assessment, above zero
   * @return true where {@link #zPrime} is due
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static boolean isUncertain(double uncertainty, double sigma) {
    Require.notNegative(uncertainty, "uncertainty of the assigned value");
    Require.positive(sigma, "deviation for assessment");
    return uncertainty > SMALL * sigma;
  }

  /**
   * What the score says: acceptable up to 2, unacceptable from 3 on, both in size; an E<sub>n</sub>
   * number is acceptable up to 1 and unacceptable beyond.
   *
   * @return the verdict
   */
  public Verdict verdict() {
    double size = Math.abs(value);
    if (kind == Kind.E_N) {
      return size <= 1 ? Verdict.ACCEPTABLE : Verdict.UNACCEPTABLE;
    }
    return size <= WARNING
        ? Verdict.ACCEPTABLE
        : size < ACTION ? Verdict.QUESTIONABLE : Verdict.UNACCEPTABLE;
  }

  /**
   * Scores of several rounds as one score, {@code Σz/√k}: large where small differences keep their
   * sign. It hides differences that do not.
   *
   * @param scores at least one, all of one kind but not E<sub>n</sub> numbers
   * @return the score, of the same kind
   * @throws IllegalArgumentException if there is none, the kinds differ, or they are E<sub>n</sub>
   *     numbers
   */
  public static ComparisonScore combined(List<ComparisonScore> scores) {
    if (scores.isEmpty()) {
      throw new IllegalArgumentException("needs at least 1 score, has 0");
    }
    Kind kind = scores.get(0).kind;
    Sum sum = new Sum();
    for (ComparisonScore score : scores) {
      if (score.kind != kind || kind == Kind.E_N) {
        throw new IllegalArgumentException("cannot combine " + kind + " and " + score.kind);
      }
      sum.add(score.value);
    }
    return new ComparisonScore(kind, sum.value() / Math.sqrt(scores.size()));
  }
}
