package org.quietline.report.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.quietline.report.Block;
import org.quietline.report.Document;
import org.quietline.report.Invented;
import org.quietline.report.Page;
import org.quietline.report.pdf.Item.Box;
import org.quietline.report.pdf.Item.Run;

/** Where things stand, before anything is drawn. */
class LayoutTest {
  private static List<Sheet> sheets(Document document, Paper paper) {
    return Layout.of(document, new Setter(new Fonts()), paper);
  }

  @ParameterizedTest(name = "{0} on {2}")
  @MethodSource("org.quietline.report.pdf.Specimens#all")
  void nothingStandsOutsideTheMargins(String name, Document document, Paper paper) {
    double margin = 18 / 25.4 * 72;
    for (Sheet sheet : sheets(document, paper)) {
      for (Item item : sheet.items()) {
        Box box = item.box();
        String what = "sheet " + sheet.number() + ": " + item;
        assertTrue(box.x() >= margin - 0.1, what);
        assertTrue(box.right() <= paper.width() - margin + 0.1, what);
        assertTrue(box.y() >= margin - 0.1, what);
        assertTrue(box.bottom() <= paper.height() - margin + 0.1, what);
      }
    }
  }

  @ParameterizedTest(name = "{0} on {2}")
  @MethodSource("org.quietline.report.pdf.Specimens#all")
  void nothingOverlaps(String name, Document document, Paper paper) {
    int pairs = 0;
    for (Sheet sheet : sheets(document, paper)) {
      List<Item> items = sheet.items();
      for (int i = 0; i < items.size(); i++) {
        for (int j = i + 1; j < items.size(); j++) {
          pairs++;
          Item a = items.get(i);
          Item b = items.get(j);
          assertFalse(
              a.box().overlaps(b.box()), "sheet " + sheet.number() + ": " + a + " and " + b);
        }
      }
    }
    assertTrue(pairs > 100, name);
  }

  @ParameterizedTest(name = "{0} on {2}")
  @MethodSource("org.quietline.report.pdf.Specimens#all")
  void textIsNeverTooSmallAndHasFourSizesAtMost(String name, Document document, Paper paper) {
    List<Double> sizes =
        sheets(document, paper).stream()
            .flatMap(s -> s.items().stream())
            .filter(Run.class::isInstance)
            .map(i -> ((Run) i).size())
            .distinct()
            .toList();
    assertTrue(sizes.stream().allMatch(s -> s >= 7.5), name + sizes);
    assertTrue(sizes.size() <= 4, name + sizes);
  }

  @Test
  void everySheetHasItsHeadAndItsNumber() {
    List<Sheet> sheets = sheets(Specimens.bench(), Paper.A4);
    for (Sheet sheet : sheets) {
      List<String> texts = texts(sheet);
      assertTrue(texts.contains("Monthly review · October 2026"), texts.toString());
      assertTrue(texts.contains(sheet.number() + " of " + sheets.size()), texts.toString());
      assertTrue(texts.contains("Tidewick Oil & Fuel, bench 1 (invented)"), texts.toString());
    }
  }

  @Test
  void theFrontPageOfFourMethodsIsOneSheet() {
    List<Sheet> sheets = sheets(Specimens.bench(), Paper.A4);
    assertEquals("At a glance", sheets.get(0).bookmark());
    assertTrue(texts(sheets.get(0)).contains("signature"));
    assertEquals("Total glycerin, enzymatic kit, photometric", sheets.get(1).bookmark());
  }

  @Test
  void aPageThatFlowsOverSaysSo() {
    List<Sheet> sheets = sheets(Specimens.bench(), Paper.A4);
    assertEquals("", sheets.get(2).bookmark());
    assertTrue(
        texts(sheets.get(2)).contains("Total glycerin, enzymatic kit, photometric, continued"));
  }

  @Test
  void everyRowSetAsideIsPrintedOverAllSheets() {
    long rows =
        sheets(Specimens.crowd(), Paper.LETTER).stream()
            .flatMap(s -> texts(s).stream())
            .filter(t -> t.startsWith("readings/october.csv, line "))
            .count();
    assertEquals(90, rows);
  }

  @Test
  void theHeadOfATableIsRepeatedOnEachSheet() {
    List<Block.Row> rows = new ArrayList<>();
    for (int i = 0; i < 90; i++) {
      rows.add(Block.Row.of("row " + i, "x"));
    }
    Block table =
        new Block.Table(
            List.of(Block.Column.words("what", 0.5), Block.Column.numbers("how much", 0.5)), rows);
    Page page = new Page("long", List.of(table));
    List<Sheet> sheets = sheets(document(page), Paper.A4);
    assertTrue(sheets.size() >= 2);
    for (Sheet sheet : sheets) {
      assertTrue(texts(sheet).contains("how much"));
    }
    long set =
        sheets.stream().flatMap(s -> texts(s).stream()).filter(t -> t.startsWith("row ")).count();
    assertEquals(90, set);
  }

  @Test
  void aHeadingStaysWithWhatFollows() {
    List<Block> blocks = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      blocks.add(new Block.Heading("Question " + i + "?"));
      blocks.add(Block.Paragraph.body("Answer " + i + "."));
    }
    Page page = new Page("long", blocks);
    List<Sheet> sheets = sheets(document(page), Paper.A4);
    int pairs = 0;
    for (Sheet sheet : sheets) {
      for (String text : texts(sheet)) {
        if (text.startsWith("Question ")) {
          String answer = "Answer " + text.replaceAll("\\D", "") + ".";
          assertTrue(texts(sheet).contains(answer), text);
          pairs++;
        }
      }
    }
    assertEquals(200, pairs);
  }

  /** A chain of staying pieces that is taller than a sheet must still be set, and end. */
  @Test
  void headingsWithoutEndAreStillSet() {
    List<Block> blocks = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      blocks.add(new Block.Heading("Question " + i + "?"));
    }
    List<Sheet> sheets = sheets(document(new Page("long", blocks)), Paper.A4);
    long set =
        sheets.stream()
            .flatMap(s -> texts(s).stream())
            .filter(t -> t.startsWith("Question "))
            .count();
    assertEquals(120, set);
  }

  /** Whatever a person types, no piece grows taller than a sheet. */
  @Test
  void aTextWithoutEndIsCutWhereItCannotFlow() {
    String long1 = "word ".repeat(2000);
    Page page =
        new Page(
            long1,
            List.of(
                new Block.Title(long1, long1, Optional.empty()),
                new Block.Checklist(List.of(new Block.Step(long1, long1, long1, true))),
                new Block.Table(
                    List.of(Block.Column.words("a", 0.3), Block.Column.numbers("b", 0.7)),
                    List.of(Block.Row.of(long1, long1))),
                Block.Paragraph.body(long1)));
    for (Sheet sheet : sheets(document(page), Paper.A4)) {
      for (Item item : sheet.items()) {
        assertTrue(item.box().bottom() <= Paper.A4.height() - Paper.MARGIN + 0.1, item.toString());
        assertTrue(item.box().right() <= Paper.A4.width() - Paper.MARGIN + 0.1, item.toString());
      }
    }
  }

  @Test
  void everyItemHasItsPlaceInTheText() {
    for (Sheet sheet : sheets(Specimens.bench(), Paper.A4)) {
      long titles = sheet.items().stream().filter(i -> i.role() == Role.TITLE).count();
      assertTrue(sheet.bookmark().isEmpty() ? titles == 0 : titles >= 1);
    }
  }

  private static Document document(Page page) {
    return new Document("t", "s", "b", "p", "f", Invented.NOW, List.of(page));
  }

  private static List<String> texts(Sheet sheet) {
    List<String> texts = new ArrayList<>();
    for (Item item : sheet.items()) {
      if (item instanceof Run run) {
        texts.add(run.text());
      }
    }
    return texts;
  }
}
