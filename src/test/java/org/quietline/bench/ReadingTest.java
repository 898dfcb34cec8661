package org.quietline.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReadingTest {
  @ParameterizedTest
  @ValueSource(strings = {"0.180", "-0.002", "12", "<0.010", ">2.5", ""})
  void what_a_reading_writes_can_be_read_again(String text) {
    assertEquals(text, Reading.parse(text).orElseThrow().toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "O.18",
        "0,18",
        "1.2.3",
        "1e-3",
        "1E5",
        "NaN",
        "Infinity",
        "<",
        "> ",
        "-",
        ".",
        "0x1A",
        "1 000",
        "<<0.1",
        "\u0661"
      })
  void anything_else_is_no_reading(String text) {
    assertEquals(Optional.empty(), Reading.parse(text));
  }

  @Test
  void a_number_of_more_than_forty_digits_is_no_reading() {
    assertEquals(Optional.empty(), Reading.parse("1".repeat(41)));
  }

  @Test
  void digits_are_kept_as_written() {
    assertEquals(
        Optional.of(new Reading.Measured(new BigDecimal("0.1800"))), Reading.parse(" 0.1800 "));
  }

  @Test
  void a_factor_changes_the_number_and_keeps_the_kind() {
    BigDecimal factor = new BigDecimal("0.0001");
    assertEquals("0.1803", Reading.parse("1803").orElseThrow().times(factor).toString());
    assertEquals("<0.0100", Reading.parse("<100").orElseThrow().times(factor).toString());
    assertEquals(">2.0000", Reading.parse(">20000").orElseThrow().times(factor).toString());
    assertEquals("", Reading.parse("").orElseThrow().times(factor).toString());
  }
}
