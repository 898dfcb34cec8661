package org.quietline.intake;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * The known name that a mistyped one was probably meant to be.
 *
 * <p>Distance: the least number of letters put in, left out, changed or swapped with their
 * neighbour (optimal string alignment, Damerau 1964), without regard to case.
 */
final class NearestName {
  private static final int LONGEST = 60;

  private NearestName() {}

  /** The nearest of the names; empty when even that is too far away to be a slip. */
  static Optional<String> of(String text, Collection<String> names) {
    int allowed = text.length() <= 3 ? 1 : text.length() <= 8 ? 2 : 3;
    return within(allowed, text, names);
  }

  /** The nearest of the names at most so many slips away; the first one of equals. */
  static Optional<String> within(int allowed, String text, Collection<String> names) {
    if (text.length() > LONGEST) {
      return Optional.empty();
    }
    Optional<String> best = Optional.empty();
    int least = allowed + 1;
    for (String name : names) {
      int distance = distance(text, name);
      if (distance < least) {
        least = distance;
        best = Optional.of(name);
      }
    }
    return best;
  }

  /** A question in brackets, or where nothing is near, the names there are; may be empty. */
  static String hint(String text, Collection<String> names) {
    return of(text, names)
        .map(name -> " (did you mean " + name + "?)")
        .orElseGet(
            () ->
                names.isEmpty()
                    ? ""
                    : " (known: " + String.join(", ", names.stream().limit(12).toList()) + ")");
  }

  static int distance(String one, String other) {
    String a = one.toLowerCase(Locale.ROOT);
    String b = other.toLowerCase(Locale.ROOT);
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        d[i][j] = i == 0 || j == 0 ? i + j : step(d, a, b, i, j);
      }
    }
    return d[a.length()][b.length()];
  }

  private static int step(int[][] d, String a, String b, int i, int j) {
    int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
    int least = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
    boolean swapped =
        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    return swapped ? Math.min(least, d[i - 2][j - 2] + 1) : least;
  }
}
