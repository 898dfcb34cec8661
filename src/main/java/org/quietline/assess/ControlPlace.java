package org.quietline.assess;

import java.time.LocalDateTime;
import org.quietline.bench.SignalId;

/**
 * A control result, as signals name it.
 *
 * @param instrument the instrument
 * @param material the control material
 * @param at when it was taken
 */
public record ControlPlace(String instrument, String material, LocalDateTime at) {
  static ControlPlace of(SignalId id) {
    return new ControlPlace(id.instrument(), id.material(), id.at());
  }
}
