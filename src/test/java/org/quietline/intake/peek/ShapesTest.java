package org.quietline.intake.peek;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What single texts, and the texts of one column, say about how they are meant. */
class ShapesTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "12 | WHOLE",
        "0.182 | POINT",
        "12.5 | POINT",
        "1234.567 | POINT",
        ".5 | POINT",
        "1.234 | POINT_OR_THOUSANDS",
        "0,182 | COMMA",
        "1,234 | COMMA_OR_THOUSANDS",
        "<0,05 | COMMA",
        "> 2.5 | POINT",
        "-1,25 | COMMA",
        "over | NONE",
        "1.2.3 | NONE",
        "1,234.5 | NONE",
        "<  | NONE",
        "O.18 | NONE"
      })
  void aNumberTellsItsDecimalMarkOrLeavesItOpen(String text, NumberShape shape) {
    assertEquals(shape, NumberShape.of(text));
  }

  private static List<String> formats(String... texts) {
    return meanings(texts).get(0);
  }

  private static List<List<String>> meanings(String... texts) {
    List<TimeShape> shapes =
        List.of(texts).stream().map(t -> TimeShape.of(t).orElseThrow()).toList();
    return new TimeFormats(shapes).meanings().stream().map(TimeFormats.Meaning::formats).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "14.10.2026 09:12 | dd.MM.yyyy HH:mm",
        "14/1/2026 9:12 | dd/M/yyyy H:mm",
        "10/14/2026 9:12 PM | MM/dd/yyyy h:mm a",
        "2026-10-14T09:12:30 | yyyy-MM-dd'T'HH:mm:ss",
        "2026/10/14 09:12 | yyyy/MM/dd HH:mm",
        "14 Oct 2026 09:12 | dd MMM yyyy HH:mm",
        "4-Oct-26 09:12 | d-MMM-yy HH:mm",
        "October 14, 2026 09:12 | MMMM dd, yyyy HH:mm",
        "14.10.2026, 09:12 | dd.MM.yyyy, HH:mm"
      })
  void aTimeOfOneMeaningTellsItsFormat(String text, String format) {
    assertEquals(List.of(List.of(format)), meanings(text));
  }

  @Test
  void aDayAboveTwelveDecidesForAllThatAreWrittenAlike() {
    assertEquals(List.of("dd/MM/yyyy HH:mm"), formats("03/04/2026 09:00", "13/04/2026 09:00"));
    assertEquals(List.of("MM/dd/yyyy HH:mm"), formats("03/04/2026 09:00", "04/13/2026 09:00"));
  }

  @Test
  void noDayAboveTwelveLeavesTheOrderOpen() {
    assertEquals(
        List.of(List.of("dd/MM/yyyy HH:mm"), List.of("MM/dd/yyyy HH:mm")),
        meanings("03/04/2026 09:00", "05/04/2026 09:00"));
  }

  @Test
  void twoOrdersThatNoTextConfusesAreBothTaken() {
    assertEquals(
        List.of(List.of("d/M/yyyy HH:mm", "M/d/yyyy HH:mm")),
        meanings("13/4/2026 09:00", "4/14/2026 09:00", "5/5/2026 09:00"));
  }

  @Test
  void twoOrdersThatOneTextConfusesAreAQuestion() {
    assertEquals(
        List.of(
            List.of("d/M/yyyy HH:mm", "M/d/yyyy HH:mm"),
            List.of("d/M/yyyy HH:mm"),
            List.of("M/d/yyyy HH:mm")),
        meanings("13/4/2026 09:00", "4/14/2026 09:00", "5/4/2026 09:00"));
  }

  @Test
  void aShortYearCanStandFirstAsWellWhereNothingTells() {
    assertEquals(
        List.of(List.of("dd.MM.yy HH:mm"), List.of("yy.MM.dd HH:mm")),
        meanings("13.10.26 09:00", "14.10.26 09:00", "15.10.26 09:00", "16.10.26 09:00"));
    assertEquals(3, meanings("03.10.12 09:00").size());
  }

  @ParameterizedTest
  @CsvSource({"32.10.2026", "14.13.2026", "2026-02-30", "24:00", "9:60", "0.182", "over", "12"})
  void whatIsNoTimeIsNone(String text) {
    assertFalse(TimeShape.isTime(text));
  }

  @Test
  void aMeanIsFoundWithinItsRounding() {
    Column first = column("R1", "0.181", "0.184", "0.190");
    Column second = column("R2", "0.182", "0.182", "0.193");
    assertTrue(Averages.isMean(column("A", "0.182", "0.183", "0.192"), List.of(first, second)));
    assertTrue(Averages.isMean(column("A", "0.18", "0.18", "0.19"), List.of(first, second)));
    assertFalse(Averages.isMean(column("A", "0.182", "0.183", "0.193"), List.of(first, second)));
    assertFalse(Averages.isMean(column("A", "0.182", "0.183"), List.of(first, second)));
    assertFalse(Averages.isMean(first, List.of(second)));
  }

  private static Column column(String name, String... cells) {
    return new Column(1, name, true, List.of(cells));
  }

  @Test
  void headersAreKnownInFourLanguages() {
    assertEquals(EnumSet.of(Field.TAKEN_AT), HeaderWords.fields("Uhrzeit"));
    assertEquals(EnumSet.of(Field.READINGS), HeaderWords.fields("Messwert 2"));
    assertEquals(EnumSet.of(Field.SAMPLE), HeaderWords.fields("Échantillon"));
    assertEquals(EnumSet.of(Field.AVERAGE), HeaderWords.fields("Promedio"));
    assertEquals(EnumSet.of(Field.SAMPLE, Field.REAGENT_LOT), HeaderWords.fields("Lot"));
    assertEquals(EnumSet.noneOf(Field.class), HeaderWords.fields("Colour"));
    assertEquals(Optional.of("mg/kg"), HeaderWords.unit("R1 [mg/kg]"));
    assertEquals(Optional.of(2), HeaderWords.readingNumber("R2 (% mass)"));
  }

  @Test
  void aLineIsCutAsItsQuotesSay() {
    Line line = new Line(1, " a ;\"b; c\";\"say \"\"so\"\"\";");
    assertEquals(List.of("a", "b; c", "say \"so\"", ""), line.cut(';'));
  }
}
