package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Slip.What;
import org.quietline.bench.Method;

/** The factors by which a slip of the pen changes a number of a method. */
final class Hypotheses {
  /** A point more than so many places away is no slip of the pen. */
  private static final int MOST_PLACES = 4;

  /**
   * One way to slip.
   *
   * @param what what happened
   * @param factor by what it makes a number too large
   */
  record Hypothesis(What what, double factor) {
    /** What it adds to the logarithm. */
    double shift() {
      return Math.log(factor);
    }
  }

  private Hypotheses() {}

  static List<Hypothesis> of(Method method, List<MethodLog> related) {
    List<Hypothesis> all = new ArrayList<>();
    for (int places = 1; places <= MOST_PLACES; places++) {
      all.add(new Hypothesis(What.POWER_OF_TEN, Math.pow(10, places)));
      all.add(new Hypothesis(What.POWER_OF_TEN, 1 / Math.pow(10, places)));
    }
    Optional<FattyAcid> acid = FattyAcid.of(method);
    if (acid.isPresent()) {
      boolean isNumber = acid.get() == FattyAcid.ACID_NUMBER;
      Method percent =
          isNumber ? related.stream().findFirst().map(MethodLog::method).orElse(method) : method;
      double factor = FattyAcid.acidNumberPerUnit(percent);
      all.add(
          isNumber
              ? new Hypothesis(What.FATTY_ACID_FOR_ACID_NUMBER, 1 / factor)
              : new Hypothesis(What.ACID_NUMBER_FOR_FATTY_ACID, factor));
    }
    all.add(new Hypothesis(What.DOUBLE_VOLUME, 2));
    all.add(new Hypothesis(What.HALF_VOLUME, 0.5));
    return List.copyOf(all);
  }
}
