package org.quietline.intake;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Bytes guided by what they reach in the code, read as a sheet or as the settings. The first byte
 * says where they are put. See DEVELOPERS.md for the command.
 */
class SheetFuzzTest {
  private static final HostileFile HOSTILE = new HostileFile(newFolder());

  /** Every sheet of the corpus, where it belongs. */
  static Stream<Arguments> corpus() throws IOException {
    List<Arguments> seeds = new ArrayList<>();
    for (String sheet : CorpusTest.sheets()) {
      byte[] content = Files.readAllBytes(CorpusTest.corpus().resolve(sheet));
      byte[] seed = new byte[content.length + 1];
      seed[0] = (byte) HostileFile.placeOf(sheet);
      System.arraycopy(content, 0, seed, 1, content.length);
      seeds.add(Arguments.of((Object) seed));
    }
    return seeds.stream();
  }

  @MethodSource("corpus")
  @FuzzTest(maxExecutions = 1_000_000, maxDuration = "")
  void noBytesEndInAnythingButCountsAndSentences(byte[] data) {
    if (data.length == 0) {
      return;
    }
    byte[] content = new byte[data.length - 1];
    System.arraycopy(data, 1, content, 0, content.length);
    HOSTILE.read(Math.floorMod(data[0], HostileFile.places()), content);
  }

  private static Path newFolder() {
    try {
      Path fast = Path.of("/dev/shm");
      return Files.isWritable(fast)
          ? Files.createTempDirectory(fast, "bench")
          : Files.createTempDirectory("bench");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
