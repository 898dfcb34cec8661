package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The corpus once more, each sheet damaged at random places from a fixed seed: no bytes end in
 * anything but counts that add up and sentences. How many inputs are tried is a property, so that a
 * long run needs no other program.
 */
class MutatedCorpusTest {
  /** The number of inputs: a short slice, or what {@code -Dintake.inputs} says. */
  private static final int INPUTS = Integer.getInteger("intake.inputs", 6000);

  private static final List<String> PIECES =
      List.of(
          "\"",
          "\"\"",
          ",",
          ";",
          "\t",
          "\n",
          "\r",
          "\r\n",
          "\0",
          "\u00e9",
          "\ufeff",
          "<",
          ">",
          "-",
          "0,180",
          "1e9",
          "2026-10-14T09:12",
          "31.12.2026",
          "total-glycerin",
          "% mass",
          "=1+1");

  @TempDir private Path folder;

  @Test
  void noBytesEndInAnythingButCountsAndSentences() throws IOException {
    List<String> sheets = CorpusTest.sheets();
    List<byte[]> contents = new ArrayList<>();
    for (String sheet : sheets) {
      contents.add(Files.readAllBytes(CorpusTest.corpus().resolve(sheet)));
    }
    byte[] settings = TempBench.SETTINGS.getBytes(StandardCharsets.UTF_8);
    HostileFile hostile = new HostileFile(folder);
    SplittableRandom random = new SplittableRandom(20261125);
    long rows = 0;
    for (int i = 0; i < INPUTS; i++) {
      int which = random.nextInt(sheets.size());
      boolean elsewhere = random.nextInt(4) == 0;
      int place =
          elsewhere ? random.nextInt(HostileFile.places()) : HostileFile.placeOf(sheets.get(which));
      boolean toSettings = place == HostileFile.places() - 1;
      byte[] bytes = toSettings ? settings : contents.get(which);
      rows += hostile.read(place, mutated(bytes, contents, random));
    }
    assertTrue(rows > INPUTS, rows + " rows");
  }

  private static byte[] mutated(byte[] bytes, List<byte[]> others, SplittableRandom random) {
    byte[] now = bytes;
    int changes = 1 + random.nextInt(6);
    for (int i = 0; i < changes; i++) {
      now = changed(now, others.get(random.nextInt(others.size())), random);
    }
    return now;
  }

  private static byte[] changed(byte[] bytes, byte[] other, SplittableRandom random) {
    int at = random.nextInt(bytes.length + 1);
    int until = Math.min(bytes.length, at + random.nextInt(40));
    return switch (random.nextInt(6)) {
      case 0 -> joined(bytes, 0, at, new byte[] {(byte) random.nextInt()}, bytes, at);
      case 1 -> joined(bytes, 0, at, new byte[0], bytes, until);
      case 2 -> joined(bytes, at, until, new byte[0], bytes, 0);
      case 3 ->
          joined(
              bytes,
              0,
              at,
              PIECES.get(random.nextInt(PIECES.size())).getBytes(StandardCharsets.UTF_8),
              bytes,
              at);
      case 4 -> joined(bytes, 0, at, new byte[0], other, random.nextInt(other.length + 1));
      default -> flipped(bytes, random);
    };
  }

  private static byte[] flipped(byte[] bytes, SplittableRandom random) {
    byte[] copy = bytes.clone();
    if (copy.length > 0) {
      copy[random.nextInt(copy.length)] ^= (byte) (1 << random.nextInt(8));
    }
    return copy;
  }

  private static byte[] joined(
      byte[] first, int from, int to, byte[] middle, byte[] last, int lastFrom) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(first, from, to - from);
    out.writeBytes(middle);
    out.write(last, lastFrom, last.length - lastFrom);
    return out.toByteArray();
  }
}
