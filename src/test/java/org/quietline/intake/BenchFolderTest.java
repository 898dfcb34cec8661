package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.FileRead;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Action;
import org.quietline.bench.BaselineChoice;
import org.quietline.bench.Calibration;
import org.quietline.bench.Calibration.Calibrator;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.LimitsFrom;
import org.quietline.bench.Instrument;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.OutsideResult;
import org.quietline.bench.Person;
import org.quietline.bench.Reading;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;
import org.quietline.bench.Settings;
import org.quietline.bench.SignalId;
import org.quietline.bench.Storage;
import org.quietline.bench.Unit;

class BenchFolderTest {
  private static final String EVERY_KEY =
      """
      name = "Tidewick Oil & Fuel, bench 1"        # invented
      timezone = "Europe/Dublin"

      [[method]]
      key = "total-glycerin"
      title = "Total glycerin, enzymatic kit, photometric"
      unit = "% mass"
      decimals = 3                       # how results are reported
      replicates = 2
      replicate-kind = "re-prepared"
      calibration-valid-days = 30
      allowable-bias = 0.012
      product-upper-limit = 0.240
      product-lower-limit = 0.010
      limit-source = "ASTM D6751"
      shelf-life-days = { refrigerated = 60, ambient = 18 }
      published-repeatability = 0.021
      published-repeatability-source = "own copy"

      [[method]]
      key = "ffa"
      unit = "% mass"
      decimals = 1
      replicates = 1
      allowable-bias-percent = 5

      [[instrument]]
      key = "PM-1"
      title = "Photometer 1"

      [[material]]
      key = "QC-TG-A"
      method = "total-glycerin"
      assigned-value = 0.180
      standard-uncertainty = 0.003

      [[material]]
      key = "QC-OLD"
      method = "ffa"

      [[person]]
      key = "RO"
      name = "R. Okafor"
      may = ["test", "review", "release"]
      from = 2025-09-01

      [[baseline]]
      method = "total-glycerin"
      instrument = "PM-1"
      material = "QC-TG-A"
      from = 2026-01-05
      to = 2026-03-01
      approved-by = "R. Okafor"
      reason = "first limits"

      [chart]
      baseline-results = 25
      limits-from = "prediction"
      weighting = 0.3
      stop-rules = ["beyond-action-limit", "weighted-mean-beyond-limit"]
      notice-rules = ["six-rising-or-falling", "calibration-step"]
      """;

  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  @Test
  void everySettingOfTheFileIsRead() {
    Intake intake = bench.put("bench.toml", EVERY_KEY).read();
    Settings settings = intake.bench().settings();
    assertEquals(List.of(), intake.accounting().settingsAside());
    assertEquals("Tidewick Oil & Fuel, bench 1", settings.name());
    assertEquals(ZoneId.of("Europe/Dublin"), settings.timezone());
    assertEquals(
        List.of(
            new Method(
                "total-glycerin",
                "Total glycerin, enzymatic kit, photometric",
                new Unit("% mass"),
                3,
                2,
                ReplicateKind.RE_PREPARED,
                OptionalInt.of(30),
                Optional.of(new Method.Allowance(new BigDecimal("0.012"), false)),
                Optional.of(
                    new Method.ProductLimits(
                        Optional.of(new BigDecimal("0.010")),
                        Optional.of(new BigDecimal("0.240")),
                        Optional.of("ASTM D6751"))),
                new Method.ShelfLife(OptionalInt.of(60), OptionalInt.of(18)),
                Optional.of(
                    new Method.PublishedRepeatability(
                        new BigDecimal("0.021"), Optional.of("own copy")))),
            new Method(
                "ffa",
                "ffa",
                new Unit("% mass"),
                1,
                1,
                ReplicateKind.RE_READ,
                OptionalInt.empty(),
                Optional.of(new Method.Allowance(new BigDecimal("5"), true)),
                Optional.empty(),
                Method.ShelfLife.NOT_SET,
                Optional.empty())),
        settings.methods());
    assertEquals(List.of(new Instrument("PM-1", "Photometer 1")), settings.instruments());
    assertEquals(
        List.of(
            new Material(
                "QC-TG-A",
                "total-glycerin",
                Optional.of(new BigDecimal("0.180")),
                Optional.of(new BigDecimal("0.003"))),
            new Material("QC-OLD", "ffa", Optional.empty(), Optional.empty())),
        settings.materials());
    assertEquals(
        List.of(
            new Person(
                "RO",
                "R. Okafor",
                List.of("test", "review", "release"),
                Optional.of(LocalDate.of(2025, 9, 1)))),
        settings.people());
    assertEquals(
        List.of(
            new BaselineChoice(
                "total-glycerin",
                "PM-1",
                "QC-TG-A",
                LocalDate.of(2026, 1, 5),
                LocalDate.of(2026, 3, 1),
                Optional.of("R. Okafor"),
                Optional.of("first limits"))),
        settings.baselines());
    assertEquals(
        new ChartSettings(
            25,
            LimitsFrom.PREDICTION,
            0.3,
            List.of(Rule.BEYOND_ACTION_LIMIT, Rule.WEIGHTED_MEAN_BEYOND_LIMIT),
            List.of(Rule.SIX_RISING_OR_FALLING, Rule.CALIBRATION_STEP)),
        settings.chart());
  }

  @Test
  void aBenchWithoutChartTableHasTheDefaults() {
    assertEquals(ChartSettings.DEFAULTS, bench.read().bench().settings().chart());
  }

  @Test
  void everyColumnOfAResultIsRead() {
    bench.put(
        "readings/a.csv",
        "Taken_At , METHOD,instrument,role,sample,reading_1,reading_2,reading_3,unit,calibration,"
            + "reagent_lot,operator,remark,session,temperature_c,sequence\r\n"
            + "2026-10-14 09:12:30,total-glycerin,PM-1,Control,QC-TG-A,<18.0,,1790,mg/kg,,L-7,RO,"
            + "\"shaken, twice\",S1,21.50,0042\r\n");
    Intake intake = bench.read();
    assertEquals(List.of(), intake.accounting().aside());
    assertEquals(
        List.of(
            new Result(
                LocalDateTime.of(2026, 10, 14, 9, 12, 30),
                "total-glycerin",
                "PM-1",
                Role.CONTROL,
                "QC-TG-A",
                List.of(
                    new Reading.Below(new BigDecimal("0.00180")),
                    new Reading.Missing(),
                    new Reading.Measured(new BigDecimal("0.1790"))),
                List.of(
                    new Reading.Below(new BigDecimal("18.0")),
                    new Reading.Missing(),
                    new Reading.Measured(new BigDecimal("1790"))),
                new Unit("mg/kg"),
                Optional.empty(),
                Optional.of("L-7"),
                Optional.of("RO"),
                Optional.of("shaken, twice"),
                Optional.of("S1"),
                Optional.of(new BigDecimal("21.50")),
                Optional.of("0042"),
                new Origin("readings/a.csv", 2))),
        intake.bench().results());
  }

  @Test
  void everyColumnOfTheOtherSheetsIsRead() {
    bench
        .put(
            "calibrations.csv",
            "calibration,method,instrument,calibrated_at,blank_response,calibrator_1_assigned,"
                + "calibrator_1_response,calibrator_2_assigned,calibrator_2_response,reagent_lot,"
                + "operator,remark\n"
                + "C-31,total-glycerin,PM-1,2026-10-01T08:00,0.041,0.10,0.210,0.30,,L-7,RO,new lamp\n")
        .put(
            "reagents.csv",
            """
            reagent_lot,method,received_on,opened_on,expires_on,storage,remark
            L-7,total-glycerin,2026-09-01,2026-09-28,2027-03-31,Refrigerated,cold on arrival
            L-8,total-glycerin,,,,,
            """)
        .put(
            "actions.csv",
            """
            recorded_at,signal,cause,action,exclude_result,decided_by,remark
            2026-10-14T15:00,SIGNAL,wrong vial,repeated,Yes,RO,seen by two
            2026-10-15T15:00,SIGNAL,,,,,
            """
                .replace(
                    "SIGNAL", "total-glycerin/PM-1/QC-TG-A/2026-10-14T09:12/beyond-action-limit"))
        .put(
            "outside.csv",
            """
            sample,method,laboratory,reported_on,value,expanded_uncertainty,coverage_factor,remark
            B-1041,total-glycerin,Invented Lab,2026-10-20,0.221,0.010,2,certificate 5
            """);
    Intake intake = bench.read();
    assertEquals(List.of(), intake.accounting().aside());
    assertEquals(6, intake.accounting().rows());
    assertEquals(
        List.of(
            new Calibration(
                "C-31",
                "total-glycerin",
                "PM-1",
                LocalDateTime.of(2026, 10, 1, 8, 0),
                Optional.of(new BigDecimal("0.041")),
                List.of(
                    new Calibrator(new BigDecimal("0.10"), Optional.of(new BigDecimal("0.210"))),
                    new Calibrator(new BigDecimal("0.30"), Optional.empty())),
                Optional.of("L-7"),
                Optional.of("RO"),
                Optional.of("new lamp"),
                new Origin("calibrations.csv", 2))),
        intake.bench().calibrations());
    assertEquals(
        List.of(
            new ReagentLot(
                "L-7",
                "total-glycerin",
                Optional.of(LocalDate.of(2026, 9, 1)),
                Optional.of(LocalDate.of(2026, 9, 28)),
                Optional.of(LocalDate.of(2027, 3, 31)),
                Optional.of(Storage.REFRIGERATED),
                Optional.of("cold on arrival"),
                new Origin("reagents.csv", 2)),
            new ReagentLot(
                "L-8",
                "total-glycerin",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                new Origin("reagents.csv", 3))),
        intake.bench().reagentLots());
    SignalId signal =
        new SignalId(
            "total-glycerin",
            "PM-1",
            "QC-TG-A",
            LocalDateTime.of(2026, 10, 14, 9, 12),
            Rule.BEYOND_ACTION_LIMIT);
    assertEquals(
        List.of(
            new Action(
                LocalDateTime.of(2026, 10, 14, 15, 0),
                signal,
                Optional.of("wrong vial"),
                Optional.of("repeated"),
                true,
                Optional.empty(),
                Optional.of("RO"),
                Optional.of("seen by two"),
                new Origin("actions.csv", 2)),
            new Action(
                LocalDateTime.of(2026, 10, 15, 15, 0),
                signal,
                Optional.empty(),
                Optional.empty(),
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                new Origin("actions.csv", 3))),
        intake.bench().actions());
    assertEquals(
        List.of(
            new OutsideResult(
                "B-1041",
                "total-glycerin",
                "Invented Lab",
                Optional.of(LocalDate.of(2026, 10, 20)),
                new BigDecimal("0.221"),
                Optional.of(new BigDecimal("0.010")),
                Optional.of(new BigDecimal("2")),
                Optional.empty(),
                Optional.of("certificate 5"),
                new Origin("outside.csv", 2))),
        intake.bench().outsideResults());
  }

  /** Hashes from {@code sha256sum} (GNU coreutils 9.1) over the same bytes. */
  @Test
  void fingerprintsAreThoseOfTheBytes() {
    bench.put("bench.toml", FINGERPRINTED_SETTINGS);
    bench.put("readings/b.csv", "taken_at,method,instrument,role,sample,reading_1\n");
    bench.put("readings/a.csv", "\n");
    Intake intake = bench.read();
    assertEquals("5b27f924", intake.settingsFingerprint());
    assertEquals(
        List.of(
            new FileRead(
                "readings/a.csv",
                "01ba4719c80b6fe911b091a7c05124b64eeece964e09c058ef8f9805daca546b",
                0),
            new FileRead(
                "readings/b.csv",
                "5ce507436084e9cc3e6c02fd47953760302707bb1de1a29af3d9e96517244107",
                0)),
        intake.accounting().files());
    assertEquals("f446c1f8", intake.dataFingerprint());
  }

  private static final String FINGERPRINTED_SETTINGS =
      "name=\"x\"\ntimezone=\"UTC\"\n[[method]]\nkey=\"m\"\nunit=\"1\"\ndecimals=0\nreplicates=1\n";

  @Test
  void progressHearsEveryByteAndNeverFalls() {
    StringBuilder rows = new StringBuilder(TempBench.HEADER).append('\n');
    for (int i = 0; i < 2000; i++) {
      rows.append("2026-10-14T09:12,total-glycerin,PM-1,product,B-").append(i);
      rows.append(",0.180,0.181,,,,,,\n");
    }
    bench.put("readings/a.csv", rows.toString()).put("outside.csv", "sample,µ\n");
    long total = (long) rows.length() + "sample,µ\n".length() + 1;
    List<Long> heard = new ArrayList<>();
    Intake intake =
        BenchFolder.read(
            folder,
            (bytesRead, bytesInAll) -> {
              assertEquals(total, bytesInAll);
              heard.add(bytesRead);
            });
    assertEquals(2000, intake.accounting().takenIn());
    assertEquals(heard.stream().sorted().toList(), heard);
    assertEquals(total, heard.get(heard.size() - 1));
    assertTrue(heard.size() > 10);
  }

  @Test
  void filesAreReadInNameOrderAndOthersAreListedAsNotRead() throws IOException {
    String row = "2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180\n";
    String head = "taken_at,method,instrument,role,sample,reading_1\n";
    bench
        .put("readings/b.CSV", head + row.replace("B-1", "B-2"))
        .put("readings/a.csv", head + row)
        .put("readings/notes.txt", "x")
        .put("readings/.hidden", "x")
        .put("readings/empty.csv", "")
        .put("reagent.csv", "x")
        .put("summary.csv", "x")
        .put("letter.txt", "x");
    Files.createDirectories(folder.resolve("readings/folder.csv"));
    Files.createSymbolicLink(folder.resolve("readings/gone.csv"), folder.resolve("nowhere"));
    Accounting accounting = bench.read().accounting();
    assertEquals(
        List.of("readings/a.csv", "readings/b.CSV", "readings/empty.csv"),
        accounting.files().stream().map(FileRead::file).toList());
    assertEquals(2, accounting.takenIn());
    assertEquals(
        List.of(
            new SetAside(
                "reagent.csv",
                1,
                "file",
                "reagent.csv",
                "This file is not one of a bench folder (did you mean reagents.csv?). Nothing in"
                    + " it was read.",
                0),
            new SetAside(
                "summary.csv",
                1,
                "file",
                "summary.csv",
                "This file is not one of a bench folder; results lie in the folder readings."
                    + " Nothing in it was read.",
                0),
            new SetAside(
                "readings/notes.txt",
                1,
                "file",
                "readings/notes.txt",
                "Only files that end in .csv or that a [[sheet]] matches are read here. Nothing in"
                    + " it was read.",
                0),
            new SetAside(
                "readings/empty.csv", 1, "file", "", "The file is empty; nothing was read.", 0),
            new SetAside(
                "readings/folder.csv",
                1,
                "file",
                "readings/folder.csv",
                "It is not a file; nothing was read.",
                0),
            new SetAside(
                "readings/gone.csv",
                1,
                "file",
                "readings/gone.csv",
                "It is not a file; nothing was read.",
                0)),
        accounting.aside());
  }

  /** The memory of a process is a file that opens, and whose first byte cannot be read. */
  @Test
  void aFileThatCannotBeReadIsNamedAndTheOthersAreRead() throws IOException {
    Path unreadable = Path.of("/proc/self/mem");
    assumeTrue(Files.isRegularFile(unreadable), "needs a Linux kernel");
    bench.put(
        "readings/a.csv",
        """
        taken_at,method,instrument,role,sample,reading_1
        2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180
        """);
    Files.createSymbolicLink(folder.resolve("readings/0.csv"), unreadable);
    Intake intake = bench.read();
    assertEquals(1, intake.accounting().takenIn());
    assertEquals(
        List.of(
            new SetAside(
                "readings/0.csv",
                1,
                "file",
                "readings/0.csv",
                "The file could not be opened; see that you may read it. Nothing was read.",
                0)),
        intake.accounting().aside());
  }

  @Test
  void aFileNamedReadingsIsNoFolder() {
    bench.put("readings", "x");
    assertEquals(
        List.of(
            new SetAside(
                "readings",
                1,
                "file",
                "readings",
                "readings is not a folder; nothing in it was read.",
                0)),
        bench.aside());
  }

  @Test
  void sheetNamesCountWithoutRegardToCase() {
    bench
        .put("Reagents.CSV", "reagent_lot,method\nL-1,total-glycerin\n")
        .put("reagents.csv", "reagent_lot,method\nL-2,total-glycerin\n");
    Intake intake = bench.read();
    assertEquals("L-1", intake.bench().reagentLots().get(0).key());
    assertEquals(
        "There is a file of this name already. Nothing in this one was read.",
        intake.accounting().aside().get(0).reason());
  }

  @Test
  void aFreshBenchHasNoResultsAndThatIsFine() {
    Intake intake = bench.read();
    assertEquals(List.of(), intake.bench().results());
    assertEquals(0, intake.accounting().rows());
    assertEquals(List.of(), intake.accounting().aside());
    assertFalse(intake.bench().settings().methods().isEmpty());
  }

  @Test
  void aFolderThatIsMissingOrNoneEndsTheReading() throws IOException {
    Path nowhere = folder.resolve("nowhere");
    IntakeException missing = assertThrows(IntakeException.class, () -> BenchFolder.read(nowhere));
    assertEquals(
        nowhere + " does not exist. Give the folder that holds bench.toml and run again.",
        missing.getMessage());
    assertEquals(nowhere, missing.path());
    Path file = folder.resolve("bench.toml");
    IntakeException noFolder = assertThrows(IntakeException.class, () -> BenchFolder.read(file));
    assertEquals(
        file + " is not a folder. Give the folder that holds bench.toml and run again.",
        noFolder.getMessage());
    Files.delete(file);
    IntakeException noSettings = assertThrows(IntakeException.class, bench::read);
    assertEquals(
        "The folder "
            + folder
            + " holds no bench.toml. Give the folder that holds it, or write one, and run again.",
        noSettings.getMessage());
    assertEquals(file, noSettings.path());
    Files.createDirectory(file);
    IntakeException directory = assertThrows(IntakeException.class, bench::read);
    assertEquals(
        "bench.toml is not a file. Put the settings into a file of that name and run again.",
        directory.getMessage());
  }
}
