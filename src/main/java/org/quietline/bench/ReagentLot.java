package org.quietline.bench;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One lot of reagent for one method.
 *
 * @param key the lot's id
 * @param method the method's key
 * @param receivedOn the day it came, if given
 * @param openedOn the day it was opened, if given
 * @param expiresOn the date printed on it, if given; the last day it may be used
 * @param storage how it is kept once opened, if given
 * @param remark a remark, if given
 * @param origin where it was read from
 */
public record ReagentLot(
    String key,
    String method,
    Optional<LocalDate> receivedOn,
    Optional<LocalDate> openedOn,
    Optional<LocalDate> expiresOn,
    Optional<Storage> storage,
    Optional<String> remark,
    Origin origin) {
  /** Checks keys. */
  public ReagentLot {
    Checks.text("reagent_lot", key);
    Checks.key("method", method);
  }
}
