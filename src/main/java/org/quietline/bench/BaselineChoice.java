package org.quietline.bench;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A baseline chosen by a person: the stretch of a stream from which its limits are computed. Source
 * of the idea: ISO 7870-1, phase 1.
 *
 * @param method the method's key
 * @param instrument the instrument's key
 * @param material the material's key
 * @param from the first day, included
 * @param to the last day, included
 * @param approvedBy who approved it, if given
 * @param reason why, if given
 */
public record BaselineChoice(
    String method,
    String instrument,
    String material,
    LocalDate from,
    LocalDate to,
    Optional<String> approvedBy,
    Optional<String> reason) {
  /** Checks keys and order of the days. */
  public BaselineChoice {
    Checks.key("method", method);
    Checks.key("instrument", instrument);
    Checks.key("material", material);
    if (to.isBefore(from)) {
      throw new IllegalArgumentException("to " + to + " is before from " + from);
    }
  }
}
