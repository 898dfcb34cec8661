package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import org.quietline.assess.ControlHistory.Entry;
import org.quietline.assess.Story.OnsetFrom;

/**
 * A signal and the results it most likely stands for.
 *
 * @param signal the signal
 * @param results the results of its stream from the likely onset to the signal; empty for a signal
 *     that is on no control result that is a number
 * @param side 1 above the centre, −1 below, 0 for a signal that says nothing about the level
 * @param onsetFrom how the onset was found
 */
record Stretch(Signal signal, List<Entry> results, int side, OnsetFrom onsetFrom) {
  Stretch {
    results = List.copyOf(results);
  }

  ControlPlace place() {
    return ControlPlace.of(signal.id());
  }

  LocalDateTime first() {
    return results.isEmpty() ? signal.id().at() : results.get(0).at();
  }

  LocalDateTime last() {
    return signal.id().at();
  }
}
