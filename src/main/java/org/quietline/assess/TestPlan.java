package org.quietline.assess;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;

/**
 * When to spend the next control tests of a window, so that the outlook at expiry narrows most.
 *
 * @param days when, in time order
 * @param widthNow the width of the 95 % interval of the deviation at expiry as it is
 * @param widthThen the width that is expected after these tests
 * @param evenlyThen the width that is expected after as many tests spread evenly
 * @param chanceThen the chance of being beyond the allowance at expiry, if the results lie where
 *     they are expected; absent without an allowance
 */
public record TestPlan(
    List<LocalDate> days,
    double widthNow,
    double widthThen,
    double evenlyThen,
    OptionalDouble chanceThen) {
  /** Copies the list. */
  public TestPlan {
    days = List.copyOf(days);
  }
}
