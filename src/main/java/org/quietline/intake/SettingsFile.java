package org.quietline.intake;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * The text of {@code bench.toml} and the tree of its values, before anything is made of them.
 *
 * @param path where it lies
 * @param tree its values
 * @param places its lines
 * @param fingerprint of its bytes and those of the method cards it uses
 */
record SettingsFile(Path path, JsonNode tree, TomlPlaces places, String fingerprint) {
  static final TomlMapper TOML =
      TomlMapper.builder()
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .build();

  private static final int MOST_BYTES = 4_000_000;

  static SettingsFile read(Path folder) {
    Path path = folder.resolve(SettingsNotes.FILE);
    if (!Files.exists(path)) {
      throw new IntakeException(
          path,
          "The folder "
              + folder
              + " holds no bench.toml. Give the folder that holds it, or write one, and run again.");
    }
    if (!Files.isRegularFile(path)) {
      throw new IntakeException(
          path,
          "bench.toml is not a file. Put the settings into a file of that name and run again.");
    }
    byte[] bytes = bytesOf(path);
    String text = textOf(path, bytes);
    JsonNode tree = treeOf(path, text);
    byte[] cards = MethodCards.in(tree).bytesUsed();
    return new SettingsFile(
        path, tree, TomlPlaces.in(text), Fingerprint.shortOf(Fingerprint.joined(bytes, cards)));
  }

  /** Settings that stand in no file, such as those a trial assumes. */
  static SettingsFile ofText(String text) {
    return new SettingsFile(
        Path.of(SettingsNotes.FILE), treeOf(Path.of(SettingsNotes.FILE), text),
        TomlPlaces.in(text), Fingerprint.shortOf(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** These settings with other {@code [[sheet]]} entries, whose lines are counted in their text. */
  SettingsFile withSheets(String block) {
    SettingsFile sheets = ofText(block);
    ObjectNode changed = tree.deepCopy();
    changed.set("sheet", sheets.tree.path("sheet"));
    return new SettingsFile(path, changed, sheets.places, fingerprint);
  }

  private static byte[] bytesOf(Path path) {
    try (InputStream in = Files.newInputStream(path)) {
      byte[] bytes = in.readNBytes(MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES) {
        throw new IntakeException(
            path, "bench.toml is larger than 4 MB, which no settings need. Mend it and run again.");
      }
      return bytes;
    } catch (IOException e) {
      throw new IntakeException(
          path,
          "bench.toml could not be read. See that it is a file you may read, and run again.",
          e);
    }
  }

  private static String textOf(Path path, byte[] bytes) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    CharBuffer chars = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(ByteBuffer.wrap(bytes), chars, true);
    String text = chars.flip().toString();
    if (result.isError()) {
      throw new IntakeException(
          path,
          "bench.toml, line "
              + (1 + text.chars().filter(c -> c == '\n').count())
              + ": not UTF-8. Save the file as UTF-8 and run again.");
    }
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  private static JsonNode treeOf(Path path, String text) {
    try {
      return TOML.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IntakeException(
          path,
          "bench.toml, line "
              + lineOf(e, text)
              + ": not valid TOML: "
              + sentence(e.getOriginalMessage())
              + " Mend that line and run again.",
          e);
    }
  }

  /** Some problems are noticed only after the end of their line; those are told a line earlier. */
  private static int lineOf(JsonProcessingException e, String text) {
    JsonLocation location = e.getLocation();
    if (location == null) {
      return 1;
    }
    int line = Math.max(1, location.getLineNr());
    String message = e.getOriginalMessage();
    if (location.getColumnNr() <= 1
        && (message.startsWith("Duplicate key") || message.startsWith("Premature end"))) {
      List<String> lines = text.lines().toList();
      do {
        line--;
      } while (line > 1 && (line > lines.size() || lines.get(line - 1).isBlank()));
    }
    return Math.max(1, line);
  }

  private static String sentence(String message) {
    String shown = Excerpt.of(message);
    return shown.matches(".*[.?…]") ? shown : shown + ".";
  }
}
