package org.quietline.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressBarTest {
  private static final long MILLISECOND = 1_000_000L;

  private final StringWriter screen = new StringWriter();
  private final AtomicLong clock = new AtomicLong(5);

  private ProgressBar bar(boolean watched) {
    PrintWriter writer = new PrintWriter(screen, true);
    return new ProgressBar(new Terminal(writer, writer, watched), clock::get);
  }

  @Test
  void short_work_draws_nothing() {
    ProgressBar bar = bar(true);
    clock.addAndGet(999 * MILLISECOND);
    bar.show(50, 100);
    bar.clear();
    assertEquals("", screen.toString());
  }

  @Test
  void long_work_draws_ten_times_a_second_at_most_and_is_taken_off() {
    ProgressBar bar = bar(true);
    clock.addAndGet(1100 * MILLISECOND);
    bar.show(50, 100);
    clock.addAndGet(50 * MILLISECOND);
    bar.show(60, 100);
    clock.addAndGet(51 * MILLISECOND);
    bar.show(100, 100);
    bar.clear();
    assertEquals(
        "\rreading "
            + "=".repeat(20)
            + ".".repeat(20)
            + "  50 %"
            + "\rreading "
            + "=".repeat(40)
            + " 100 %"
            + "\r"
            + " ".repeat(56)
            + "\r",
        screen.toString());
  }

  @Test
  void nobody_watching_sees_nothing() {
    ProgressBar bar = bar(false);
    clock.addAndGet(2000 * MILLISECOND);
    bar.show(50, 100);
    bar.show(0, 0);
    assertEquals("", screen.toString());
  }
}
