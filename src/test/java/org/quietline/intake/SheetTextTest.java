package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Decoding over the edges of the buffer, and a drive that fails in mid-file. */
class SheetTextTest {
  private static SheetText text(byte[] bytes) throws IOException {
    return new SheetText(new ByteArrayInputStream(bytes), Optional.empty(), n -> {});
  }

  private static String all(SheetText text) throws IOException {
    StringBuilder read = new StringBuilder();
    char[] some = new char[1000];
    for (int n = text.read(some, 0, 1000); n >= 0; n = text.read(some, 0, 1000)) {
      read.append(some, 0, n);
    }
    assertEquals(-1, text.read(some, 0, 1000));
    return read.toString();
  }

  @ParameterizedTest
  @ValueSource(ints = {8187, 8188, 8189, 8190, 8191, 8192, 8193})
  void charactersOverTheEdgeOfTheBufferAreWhole(int before) throws IOException {
    String content = "x".repeat(before) + "µ€\uD83D\uDE00\r\ny".repeat(3000);
    assertEquals(content, all(text(content.getBytes(StandardCharsets.UTF_8))));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 8190, 8191, 8192})
  void bytesThatAreNotUtf8AreMarkedOneByOne(int before) throws IOException {
    byte[] content = ("x".repeat(before) + "\u00B5\u00FF!").getBytes(StandardCharsets.ISO_8859_1);
    assertEquals("x".repeat(before) + "\uFFFF\uFFFF!", all(text(content)));
  }

  /** Hash of the three bytes abc: FIPS 180-4, the example of NIST for SHA-256. */
  @Test
  void theHashIsThatOfTheBytes() throws IOException {
    SheetText text = text("abc".getBytes(StandardCharsets.US_ASCII));
    all(text);
    assertEquals("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", text.sha256());
  }

  @Test
  void aDriveThatFailsEndsTheFileAndKeepsTheRowsBefore() throws IOException {
    SheetRows rows = new SheetRows(failingAfter("a,b\n1,2\n3,"), ',');
    assertInstanceOf(Cells.class, rows.next());
    assertInstanceOf(Cells.class, rows.next());
    assertEquals(
        new Piece.Damaged(
            3,
            "3,",
            "The file could not be read further than this; see that the drive is sound and save the"
                + " file again."),
        rows.next());
    assertNull(rows.next());
  }

  @Test
  void aDriveThatFailsBehindABadQuoteEndsTheFileToo() throws IOException {
    SheetRows rows = new SheetRows(failingAfter("a,b\n\"1\"2" + "x".repeat(100_000)), ',');
    assertInstanceOf(Cells.class, rows.next());
    Piece.Damaged damaged = assertInstanceOf(Piece.Damaged.class, rows.next());
    assertTrue(damaged.sentence().startsWith("The file could not be read further than this;"));
    assertNull(rows.next());
  }

  private static SheetText failingAfter(String start) throws IOException {
    InputStream failing =
        new InputStream() {
          @Override
          public int read() throws IOException {
            throw new IOException("the drive is gone");
          }

          @Override
          public int read(byte[] bytes, int offset, int length) throws IOException {
            return read();
          }
        };
    InputStream before = new ByteArrayInputStream(start.getBytes(StandardCharsets.UTF_8));
    return new SheetText(new SequenceInputStream(before, failing), Optional.empty(), n -> {});
  }
}
