package org.quietline.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Rule;

/**
 * The {@code bench.toml} of a bench that begins: the frame of {@code new-bench.toml}, filled with
 * what the cards say, all of it to be read, changed and completed by people.
 */
final class NewSettings {
  private final NewBench bench;

  NewSettings(NewBench bench) {
    this.bench = bench;
  }

  /** The whole file. */
  String text() {
    String others =
        MethodCards.NAMES.stream()
            .filter(c -> !bench.cards().contains(c))
            .collect(Collectors.joining(", "));
    return template()
        .replace("@ZONE@", quoted(bench.zone().orElse(bench.machineZone()).getId()))
        .replace("@ABOUT_ZONE@", aboutZone())
        .replace("@OTHER_CARDS@", others.isEmpty() ? "none" : others)
        .replace(
            "@METHODS@",
            bench.cards().stream().map(NewSettings::method).collect(Collectors.joining()))
        .replace(
            "@MATERIALS@",
            bench.cards().stream().map(NewSettings::material).collect(Collectors.joining()))
        .replace("@EXAMPLES@", examples())
        .replace("@CHART@", chart())
        .replace("@FIRST_METHOD@", bench.cards().get(0))
        .replace("@NAME@", quoted(bench.name().strip()));
  }

  private static String template() {
    try (InputStream in = NewSettings.class.getResourceAsStream("new-bench.toml")) {
      if (in == null) {
        throw new IllegalStateException("the program was built without new-bench.toml");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String aboutZone() {
    if (bench.zone().isPresent()) {
      return "all times on the sheets are local times of this zone";
    }
    return bench.machineZone().getRules().equals(ZoneOffset.UTC.getRules())
        ? "CHECK: this computer keeps UTC; write the bench's own zone, such as Europe/Dublin"
        : "CHECK: this computer's zone; all times on the sheets are local times of it";
  }

  private static String method(String name) {
    JsonNode card = MethodCards.treeOf(name);
    StringBuilder text = new StringBuilder("\n[[method]]\ncard = " + quoted(name) + "\n");
    text.append("# The card says what follows:\n");
    card.properties()
        .forEach(
            p ->
                text.append(
                    "#" + p.getKey() + " = " + value(p.getValue()) + note(p.getKey()) + "\n"));
    String unit = unitOf(card);
    return text.append("# What no card can know:\n")
        .append("#allowable-bias =    # FILL IN, in " + unit + ": how far drift may carry a result")
        .append(" before it is unfit for use\n")
        .append(
            "#shelf-life-days = { refrigerated = , ambient = }    # FILL IN from the label: days")
        .append(" a reagent lasts once opened\n")
        .append(
            "#published-repeatability =    # FILL IN, in " + unit + ", from your own copy of the")
        .append(" method\n")
        .append("#published-repeatability-source =    # FILL IN with it, edition and all\n")
        .toString();
  }

  private static String note(String key) {
    return switch (key) {
      case "replicate-kind" ->
          "    # CHECK: \"re-prepared\" where each reading is of a fresh portion";
      case "repeat-policy" ->
          "    # CHECK: \"two-more\" where a reading is cheap; when two readings disagree";
      case "limit-source" -> "    # CHECK the limit, too";
      case "basis" -> "    # CHECK: the acid as which it is expressed";
      default -> "";
    };
  }

  private static String material(String name) {
    return """

        [[material]]
        key = "%s"    # CHECK: as written on the bottle; rows of role control name it as their sample
        method = "%s"
        #assigned-value =    # FILL IN, in %s, where a certificate or a laboratory gave one
        #standard-uncertainty =    # FILL IN with it: the expanded uncertainty over its coverage factor
        """
        .formatted(materialOf(name), name, unitOf(MethodCards.treeOf(name)));
  }

  /** Such as QC-TG-1, of the first letters of total-glycerin. */
  private static String materialOf(String name) {
    String letters =
        Arrays.stream(name.split("-", -1))
            .map(word -> word.substring(0, 1))
            .collect(Collectors.joining());
    return "QC-" + letters.toUpperCase(Locale.ROOT) + "-1";
  }

  private static String unitOf(JsonNode card) {
    String unit = card.path("unit").asText();
    return card.has("basis") ? unit + " as " + card.path("basis").asText() : unit;
  }

  /** Invented rows, to be read by people only. */
  private String examples() {
    Map<String, String> fields =
        Map.of(
            "taken_at", "2026-01-05T09:10",
            "method", bench.cards().get(0),
            "instrument", "PM-1",
            "role", "control",
            "sample", materialOf(bench.cards().get(0)),
            "reading_1", "0.21",
            "reading_2", "0.22",
            "calibration", "C-1",
            "calibrated_at", "2026-01-05T08:30");
    return Stream.of(
            ResultRows.LAYOUT.headerLine(NewBench.READINGS),
            CalibrationRows.LAYOUT.headerLine(NewBench.CALIBRATORS))
        .flatMap(header -> Stream.of(header.strip(), example(header, fields)))
        .map(line -> "#   " + line)
        .collect(Collectors.joining("\n"));
  }

  private static String example(String header, Map<String, String> fields) {
    return Arrays.stream(header.strip().split(",", -1))
        .map(column -> fields.getOrDefault(column, ""))
        .collect(Collectors.joining(","));
  }

  private static String chart() {
    ChartSettings usual = ChartSettings.DEFAULTS;
    return """
        #baseline-results = %d
        #limits-from = "%s"
        #weighting = %s
        #stop-rules = %s
        #notice-rules = %s
        """
        .formatted(
            usual.baselineResults(),
            usual.limitsFrom().key(),
            usual.weighting(),
            list(usual.stopRules()),
            list(usual.noticeRules()));
  }

  private static String list(List<Rule> rules) {
    return rules.stream().map(r -> quoted(r.key())).collect(Collectors.joining(", ", "[", "]"));
  }

  private static String value(JsonNode value) {
    return value.isNumber() ? value.decimalValue().toPlainString() : quoted(value.asText());
  }

  private static String quoted(String text) {
    return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }
}
