package org.quietline.assess;

import java.util.Optional;
import org.quietline.bench.Result;

/**
 * A control result in the window of a calibration.
 *
 * @param result the result
 * @param window the place of its calibration among those of the instrument
 * @param day days since the calibration
 * @param value its value
 * @param reference what it is held against
 */
record WindowPoint(
    Result result, int window, double day, double value, MaterialReference reference) {
  double deviation() {
    return value - reference.value();
  }

  String material() {
    return result.sample();
  }

  Optional<String> lot() {
    return result.reagentLot();
  }

  /** Whether it may have been made with a lot: where none was recorded, any. */
  boolean mayBeOf(Optional<String> lot) {
    return lot.isEmpty() || lot().isEmpty() || lot().equals(lot);
  }
}
