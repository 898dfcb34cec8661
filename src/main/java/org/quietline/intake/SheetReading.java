package org.quietline.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.Optional;
import java.util.function.LongConsumer;

/** Reads sheets from their first byte to their last. */
final class SheetReading {
  private final Tally tally;
  private final OwnSheets ownSheets;
  private final LongConsumer progress;

  SheetReading(Tally tally, OwnSheets ownSheets, LongConsumer progress) {
    this.tally = tally;
    this.ownSheets = ownSheets;
    this.progress = progress;
  }

  /**
   * Reads one sheet to its end.
   *
   * @return true when its header could be used
   */
  <T> boolean read(SheetFile file, Gathered<T> into) {
    if (!Files.isRegularFile(file.path())) {
      remark(file, "It is not a file; nothing was read.");
      return false;
    }
    try {
      FileState before = FileState.of(file.path());
      boolean usable = read(file, into, before);
      return usable;
    } catch (IOException e) {
      remark(file, "The file could not be opened; see that you may read it. Nothing was read.");
      return false;
    }
  }

  private <T> boolean read(SheetFile file, Gathered<T> into, FileState before) throws IOException {
    SheetForm form = SheetForm.PLAIN;
    Optional<Unusable> against = Optional.empty();
    try {
      form = ownSheets.of(file.name());
    } catch (Unusable e) {
      against = Optional.of(e);
    }
    try (InputStream stream = Files.newInputStream(file.path());
        SheetText text = new SheetText(stream, form.encoding(), progress)) {
      OneSheet<T> sheet = new OneSheet<>(file.name(), form, text, into, tally);
      boolean usable = sheet.read(against);
      boolean changed = hasChanged(file, before);
      if (changed) {
        remark(
            file,
            "The file changed while it was read, so what was read may be neither its old content"
                + " nor its new one; run again.");
      }
      tally.endFile(file.name(), text.sha256(), changed);
      return usable;
    }
  }

  /** A file that is gone by now has changed, too. */
  private static boolean hasChanged(SheetFile file, FileState before) {
    try {
      return !FileState.of(file.path()).equals(before);
    } catch (IOException e) {
      return true;
    }
  }

  private void remark(SheetFile file, String sentences) {
    tally.remark(file.name(), 1, "file", file.name(), sentences);
  }
}
