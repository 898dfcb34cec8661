package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import org.quietline.bench.Accounting;

/**
 * The outlooks of a bench's calibrations.
 *
 * @param bench the bench's name
 * @param now the moment they speak from
 * @param accounting what became of every row
 * @param outlooks one for each method and instrument that is calibrated
 * @param settingsFingerprint of the settings file
 * @param dataFingerprint of the data files
 */
public record OutlookFindings(
    String bench,
    LocalDateTime now,
    Accounting accounting,
    List<CalibrationOutlook> outlooks,
    String settingsFingerprint,
    String dataFingerprint) {
  /** Copies the list. */
  public OutlookFindings {
    outlooks = List.copyOf(outlooks);
  }

  /**
   * Whether every calibration may be kept to its date.
   *
   * @return true if no decision but {@code keep} was taken
   */
  public boolean steady() {
    return outlooks.stream().allMatch(o -> o.drift().decision() == Drift.Decision.KEEP);
  }
}
