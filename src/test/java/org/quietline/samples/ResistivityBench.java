package org.quietline.samples;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Lays the published check-standard data of the NIST/SEMATECH e-Handbook, section 2.6.2, out as a
 * bench folder, {@code sample-runs/resistivity}. Nothing is computed and no number is changed.
 */
final class ResistivityBench {
  static final Path SOURCE = Path.of("shared/reference/nist-2.6.2-check-standard-resistivity.json");

  /** The data name no year; ABOUT.md says why this one. */
  private static final int YEAR = 1994;

  private static final String SETTINGS =
      """
      # Published data, not ours: NIST/SEMATECH e-Handbook of Statistical Methods, 2.6.2.
      # See ABOUT.md for what was changed in layout.
      name = "Resistivity check standard"
      timezone = "America/New_York"

      [[method]]
      key = "resistivity"
      title = "Resistivity of a silicon wafer, four-point probe"
      unit = "ohm·cm"
      decimals = 3
      replicates = 1
      replicate-kind = "re-read"

      [[instrument]]
      key = "probe-2362"
      title = "Probe 2362"

      [[material]]
      key = "wafer-137"
      method = "resistivity"

      [[baseline]]
      method = "resistivity"
      instrument = "probe-2362"
      material = "wafer-137"
      from = 1994-03-24
      to = 1994-04-11
      reason = "the handbook takes its limits from all 25 results"

      [chart]
      limits-from = "sample-deviation"
      """;

  private ResistivityBench() {}

  /**
   * Writes the folder.
   *
   * @param args the folder to write, or nothing for {@code sample-runs/resistivity}
   * @throws IOException when the data cannot be read or the folder cannot be written
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args.length > 0 ? args[0] : "sample-runs/resistivity");
    SampleFiles.write(folder, files(new ObjectMapper().readTree(SOURCE.toFile())));
  }

  /** Every file but ABOUT.md, by its name relative to the folder. */
  static SortedMap<String, String> files(JsonNode published) {
    List<String> columns = texts(published.at("/data/columns"));
    List<Published> results = new ArrayList<>();
    for (JsonNode row : published.at("/data/rows")) {
      results.add(new Published(results.size() + 1, columns, texts(row)));
    }
    results.sort(Comparator.comparing(Published::takenAt));
    Sheet readings =
        new Sheet(
            "taken_at,method,instrument,role,sample,reading_1,unit,calibration,reagent_lot,"
                + "operator,remark,temperature_c,sequence");
    results.forEach(result -> readings.add(result.fields()));
    Sheet calibrations =
        new Sheet(
            "calibration,method,instrument,calibrated_at,blank_response,calibrator_1_assigned,"
                + "calibrator_1_response,calibrator_2_assigned,calibrator_2_response,reagent_lot,"
                + "operator,remark");
    SortedMap<String, String> files = new TreeMap<>();
    files.put("bench.toml", SETTINGS);
    files.put("readings/check-standard.csv", readings.text());
    files.put("calibrations.csv", calibrations.text());
    return files;
  }

  private static List<String> texts(JsonNode array) {
    List<String> texts = new ArrayList<>();
    array.forEach(node -> texts.add(node.asText()));
    return texts;
  }

  /**
   * One published row.
   *
   * @param number its place in the published order, from 1
   * @param columns the names of the columns
   * @param texts the fields
   */
  private record Published(int number, List<String> columns, List<String> texts) {
    private String field(String column) {
      return texts.get(columns.indexOf(column));
    }

    private int number(String column) {
      return Integer.parseInt(field(column));
    }

    LocalDateTime takenAt() {
      return LocalDateTime.of(
          YEAR, number("month"), number("day"), number("hour"), number("minute"));
    }

    List<String> fields() {
      int readings = number("df") + 1;
      return List.of(
          takenAt().toString(),
          "resistivity",
          "probe-" + field("probe"),
          "control",
          "wafer-" + field("check_id"),
          field("check_std"),
          "ohm·cm",
          "",
          "",
          field("operator"),
          "sd " + field("sd") + " from " + readings + " readings",
          field("temp"),
          Integer.toString(number));
    }
  }
}
