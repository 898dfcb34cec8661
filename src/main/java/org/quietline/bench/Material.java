package org.quietline.bench;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A control material, with or without an assigned value. Source: ISO Guide 30; ASTM D6299 (check
 * standard, quality control sample).
 *
 * @param key its key, without a stroke
 * @param method the key of the method it is for
 * @param assignedValue its accepted reference value in the method's unit, if it has one
 * @param standardUncertainty the standard uncertainty of the assigned value in the method's unit;
 *     absent means not stated, never zero
 */
public record Material(
    String key,
    String method,
    Optional<BigDecimal> assignedValue,
    Optional<BigDecimal> standardUncertainty) {
  /** Checks that an uncertainty comes with a value and is not negative. */
  public Material {
    Checks.key("key", key);
    Checks.key("method", method);
    if (standardUncertainty.isPresent()) {
      if (assignedValue.isEmpty()) {
        throw new IllegalArgumentException("standard-uncertainty without an assigned-value");
      }
      if (standardUncertainty.get().signum() < 0) {
        throw new IllegalArgumentException(
            "standard-uncertainty is " + standardUncertainty.get() + ", it must not be negative");
      }
    }
  }
}
