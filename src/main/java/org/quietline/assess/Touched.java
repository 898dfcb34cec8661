package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.stats.Interval;

/**
 * The product results made with the calibration in use since the last control result that was
 * inside the allowance and broke no rule, and by how much each is likely off.
 *
 * @param since that control result, or the calibration where there is none
 * @param sinceControl whether that is a control result
 * @param results in time order
 */
public record Touched(LocalDateTime since, boolean sinceControl, List<Result> results) {
  /** Copies the list. */
  public Touched {
    results = List.copyOf(results);
  }

  /**
   * A product result.
   *
   * @param at when it was taken
   * @param sample the sample's id
   * @param value its value; absent where it is only a bound
   * @param error by how much it is likely off, in the method's unit
   * @param error95 the 95 % interval of that
   * @param chanceBeyond the chance that it is off by more than the allowance
   * @param nearestLimit how far the product limit is from the value less its likely error; below
   *     zero beyond the limit; absent without a limit or value
   * @param file the file it was read from
   * @param line the line in it
   */
  public record Result(
      LocalDateTime at,
      String sample,
      OptionalDouble value,
      double error,
      Interval error95,
      OptionalDouble chanceBeyond,
      OptionalDouble nearestLimit,
      String file,
      long line) {}

  /**
   * The latest of them.
   *
   * @return nothing if there is none
   */
  public Optional<Result> latest() {
    return results.isEmpty() ? Optional.empty() : Optional.of(results.get(results.size() - 1));
  }
}
