package org.quietline.stats.compare;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.sample.Summary;

/** How far one value of a sample is from the mean, in sample deviations, and how rare that is. */
final class Remoteness {
  private Remoteness() {}

  /** Where the value that is farthest out stands; the first of equals. */
  static int farthest(Suspect suspect, double[] values) {
    double mean = Summary.meanOf(values);
    int farthest = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < values.length; i++) {
      double away = away(suspect, values[i] - mean);
      if (away > most) {
        most = away;
        farthest = i;
      }
    }
    return farthest;
  }

  /** How far out a deviation from the mean is. */
  static double away(Suspect suspect, double deviation) {
    return switch (suspect) {
      case LARGEST -> deviation;
      case SMALLEST -> -deviation;
      case EITHER -> Math.abs(deviation);
    };
  }

  /**
   * Student's t of a value against the mean of the others, with n − 2 degrees of freedom, from the
   * others alone so that a wild value costs no digits.
   */
  static double student(double value, double[] others) {
    Summary rest = Summary.of(others);
    return Math.abs(value - rest.mean()) / (rest.deviation() * Math.sqrt(1 + 1.0 / rest.n()));
  }

  /** The distance from the mean in deviations, {@code (n − 1)·t/√(n·(n − 2 + t²))}. */
  static double inDeviations(double t, int n) {
    return (n - 1) / Math.sqrt(n * ((n - 2) / (t * t) + 1));
  }

  /** The distance that one given value exceeds on one side with a given chance. */
  static double exceededWith(double chance, int n) {
    return inDeviations(Student.exceededWith(chance, n - 2), n);
  }

  /** Refuses values that are equal, or equal but for the rounding of their own last digits. */
  static void requireScatter(double[] values, String what) {
    double size = Arrays.stream(values).map(Math::abs).max().orElse(0);
    Require.scatter(values, size, what);
  }

  static double[] without(int place, double[] values) {
    return IntStream.range(0, values.length)
        .filter(i -> i != place)
        .mapToDouble(i -> values[i])
        .toArray();
  }
}
