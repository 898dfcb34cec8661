package org.quietline.bench;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * A temperature at a place where reagents are kept.
 *
 * @param takenAt when it was read, local time of the bench
 * @param place the word of a kind of storage, for all lots kept so, or the key of one lot
 * @param celsius in degrees Celsius, from −80 to 80
 * @param remark a remark, if any
 * @param origin where it was read from
 */
public record Temperature(
    LocalDateTime takenAt,
    String place,
    BigDecimal celsius,
    Optional<String> remark,
    Origin origin) {
  private static final BigDecimal FARTHEST = BigDecimal.valueOf(80);

  /** Checks the place and the range. */
  public Temperature {
    Checks.text("place", place);
    if (celsius.abs().compareTo(FARTHEST) > 0) {
      throw new IllegalArgumentException(
          "temperature_c is "
              + celsius.toPlainString()
              + ", and no place of reagents is beyond −80 to 80 °C");
    }
  }

  /**
   * Whether it is that of a lot: it names the lot, or how the lot is kept.
   *
   * @param lot the lot
   * @return true if so
   */
  public boolean isOf(ReagentLot lot) {
    return place.equals(lot.key())
        || lot.storage().filter(s -> s.key().equalsIgnoreCase(place)).isPresent();
  }
}
