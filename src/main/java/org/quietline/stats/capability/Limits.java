package org.quietline.stats.capability;

import java.util.OptionalDouble;
import org.quietline.stats.numeric.Require;

/** The check of a lower and an upper limit of which one may be missing. */
final class Limits {
  private Limits() {}

  /** At least one, finite, in order. */
  static void require(OptionalDouble lower, OptionalDouble upper) {
    if (lower.isEmpty() && upper.isEmpty()) {
      throw new IllegalArgumentException("needs a lower or an upper limit");
    }
    lower.ifPresent(v -> Require.finite(v, "lower limit"));
    upper.ifPresent(v -> Require.finite(v, "upper limit"));
    if (lower.isPresent() && upper.isPresent()) {
      inOrder(lower.getAsDouble(), upper.getAsDouble());
    }
  }

  /** The lower one below the upper one. */
  static void inOrder(double lower, double upper) {
    if (!(lower < upper)) {
      throw new IllegalArgumentException("limits out of order: " + lower + ", " + upper);
    }
  }
}
