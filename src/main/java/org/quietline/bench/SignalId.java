package org.quietline.bench;

import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;

/**
 * The name of a signal: which rule which control result broke. Written {@code
 * method/instrument/material/time/rule}. Where no material is measured, {@link #CALIBRATION},
 * {@link #BLANK} or the key of the other method stands in its place.
 *
 * @param method the method's key
 * @param instrument the instrument's key
 * @param material the material's key, or what stands in its place
 * @param at when the result was taken, or the instrument calibrated
 * @param rule the rule it broke
 */
public record SignalId(
    String method, String instrument, String material, LocalDateTime at, Rule rule)
    implements Matter {
  /** What stands in the material's place where the signal is on a calibration. */
  public static final String CALIBRATION = "calibration";

  /** What stands in the material's place where the signal is on a blank. */
  public static final String BLANK = "blank";

  /** Checks keys. */
  public SignalId {
    Checks.key("method", method);
    Checks.key("instrument", instrument);
    Checks.key("material", material);
  }

  @Override
  public boolean isTooEarly(LocalDateTime recordedAt) {
    return recordedAt.isBefore(at);
  }

  @Override
  public boolean excludes(Result result) {
    return isOn(result);
  }

  @Override
  public boolean isOn(Result result) {
    return result.role() == Role.CONTROL
        && result.takenAt().equals(at)
        && result.method().equals(method)
        && result.instrument().equals(instrument)
        && result.sample().equals(material);
  }

  /**
   * Reads what {@link #toString()} writes.
   *
   * @param text the id
   * @return empty when the text is no signal id
   */
  public static Optional<SignalId> parse(String text) {
    String[] parts = text.strip().split("/", -1);
    if (parts.length != 5) {
      return Optional.empty();
    }
    Optional<Rule> rule = Rule.parse(parts[4]);
    try {
      LocalDateTime at = LocalDateTime.parse(parts[3]);
      return rule.map(r -> new SignalId(parts[0], parts[1], parts[2], at, r));
    } catch (DateTimeParseException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  @Override
  public String toString() {
    return String.join("/", method, instrument, material, at.toString(), rule.key());
  }
}
