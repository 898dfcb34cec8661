package org.quietline.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.function.LongSupplier;

/** A bar on a watched terminal for work that takes more than a second; silent otherwise. */
final class ProgressBar {
  private static final long PATIENCE_NANOS = 1_000_000_000L;
  private static final long BETWEEN_DRAWS_NANOS = 100_000_000L;
  private static final int WIDTH = 40;

  private final PrintWriter screen;
  private final boolean watched;
  private final LongSupplier nanos;
  private final long started;
  private long lastDrawn;
  private boolean drawn;

  ProgressBar(Terminal terminal, LongSupplier nanos) {
    this.screen = terminal.err();
    this.watched = terminal.watched();
    this.nanos = nanos;
    this.started = nanos.getAsLong();
    this.lastDrawn = started;
  }

  void show(long done, long total) {
    if (!watched || total <= 0) {
      return;
    }
    long now = nanos.getAsLong();
    if (now - started < PATIENCE_NANOS || now - lastDrawn < BETWEEN_DRAWS_NANOS) {
      return;
    }
    lastDrawn = now;
    drawn = true;
    int full = (int) Math.min(WIDTH, done * WIDTH / total);
    long percent = Math.min(100, done * 100 / total);
    screen.print(
        String.format(
            Locale.ROOT,
            "\rreading %s%s %3d %%",
            "=".repeat(full),
            ".".repeat(WIDTH - full),
            percent));
    screen.flush();
  }

  /** Takes the bar off the screen. */
  void clear() {
    if (drawn) {
      screen.print("\r" + " ".repeat(WIDTH + 16) + "\r");
      screen.flush();
    }
  }
}
