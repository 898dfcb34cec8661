package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.CalibrationOutlook;
import org.quietline.assess.OutlookFindings;

/** Outlooks as plain lines for a terminal: one entry a calibration. */
public final class OutlookLines {
  private OutlookLines() {}

  /**
   * Words outlooks for the screen.
   *
   * @param findings the outlooks
   * @return the lines, without line ends, at most {@value ScreenLines#WIDTH} characters wide
   */
  public static List<String> of(OutlookFindings findings) {
    List<String> lines = new ArrayList<>();
    lines.addAll(
        ScreenLines.wrapped(
            "", findings.bench() + ", calibrations as of " + Dates.full(findings.now())));
    for (CalibrationOutlook outlook : findings.outlooks()) {
      OutlookWords words = new OutlookWords(outlook, findings.now().toLocalDate());
      lines.add(
          outlook.method().key()
              + "/"
              + outlook.drift().instrument()
              + "  "
              + OutlookWords.decided(outlook.drift().decision()));
      lines.addAll(ScreenLines.wrapped("  ", words.recommendation()));
      lines.addAll(ScreenLines.wrapped("  ", words.evidence()));
      if (!words.settling().isEmpty()) {
        lines.addAll(ScreenLines.wrapped("  ", words.settling()));
      }
    }
    if (findings.outlooks().isEmpty()) {
      lines.add("No method of this bench is calibrated.");
    }
    return List.copyOf(lines);
  }
}
