package org.quietline.cli;

import java.nio.file.Path;
import org.quietline.assess.Review;
import org.quietline.intake.BenchFolder;
import org.quietline.intake.Intake;
import org.quietline.report.ScreenLines;

/**
 * A bench folder that was read.
 *
 * @param intake what was taken in
 * @param review the questions that can be put to it
 */
record Opened(Intake intake, Review review) {
  /** Reads a folder, with a bar where it takes long. */
  static Opened read(Path folder, Terminal terminal) {
    ProgressBar bar = new ProgressBar(terminal, System::nanoTime);
    Intake intake = BenchFolder.read(folder, bar::show);
    bar.clear();
    return new Opened(
        intake,
        new Review(
            intake.bench(),
            intake.accounting(),
            intake.settingsFingerprint(),
            intake.dataFingerprint()));
  }

  /** Says that no row could be used, and what to do. */
  int unusable(Path folder, String consequence, Terminal terminal) {
    ScreenLines.of(intake.accounting()).forEach(terminal.out()::println);
    terminal
        .err()
        .println(
            folder
                + ": no result and no calibration could be taken in, so "
                + consequence
                + ". Mend the rows set aside, and run again.");
    return Troubles.UNUSABLE_INPUT;
  }

  /** Keys may hold signs that a file name may not. */
  static String fileName(String text) {
    return text.replaceAll("[^\\p{L}\\p{N}._-]", "_");
  }
}
