package org.quietline.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The committed folder is the published data, and nothing was lost on the way. */
class ResistivityBenchTest {
  private static final Path FOLDER = Path.of("sample-runs/resistivity");

  @Test
  void theFolderIsWhatTheConverterMakes(@TempDir Path fresh) throws IOException {
    ResistivityBench.main(new String[] {fresh.toString()});
    SortedMap<String, String> made = SampleFiles.read(fresh);
    SortedMap<String, String> kept = SampleFiles.read(FOLDER);
    assertEquals(
        Set.of("bench.toml", "calibrations.csv", "readings/check-standard.csv"), made.keySet());
    assertEquals(made.keySet(), kept.keySet());
    made.forEach((name, text) -> assertEquals(text, kept.get(name), name));
  }

  @Test
  void noTwoResultsShareAMinuteAndTimeRunsForward() throws IOException {
    List<String> times = rows().stream().map(r -> r.get(0)).toList();
    assertEquals(25, times.size());
    assertEquals(25, new HashSet<>(times).size());
    assertEquals(times.stream().sorted().toList(), times);
  }

  @Test
  void theValuesInPublishedOrderGiveTheHandbooksNumbers() throws IOException {
    JsonNode expected = published().get("expected");
    double[] values = new double[25];
    for (List<String> row : rows()) {
      values[Integer.parseInt(row.get(12)) - 1] = Double.parseDouble(row.get(5));
    }
    JsonNode rows = published().at("/data/rows");
    for (int i = 0; i < values.length; i++) {
      assertEquals(rows.get(i).get(10).asDouble(), values[i], "published row " + (i + 1));
    }
    double mean = Arrays.stream(values).average().orElseThrow();
    double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    double deviation = Math.sqrt(squares / 24);
    assertEquals(expected.get("center").asDouble(), mean, 0.5e-5);
    assertEquals(expected.get("s2").asDouble(), deviation, 0.5e-4);
    double lower = mean - 2 * deviation;
    double upper = mean + 2 * deviation;
    assertEquals(expected.get("LCL_2s").asDouble(), lower, 0.5e-5);
    assertEquals(expected.get("UCL_2s").asDouble(), upper, 0.5e-5);
    double[] beyond = Arrays.stream(values).filter(v -> v < lower || v > upper).sorted().toArray();
    assertTrue(Arrays.equals(new double[] {97.014, 97.016}, beyond), Arrays.toString(beyond));
  }

  private static List<List<String>> rows() throws IOException {
    return SampleFiles.read(FOLDER)
        .getOrDefault("readings/check-standard.csv", "")
        .lines()
        .skip(1)
        .map(line -> List.of(line.split(",", -1)))
        .toList();
  }

  private static JsonNode published() throws IOException {
    return new ObjectMapper().readTree(ResistivityBench.SOURCE.toFile());
  }
}
