package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Person;
import org.quietline.bench.Settings;
import org.quietline.bench.Unit;

class NewBenchTest {
  private static final ZoneId DUBLIN = ZoneId.of("Europe/Dublin");

  @TempDir private Path folder;

  private static NewBench of(String... cards) {
    return new NewBench("Invented bench", Optional.of(DUBLIN), DUBLIN, List.of(cards));
  }

  private static String settingsOf(NewBench bench) {
    return bench.files().getOrDefault("bench.toml", "");
  }

  private Intake read(NewBench bench) {
    bench.files().forEach(this::put);
    return BenchFolder.read(folder);
  }

  private void put(String name, String text) {
    try {
      Files.createDirectories(folder.resolve(name).getParent());
      Files.writeString(folder.resolve(name), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void assertNoRemark(Intake intake) {
    assertEquals(List.of(), intake.accounting().settingsAside());
    assertEquals(List.of(), intake.accounting().aside());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "acid-number",
        "free-glycerin",
        "acid-number,free-fatty-acid,total-glycerin,free-glycerin"
      })
  void it_is_read_without_a_remark_and_holds_nothing_but_its_methods(String cards) {
    List<String> names = List.of(cards.split(",", -1));
    Intake intake = read(of(names.toArray(String[]::new)));
    assertNoRemark(intake);
    assertEquals(0, intake.accounting().rows());
    assertEquals(5, intake.accounting().files().size(), "every sheet is there, and read");
    Settings settings = intake.bench().settings();
    assertEquals(names, settings.methods().stream().map(Method::key).toList());
    assertEquals(names, settings.materials().stream().map(Material::method).toList());
    assertTrue(settings.materials().stream().allMatch(m -> m.assignedValue().isEmpty()));
    assertEquals(List.of("PM-1"), settings.instruments().stream().map(i -> i.key()).toList());
    assertEquals(ChartSettings.DEFAULTS, settings.chart());
    assertEquals(DUBLIN, settings.timezone());
  }

  @Test
  void the_sheets_have_the_columns_that_are_read() {
    var files = of("acid-number").files();
    assertEquals(
        List.of(
            "readings/results.csv",
            "calibrations.csv",
            "reagents.csv",
            "actions.csv",
            "outside.csv",
            "bench.toml"),
        List.copyOf(files.keySet()));
    assertEquals(
        "taken_at,method,instrument,role,sample,reading_1,reading_2,unit,calibration,reagent_lot,"
            + "operator,remark,session,temperature_c,sequence\n",
        files.get("readings/results.csv"));
    assertEquals(
        "calibration,method,instrument,calibrated_at,calibrator_1_assigned,calibrator_1_response,"
            + "calibrator_2_assigned,calibrator_2_response,blank_response,reagent_lot,operator,"
            + "remark\n",
        files.get("calibrations.csv"));
    assertEquals(
        "reagent_lot,method,received_on,opened_on,expires_on,storage,remark\n",
        files.get("reagents.csv"));
    assertEquals(
        "recorded_at,signal,cause,action,exclude_result,use_row,decided_by,remark\n",
        files.get("actions.csv"));
    assertEquals(
        "sample,method,laboratory,value,reported_on,expanded_uncertainty,coverage_factor,"
            + "assessment_deviation,remark\n",
        files.get("outside.csv"));
  }

  @Test
  void the_example_rows_can_be_read_as_they_stand() {
    NewBench bench = of("total-glycerin", "free-glycerin");
    List<String> examples =
        settingsOf(bench)
            .lines()
            .filter(line -> line.startsWith("#   ") && line.contains(","))
            .filter(line -> line.contains("method,") || line.contains("total-glycerin,"))
            .map(line -> line.substring(4))
            .toList();
    assertEquals(4, examples.size(), examples.toString());
    read(bench);
    put("readings/results.csv", examples.get(0) + "\n" + examples.get(1) + "\n");
    put("calibrations.csv", examples.get(2) + "\n" + examples.get(3) + "\n");
    Intake intake = BenchFolder.read(folder);
    assertNoRemark(intake);
    assertEquals(2, intake.accounting().takenIn());
    assertEquals("QC-TG-1", intake.bench().results().get(0).sample());
    assertEquals("[0.21, 0.22]", intake.bench().results().get(0).readings().toString());
  }

  /** Takes the # away from every setting of some lines, but not from what is to be filled in. */
  private static String uncommented(String settings) {
    return settings
            .lines()
            .filter(line -> !line.contains("FILL IN"))
            .map(line -> line.matches("#[a-z\\[].*") ? line.substring(1) : line)
            .collect(Collectors.joining("\n"))
        + "\n";
  }

  @Test
  void what_is_commented_out_is_right_when_it_is_taken_in() {
    NewBench bench = of("free-fatty-acid", "total-glycerin", "free-glycerin");
    String all = settingsOf(bench);
    int sheets = all.indexOf("# ---- Sheets");
    assertTrue(sheets > 0);
    Settings plain = read(bench).bench().settings();
    put("bench.toml", uncommented(all.substring(0, sheets)));
    Intake intake = BenchFolder.read(folder);
    assertNoRemark(intake);
    Settings settings = intake.bench().settings();
    assertEquals(plain.methods(), settings.methods(), "they are the values of the cards");
    assertEquals(Optional.of("total-glycerin"), settings.methods().get(2).partOf());
    assertEquals(new Unit("% mass as oleic"), settings.methods().get(0).unit());
    assertEquals(ChartSettings.DEFAULTS, settings.chart());
    assertEquals(
        List.of(
            new Person(
                "AB",
                "A. Body",
                List.of("test", "review", "release"),
                Optional.of(LocalDate.of(2026, 1, 1)))),
        settings.people());
  }

  @Test
  void the_example_of_a_sheet_is_valid_toml() throws IOException {
    String all = settingsOf(of("acid-number"));
    var tree = SettingsFile.TOML.readTree(uncommented(all)).path("sheet").path(0);
    assertEquals("readings/stick-*.csv", tree.path("match").asText());
    assertEquals("acid-number", tree.at("/values/method/TGLY").asText());
  }

  @Test
  void what_is_to_be_filled_in_is_never_taken_for_data() {
    NewBench bench = of("total-glycerin");
    read(bench);
    List<String> lines = settingsOf(bench).lines().toList();
    List<Integer> blanks = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith("#") && lines.get(i).matches("#[a-z].*FILL IN.*")) {
        blanks.add(i);
      }
    }
    assertEquals(6, blanks.size());
    for (int blank : blanks) {
      List<String> changed = new ArrayList<>(lines);
      changed.set(blank, lines.get(blank).substring(1));
      put("bench.toml", String.join("\n", changed) + "\n");
      IntakeException refused = assertThrows(IntakeException.class, () -> BenchFolder.read(folder));
      assertTrue(
          String.valueOf(refused.getMessage())
              .startsWith("bench.toml, line " + (blank + 1) + ": not valid TOML"),
          refused.getMessage());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"Bench \"two\"", "back\\slash", "@METHODS@ and @ZONE@", "Prüfstand № 1"})
  void any_name_of_one_line_is_kept(String name) {
    Intake intake =
        read(new NewBench(name, Optional.of(DUBLIN), DUBLIN, List.of("total-glycerin")));
    assertNoRemark(intake);
    assertEquals(name, intake.bench().settings().name());
  }

  private static String zoneLine(Optional<ZoneId> chosen, String machine) {
    return settingsOf(new NewBench("B", chosen, ZoneId.of(machine), List.of("total-glycerin")))
        .lines()
        .filter(line -> line.startsWith("timezone"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void a_zone_that_nobody_chose_is_to_be_checked() {
    assertEquals(
        "timezone = \"Europe/Dublin\"    # all times on the sheets are local times of this zone",
        zoneLine(Optional.of(DUBLIN), "UTC"));
    assertEquals(
        "timezone = \"America/Chicago\"    # CHECK: this computer's zone; all times on the sheets"
            + " are local times of it",
        zoneLine(Optional.empty(), "America/Chicago"));
    for (String universal : List.of("Etc/UTC", "UTC", "Z", "GMT")) {
      assertEquals(
          "timezone = \""
              + universal
              + "\"    # CHECK: this computer keeps UTC; write the bench's own zone, such as"
              + " Europe/Dublin",
          zoneLine(Optional.empty(), universal));
    }
  }

  @Test
  void a_bench_without_methods_or_name_is_none() {
    assertThrows(IllegalArgumentException.class, () -> of());
    assertThrows(IllegalArgumentException.class, () -> of("zinc"));
    for (String name : List.of(" ", "two\nlines")) {
      assertThrows(
          IllegalArgumentException.class,
          () -> new NewBench(name, Optional.empty(), DUBLIN, NewBench.USUAL_CARDS));
    }
  }
}
