package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/** One published or recomputed case of the project's {@code shared/reference} folder. */
final class Reference {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final JsonNode root;

  private Reference(JsonNode root) {
    this.root = root;
  }

  /** The folder, found from the project's base. */
  static Path folder() {
    String base = System.getProperty("basedir", System.getProperty("user.dir"));
    return Path.of(base, "shared", "reference");
  }

  static List<Path> files() {
    try (Stream<Path> files = Files.list(folder())) {
      return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Reference read(String id) {
    return read(folder().resolve(id + ".json"));
  }

  static Reference read(Path file) {
    try {
      return new Reference(JSON.readTree(file.toFile()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The node at a JSON pointer, which must be there. */
  JsonNode at(String pointer) {
    return root.requiredAt(pointer);
  }

  double number(String pointer) {
    return number(at(pointer));
  }

  double tolerance() {
    return number("/tolerance");
  }

  /** The numbers of an array, of which there must be so many. */
  double[] numbers(String pointer, int count) {
    double[] numbers =
        StreamSupport.stream(at(pointer).spliterator(), false)
            .mapToDouble(Reference::number)
            .toArray();
    assertEquals(count, numbers.length, pointer);
    return numbers;
  }

  /** The rows of a table, of which there must be so many. */
  List<double[]> rows(String pointer, int count) {
    List<double[]> rows =
        StreamSupport.stream(at(pointer).spliterator(), false)
            .map(
                row ->
                    StreamSupport.stream(row.spliterator(), false)
                        .mapToDouble(Reference::number)
                        .toArray())
            .toList();
    assertEquals(count, rows.size(), pointer);
    return rows;
  }

  /** A number, also one kept as text for its digits. */
  static double number(JsonNode node) {
    return node.isTextual() ? Double.parseDouble(node.asText()) : node.doubleValue();
  }
}
