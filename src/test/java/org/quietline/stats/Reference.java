package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/** One published or recomputed case of the project's {@code shared/reference} folder. */
public final class Reference {
  /** Numbers keep the digits they are printed with. */
  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .build();

  private final JsonNode root;

  private Reference(JsonNode root) {
    this.root = root;
  }

  /** The folder, found from the project's base. */
  public static Path folder() {
    String base = System.getProperty("basedir", System.getProperty("user.dir"));
    return Path.of(base, "shared", "reference");
  }

  public static List<Path> files() {
    try (Stream<Path> files = Files.list(folder())) {
      return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static Reference read(String id) {
    return read(folder().resolve(id + ".json"));
  }

  public static Reference read(Path file) {
    try {
      return new Reference(JSON.readTree(file.toFile()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The node at a JSON pointer, which must be there. */
  public JsonNode at(String pointer) {
    return root.requiredAt(pointer);
  }

  public double number(String pointer) {
    return number(at(pointer));
  }

  public double tolerance() {
    return number("/tolerance");
  }

  /**
   * Holds a result to the figure at a JSON pointer and puts the case on the evidence table. The
   * result must lie within the file's relative {@code tolerance}, or where the file has none within
   * half a unit of the figure's last printed digit.
   */
  public void check(Class<?> subject, String what, String pointer, double got) {
    JsonNode figure = at(pointer);
    double expected = number(figure);
    double allowed =
        root.has("tolerance")
            ? tolerance() * Math.abs(expected)
            : 0.5000001 * printed(figure).ulp().doubleValue();
    record(subject, what, pointer, expected, got);
    assertEquals(expected, got, allowed, what);
  }

  /** The same with a tolerance of its own, in the unit of the figure; say beside the call why. */
  public void check(
      Class<?> subject, String what, String pointer, double got, double absoluteTolerance) {
    JsonNode figure = at(pointer);
    record(subject, what, pointer, number(figure), got);
    assertEquals(number(figure), got, absoluteTolerance, what);
  }

  /** The same for certified figures, of which so many digits must agree. */
  public void checkDigits(
      Class<?> subject, String what, String pointer, double got, double leastDigits) {
    JsonNode figure = at(pointer);
    record(subject, what, pointer, number(figure), got);
    Digits.assertAgree(leastDigits, number(figure), got, what);
  }

  private void record(Class<?> subject, String what, String pointer, double expected, double got) {
    Evidence.record(
        new Evidence(
            subject,
            what,
            at("/id").asText(),
            kind(pointer),
            at(pointer).asText(),
            got,
            Digits.agreeing(got, expected)));
  }

  private Evidence.Kind kind(String pointer) {
    String provenance = at("/provenance").asText();
    if (pointer.startsWith("/crosscheck")) {
      return Evidence.Kind.COMPUTED;
    }
    if (at("/id").asText().startsWith("nist-strd-")) {
      return Evidence.Kind.CERTIFIED;
    }
    if (provenance.startsWith("computed")) {
      return Evidence.Kind.COMPUTED;
    }
    return provenance.startsWith("from memory") ? Evidence.Kind.RECALLED : Evidence.Kind.PUBLISHED;
  }

  private static BigDecimal printed(JsonNode figure) {
    return figure.isTextual() ? new BigDecimal(figure.asText().trim()) : figure.decimalValue();
  }

  /** The numbers of an array, of which there must be so many. */
  public double[] numbers(String pointer, int count) {
    double[] numbers =
        StreamSupport.stream(at(pointer).spliterator(), false)
            .mapToDouble(Reference::number)
            .toArray();
    assertEquals(count, numbers.length, pointer);
    return numbers;
  }

  /** The rows of a table, of which there must be so many. */
  public List<double[]> rows(String pointer, int count) {
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
  public static double number(JsonNode node) {
    return node.isTextual() ? Double.parseDouble(node.asText()) : node.doubleValue();
  }
}
