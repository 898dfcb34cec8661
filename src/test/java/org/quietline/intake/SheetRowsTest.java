package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rows as another reader of the same standard cuts them, and what a damaged line costs. */
class SheetRowsTest {
  private static final int ROUNDS = 5_000;
  private static final String SIGNS = "\"\"\"\",,,\n\n\r ab1";

  private static SheetRows rows(String content, char delimiter) throws IOException {
    return new SheetRows(text(content), delimiter);
  }

  private static SheetText text(String content) throws IOException {
    return new SheetText(
        new ByteArrayInputStream(content.getBytes(StandardCharsets.UTF_8)),
        Optional.empty(),
        n -> {});
  }

  private static List<Piece> all(SheetRows rows) {
    List<Piece> all = new ArrayList<>();
    for (Piece next = rows.next(); next != null; next = rows.next()) {
      all.add(next);
    }
    return all;
  }

  private static List<List<String>> cells(List<Piece> pieces) {
    return pieces.stream().map(p -> assertInstanceOf(Cells.class, p).list()).toList();
  }

  /** What Commons CSV makes of a text; empty when it finds a quote wrong. */
  private static Optional<List<List<String>>> byCommons(String content, char delimiter) {
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setDelimiter(delimiter)
            .setIgnoreEmptyLines(false)
            .setIgnoreSurroundingSpaces(true)
            .get();
    List<List<String>> rows = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(content, format)) {
      for (CSVRecord row : parser) {
        List<String> cells = row.stream().map(Excerpt::strip).toList();
        if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
          rows.add(cells);
        }
      }
      return Optional.of(rows);
    } catch (IOException | UncheckedIOException e) {
      return Optional.empty();
    }
  }

  @ParameterizedTest
  @ValueSource(chars = {',', ';', '\t', '|', '¦'})
  void rowsAreThoseThatCommonsCsvCuts(char delimiter) throws IOException {
    Random random = new Random(20_261_014);
    int sound = 0;
    int broken = 0;
    for (int round = 0; round < ROUNDS; round++) {
      String content =
          IntStream.range(0, random.nextInt(30))
              .mapToObj(i -> String.valueOf(SIGNS.charAt(random.nextInt(SIGNS.length()))))
              .collect(Collectors.joining())
              .replace(',', delimiter);
      Optional<List<List<String>>> expected = byCommons(content, delimiter);
      List<Piece> found = all(rows(content, delimiter));
      if (expected.isPresent()) {
        sound++;
        assertEquals(expected.get(), cells(found), content);
      } else {
        broken++;
        assertTrue(found.stream().anyMatch(p -> p instanceof Piece.Damaged), content);
      }
    }
    assertTrue(sound > 1000 && broken > 1000, sound + " sound, " + broken + " broken");
  }

  @Test
  void everyLineOfABrokenTextIsEitherInARowOrDamaged() throws IOException {
    Random random = new Random(7);
    for (int round = 0; round < ROUNDS; round++) {
      String content =
          IntStream.range(0, 40)
              .mapToObj(i -> String.valueOf(SIGNS.charAt(random.nextInt(SIGNS.length()))))
              .collect(Collectors.joining());
      List<String> raw = new ArrayList<>();
      long before = 0;
      SheetRows rows = rows(content, ',');
      for (Piece next = rows.next(); next != null; next = rows.next()) {
        assertTrue(next.line() > before, content);
        before = next.line();
        raw.add(next instanceof Cells cells ? cells.raw().text() : ((Piece.Damaged) next).raw());
      }
      assertEquals(lettersOf(content), lettersOf(String.join("", raw)), content);
    }
  }

  private static String lettersOf(String text) {
    return text.replaceAll("[^a-z0-9]", "");
  }

  @Test
  void aCellThatEqualsTheOneAboveIsTheSameText() throws IOException {
    List<Piece> rows = all(rows("RO,1\nRO,2\n\nRO,\"3\"\n\"RO\",3\nR\"\"O,4\n\"R\"\"O\",5\n", ','));
    String first = ((Cells) rows.get(0)).get(0);
    assertSame(first, ((Cells) rows.get(1)).get(0));
    assertSame(first, ((Cells) rows.get(2)).get(0));
    assertSame(first, ((Cells) rows.get(3)).get(0));
    assertSame(((Cells) rows.get(2)).get(1), ((Cells) rows.get(3)).get(1));
    assertEquals("R\"\"O", ((Cells) rows.get(4)).get(0));
    assertEquals("R\"O", ((Cells) rows.get(5)).get(0));
  }

  @Test
  void rowsOverTheEdgeOfTheWindowAreWhole() throws IOException {
    String content =
        IntStream.range(0, 60_000)
            .mapToObj(i -> "row " + i + ",\"two\r\nlines\",same\r\n")
            .collect(Collectors.joining());
    List<Piece> rows = all(rows(content, ','));
    assertEquals(60_000, rows.size());
    for (int i = 0; i < rows.size(); i++) {
      Cells row = (Cells) rows.get(i);
      assertEquals(List.of("row " + i, "two\r\nlines", "same"), row.list());
      assertEquals(2L * i + 1, row.line());
    }
  }

  private static Piece.Damaged damaged(SheetRows rows) {
    return assertInstanceOf(Piece.Damaged.class, rows.next());
  }

  private static void assertNext(SheetRows rows, long line, String... cells) {
    Cells next = assertInstanceOf(Cells.class, rows.next());
    assertEquals(List.of(cells), next.list());
    assertEquals(line, next.line());
  }

  @Test
  void aLineOfMoreThanAMillionCharactersIsDamaged() throws IOException {
    SheetRows rows = rows("a,b\n" + "x".repeat(1_000_001) + "\n1,2\n", ',');
    assertNext(rows, 1, "a", "b");
    Piece.Damaged damaged = damaged(rows);
    assertEquals(
        "The line is longer than 1,000,000 characters, as no row is and a damaged file may be; save"
            + " the file again.",
        damaged.sentence());
    assertEquals(2, damaged.line());
    assertEquals("x".repeat(4000), damaged.raw());
    assertNext(rows, 3, "1", "2");
    assertNull(rows.next());
  }

  @Test
  void aLineOfExactlyAMillionCharactersIsARow() throws IOException {
    String longest = "x".repeat(999_998) + ",y";
    SheetRows rows = rows(longest + "\n1,2\n", ',');
    assertNext(rows, 1, "x".repeat(999_998), "y");
    assertNext(rows, 2, "1", "2");
  }

  @Test
  void aLineOfMoreThanTwentyThousandFieldsIsDamaged() throws IOException {
    SheetRows rows = rows("x,".repeat(19_999) + "y\n" + "x,".repeat(20_000) + "y\n1,2\n", ',');
    assertEquals(20_000, assertInstanceOf(Cells.class, rows.next()).size());
    assertEquals(
        "The line has more than 20,000 fields, as no row has and a damaged file may; save the file"
            + " again.",
        damaged(rows).sentence());
    assertNext(rows, 3, "1", "2");
  }

  @Test
  void aFileThatOpensAQuoteInEveryLineIsNotReadOnceFromEveryLine() throws IOException {
    SheetRows rows = rows("1,\"open \"\"still\n".repeat(400_000), ',');
    List<Piece> all =
        assertTimeoutPreemptively(Duration.ofSeconds(60), () -> all(rows), "it is read too often");
    assertEquals(400_000, all.size());
    assertEquals(400_000, all.get(399_999).line());
  }

  @Test
  void aQuoteThatStaysOpenForAMillionCharactersCostsOneLine() throws IOException {
    SheetRows rows = rows("1,\"open\n" + "3,4\n".repeat(300_000), ',');
    Piece.Damaged damaged = damaged(rows);
    assertEquals(
        "A quote is opened here and not closed in the lines that follow; close it or take it out.",
        damaged.sentence());
    assertEquals("1,\"open", damaged.raw());
    assertNext(rows, 2, "3", "4");
    assertEquals(299_999, all(rows).size());
  }

  @Test
  void aQuoteThatIsNeverClosedCostsOneLine() throws IOException {
    SheetRows rows = rows("1,2\r\n\"3,4\r\n5,6\r\n\"7\"", ',');
    assertNext(rows, 1, "1", "2");
    assertEquals(
        "A quote that is opened here ends in line 4 in the middle of a field; write a quote inside"
            + " a field twice, and close every quote at the end of its field.",
        damaged(rows).sentence());
    assertNext(rows, 3, "5", "6");
    assertNext(rows, 4, "7");
    assertNull(rows.next());
  }

  /** Its characters would fill 400 megabytes if they were held. */
  @Test
  void aFileWithoutEndsOfLinesIsReadInConstantMemory() throws IOException {
    long length = 200_000_000L;
    InputStream endless =
        new InputStream() {
          private long left = length;

          @Override
          public int read() {
            return left-- > 0 ? 'x' : -1;
          }

          @Override
          public int read(byte[] bytes, int offset, int wanted) {
            if (left <= 0) {
              return -1;
            }
            int n = (int) Math.min(left, wanted);
            Arrays.fill(bytes, offset, offset + n, (byte) 'x');
            left -= n;
            return n;
          }
        };
    RowWindow window = new RowWindow(new SheetText(endless, Optional.empty(), n -> {}));
    assertEquals(FieldCutter.Outcome.TOO_LONG, new FieldCutter(window, ',').cut());
    assertTrue(window.chars().length < 3 * RowWindow.LONGEST_ROW);
    SheetRows rows = new SheetRows(new SheetText(endless, Optional.empty(), n -> {}), ',');
    assertEquals(1, damaged(rows).line());
    assertNull(rows.next());
  }
}
