package org.quietline.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ResultTest {
  static final LocalDateTime AT = LocalDateTime.of(2026, 10, 14, 9, 12);

  static Result result(String sample, LocalDateTime at, String... readings) {
    return new Result(
        at,
        "tg",
        "PM-1",
        Role.CONTROL,
        sample,
        Arrays.stream(readings).map(r -> Reading.parse(r).orElseThrow()).toList(),
        Arrays.stream(readings).map(r -> Reading.parse(r).orElseThrow()).toList(),
        new Unit("% mass"),
        Optional.empty(),
        Optional.of("L-1"),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new Origin("readings/a.csv", 2));
  }

  @Test
  void the_pair_is_the_first_two_readings_and_never_the_third() {
    assertEquals(
        0.015, result("QC", AT, "0.180", "0.195", "0.181").pair().orElseThrow().range(), 1e-15);
    assertEquals(
        0.1875, result("QC", AT, "0.180", "0.195", "0.181").pair().orElseThrow().mean(), 1e-15);
    assertEquals(Optional.empty(), result("QC", AT, "0.180").pair());
    assertEquals(Optional.empty(), result("QC", AT, "<0.1", "0.2").pair());
    assertEquals(Optional.empty(), result("QC", AT, "0.1", "", "0.2").pair());
  }

  @Test
  void a_result_needs_a_reading_and_keys_without_a_stroke() {
    assertEquals(
        "a result without readings",
        assertThrows(IllegalArgumentException.class, () -> result("QC", AT)).getMessage());
    assertEquals(
        "sample \"A/B\" holds a /, which a key may not",
        assertThrows(IllegalArgumentException.class, () -> result("A/B", AT, "1")).getMessage());
  }

  @Test
  void a_signal_id_is_read_as_it_is_written_and_finds_its_result() {
    SignalId id = new SignalId("tg", "PM-1", "QC", AT, Rule.BEYOND_ACTION_LIMIT);
    assertEquals("tg/PM-1/QC/2026-10-14T09:12/beyond-action-limit", id.toString());
    assertEquals(Optional.of(id), SignalId.parse(id.toString()));
    assertEquals(true, id.isOn(result("QC", AT, "1")));
    assertEquals(false, id.isOn(result("QC-2", AT, "1")));
    assertEquals(false, id.isOn(result("QC", AT.plusMinutes(1), "1")));
    for (String wrong :
        List.of(
            "",
            "a/b/c",
            "tg/PM-1/QC/yesterday/beyond-action-limit",
            "tg/P/Q/2026-10-14T09:12/x",
            " /P/Q/2026-10-14T09:12/beyond-action-limit")) {
      assertEquals(Optional.empty(), SignalId.parse(wrong), wrong);
    }
  }
}
