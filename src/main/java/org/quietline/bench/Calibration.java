package org.quietline.bench;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * One calibration event of one method on one instrument. Its window runs from that moment to the
 * next one.
 *
 * @param key its id
 * @param method the method's key
 * @param instrument the instrument's key
 * @param calibratedAt when, in the bench's local time
 * @param blankResponse the response of the blank, if the instrument shows it
 * @param calibrators the calibrators read
 * @param reagentLot the reagent lot, if named
 * @param operator the sign of the person, if given
 * @param remark a remark, if given
 * @param origin where it was read from
 */
public record Calibration(
    String key,
    String method,
    String instrument,
    LocalDateTime calibratedAt,
    Optional<BigDecimal> blankResponse,
    List<Calibrator> calibrators,
    Optional<String> reagentLot,
    Optional<String> operator,
    Optional<String> remark,
    Origin origin) {

  /** Checks keys and copies the calibrators. */
  public Calibration {
    Checks.text("calibration", key);
    Checks.key("method", method);
    Checks.key("instrument", instrument);
    calibrators = List.copyOf(calibrators);
  }

  /**
   * Whether this calibrates a method on an instrument.
   *
   * @param wantedMethod the method's key
   * @param wantedInstrument the instrument's key
   * @return true when both are its own
   */
  public boolean isFor(String wantedMethod, String wantedInstrument) {
    return method.equals(wantedMethod) && instrument.equals(wantedInstrument);
  }

  /**
   * One calibrator: what it is worth and what the instrument answered.
   *
   * @param assigned its assigned value in the method's unit
   * @param response the instrument's response, if shown
   */
  public record Calibrator(BigDecimal assigned, Optional<BigDecimal> response) {}
}
