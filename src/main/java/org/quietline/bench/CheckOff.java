package org.quietline.bench;

import java.util.Optional;

/**
 * A check that a person switched off.
 *
 * @param check the check
 * @param method the method's key it is switched off for; empty for the whole bench
 * @param reason why, as printed in each review
 */
public record CheckOff(Check check, Optional<String> method, String reason) {
  /** Checks that there is a reason. */
  public CheckOff {
    method.ifPresent(m -> Checks.key("method", m));
    Checks.text("reason", reason);
  }
}
