package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.quietline.stats.control.RunRule;

/** The evidence table that the unit tests of this build wrote is whole. */
class EvidenceTableIT {
  /** Options, and what all answers of a family have in common; each answer is on the table. */
  private static final Set<String> VALUES =
      Set.of(
          "compare.OutlierTest", "compare.Suspect", "sample.CensoredFit", "sample.CensoredNormal");

  private static final String OWN = "own second opinion";

  @Test
  void everyPublicCalculationIsOnTheTable() throws IOException {
    Set<String> shown = new HashSet<>();
    for (CSVRecord line : lines("evidence.csv")) {
      shown.add(line.get("subject").replaceAll("(\\w+\\.\\w+).*", "$1"));
    }
    Set<String> missing = new TreeSet<>();
    for (JavaClass type :
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.quietline.stats")) {
      String place = type.getName().replace("org.quietline.stats.", "");
      boolean calculates =
          type.isTopLevelClass()
              && type.getModifiers().contains(JavaModifier.PUBLIC)
              && place.contains(".")
              && !place.startsWith("numeric.");
      if (calculates && !shown.contains(place) && !VALUES.contains(place)) {
        missing.add(place);
      }
    }
    assertEquals(Set.of(), missing);
  }

  /** A rule is never offered for series without what it costs being known. */
  @Test
  void runLengthsOfEveryRunRuleAreOnTheTable() throws IOException {
    Set<String> missing = new TreeSet<>();
    for (Class<?> rule : RunRule.class.getPermittedSubclasses()) {
      boolean shown =
          lines("evidence.csv").stream()
              .filter(line -> line.get("subject").equals("runlength.Chart.Rules"))
              .filter(line -> !line.get("kind").equals(OWN))
              .anyMatch(line -> line.get("what").contains(rule.getSimpleName() + "["));
      if (!shown) {
        missing.add(rule.getSimpleName());
      }
    }
    assertEquals(Set.of(), missing);
  }

  @Test
  void moreThanAHundredChecksAreFromOutsideAndInEveryRoom() throws IOException {
    Map<String, Long> outside =
        lines("evidence.csv").stream()
            .filter(line -> !line.get("kind").equals(OWN))
            .filter(line -> !line.get("subject").startsWith("numeric."))
            .collect(
                Collectors.groupingBy(
                    line -> line.get("subject").replaceAll("\\..*", ""), Collectors.counting()));
    assertEquals(
        Set.of(
            "distribution",
            "sample",
            "compare",
            "model",
            "mixed",
            "agreement",
            "capability",
            "control",
            "runlength"),
        outside.keySet());
    outside.forEach((room, count) -> assertTrue(count >= 15, room + " has " + count));
    assertTrue(outside.values().stream().mapToLong(c -> c).sum() >= 100);
  }

  @Test
  void intervalsThatAPageRestsOnWereSimulated() throws IOException {
    Set<String> simulated =
        lines("coverage.csv").stream()
            .map(line -> line.get("subject"))
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> wanted =
        Set.of(
            "DuplicateDeviation",
            "VarianceComponents",
            "GroupedLines",
            "StraightLine",
            "PerformanceIndex",
            "InversePrediction");
    assertTrue(simulated.containsAll(wanted), simulated.toString());
  }

  private static List<CSVRecord> lines(String file) throws IOException {
    Path path = Path.of(System.getProperty("quietline.tables", "target/tables"), file);
    try (CSVParser parser =
        CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .get()
            .parse(Files.newBufferedReader(path))) {
      List<CSVRecord> records = parser.getRecords();
      assertTrue(records.size() > 5, file + " holds " + records.size());
      return records;
    }
  }
}
