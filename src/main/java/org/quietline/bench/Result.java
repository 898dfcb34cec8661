package org.quietline.bench;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * One test of one sample: its readings and the circumstances. Source of the word: ISO 3534-2, test
 * result.
 *
 * @param takenAt when, in the bench's local time
 * @param method the method's key
 * @param instrument the instrument's key
 * @param role what the sample was
 * @param sample the sample's id; of a control, the material's key, without a stroke
 * @param readings the readings in the method's unit, in the order they were taken, at least one
 * @param writtenReadings the same readings as they were written
 * @param writtenUnit the unit the readings were written in
 * @param calibration the calibration the row names, if it names one
 * @param reagentLot the reagent lot, if named
 * @param operator the sign of the person, if given
 * @param remark a remark, if given
 * @param session the session's id, if given
 * @param temperatureC the bench's temperature in degrees Celsius, if given
 * @param sequence the running number of the instrument or pad, if given
 * @param origin where it was read from
 */
public record Result(
    LocalDateTime takenAt,
    String method,
    String instrument,
    Role role,
    String sample,
    List<Reading> readings,
    List<Reading> writtenReadings,
    Unit writtenUnit,
    Optional<String> calibration,
    Optional<String> reagentLot,
    Optional<String> operator,
    Optional<String> remark,
    Optional<String> session,
    Optional<BigDecimal> temperatureC,
    Optional<String> sequence,
    Origin origin) {

  /** Checks keys and readings. */
  public Result {
    Checks.key("method", method);
    Checks.key("instrument", instrument);
    if (role == Role.CONTROL) {
      Checks.key("sample", sample);
    } else {
      Checks.text("sample", sample);
    }
    readings = List.copyOf(readings);
    writtenReadings = List.copyOf(writtenReadings);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("a result without readings");
    }
    if (writtenReadings.size() != readings.size()) {
      throw new IllegalArgumentException(
          writtenReadings.size() + " readings written, but " + readings.size() + " kept");
    }
  }

  /**
   * The pair: the first two readings. A third reading never enters it, because a reading that
   * replaced another one makes pairs look better than they are.
   *
   * @return empty unless both are plain numbers
   */
  public Optional<Pair> pair() {
    if (readings.size() >= 2
        && readings.get(0) instanceof Reading.Measured first
        && readings.get(1) instanceof Reading.Measured second) {
      return Optional.of(new Pair(first.value().doubleValue(), second.value().doubleValue()));
    }
    return Optional.empty();
  }

  /**
   * The two readings that are compared with each other.
   *
   * @param first in the method's unit
   * @param second in the method's unit
   */
  public record Pair(double first, double second) {
    /**
     * Their level.
     *
     * @return the mean, in the method's unit
     */
    public double mean() {
      return (first + second) / 2;
    }

    /**
     * How far apart they are.
     *
     * @return not negative, in the method's unit
     */
    public double range() {
      return Math.abs(first - second);
    }
  }
}
