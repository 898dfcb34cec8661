package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.Release;
import org.quietline.assess.ReleaseFindings;

/** Release decisions as plain lines for a terminal: one entry a batch. */
public final class ReleaseLines {
  private ReleaseLines() {}

  /**
   * Words release decisions for the screen.
   *
   * @param findings the decisions
   * @return the lines, without line ends, at most {@value ScreenLines#WIDTH} characters wide
   */
  public static List<String> of(ReleaseFindings findings) {
    List<String> lines = new ArrayList<>();
    lines.addAll(
        ScreenLines.wrapped(
            "", findings.bench() + ", batches as of " + Dates.full(findings.now())));
    for (ReleaseFindings.Batch batch : findings.batches()) {
      lines.add(batch.sample() + "  " + ReleaseWords.decided(batch));
      for (Release release : batch.releases()) {
        ReleaseWords words = new ReleaseWords(release);
        lines.addAll(ScreenLines.wrapped("  ", words.sentence()));
        if (!words.wayOut().isEmpty()) {
          lines.addAll(ScreenLines.wrapped("  ", words.wayOut()));
        }
      }
    }
    return List.copyOf(lines);
  }
}
