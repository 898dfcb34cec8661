package org.quietline.bench;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A result of an outside laboratory for one of the bench's own samples.
 *
 * @param sample the sample's id
 * @param method the method's key
 * @param laboratory the laboratory
 * @param reportedOn the day it was reported, if given
 * @param value the value in the method's unit
 * @param expandedUncertainty its expanded uncertainty in the method's unit, if given
 * @param coverageFactor the factor of that uncertainty, if given
 * @param assessmentDeviation the standard deviation for proficiency assessment of the round it
 *     comes from, in the method's unit, if given
 * @param remark a remark, if given
 * @param origin where it was read from
 */
public record OutsideResult(
    String sample,
    String method,
    String laboratory,
    Optional<LocalDate> reportedOn,
    BigDecimal value,
    Optional<BigDecimal> expandedUncertainty,
    Optional<BigDecimal> coverageFactor,
    Optional<BigDecimal> assessmentDeviation,
    Optional<String> remark,
    Origin origin) {
  /** Checks keys. */
  public OutsideResult {
    Checks.text("sample", sample);
    Checks.key("method", method);
    Checks.text("laboratory", laboratory);
  }
}
