package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.DriftForm;
import org.quietline.bench.OutlookSettings;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.ReleaseSettings.Costs;
import org.quietline.bench.RepeatPolicy;
import org.quietline.bench.Rule;
import org.quietline.bench.Settings;

/** Every problem of bench.toml is told with its line, its key, and what would mend it. */
class SettingsTest {
  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  private static SetAside aside(long line, String field, String text, String reason) {
    return new SetAside("bench.toml", line, field, text, reason, 1);
  }

  private List<SetAside> withMethodLine(String line) {
    return bench
        .put(
            "bench.toml",
            TempBench.SETTINGS.replace("replicates = 2\n", "replicates = 2\n" + line + "\n"))
        .settingsAside();
  }

  /**
   * Lines are those of the usual settings: the method's entry begins in 4, the added line is 10.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "calibration-valid-days = \"x\"|calibration-valid-days|x|"
            + "calibration-valid-days is \"x\"; it must be a whole number, without quotes.",
        "allowable-bias = \"0.012\"|allowable-bias|0.012|"
            + "allowable-bias is \"0.012\"; it must be a number such as 0.012, without quotes.",
        "allowable-bias = nan|allowable-bias|NaN|"
            + "allowable-bias is NaN; it must be a number such as 0.012, without quotes.",
        "allowable-bias = 0.0|allowable-bias|0.0|"
            + "allowable-bias is 0.0, it must be more than 0; mend it.",
        "allowable-bias-percent = -5|allowable-bias-percent|-5|"
            + "allowable-bias-percent is -5, it must be more than 0; mend it.",
        "repeat-policy = \"median\"|repeat-policy|median|"
            + "repeat-policy is \"median\"; write \"one-more\" where the test is expensive and a"
            + " pair that disagrees gets a third reading, \"two-more\" where it is cheap and the"
            + " pair gets two.",
        "product-upper-limit = 1e99|product-upper-limit|1E+99|"
            + "product-upper-limit is 1E+99; it must be a number of at most 40 digits.",
        "limit-source = 5|limit-source|5|limit-source is 5; it must be text in quotes.",
        "limit-source = ' '|limit-source|``|limit-source is empty; write it or take the line out.",
        "published-repeatability = 0|published-repeatability|0|"
            + "published-repeatability is 0, it must be more than 0; mend it.",
        "shelf-life-days = 60|shelf-life-days|60|"
            + "shelf-life-days is 60; it must be written like { refrigerated = 60, ambient = 18 }.",
        "shelf-life-days = { ambient = 0 }|shelf-life-days|{\"ambient\":0}|"
            + "shelf-life-days, ambient, is 0, it must be at least 1; mend it.",
        "shelf-life-days = { ambient = 1.5 }|shelf-life-days|{\"ambient\":1.5}|"
            + "ambient is 1.5; it must be a whole number, without quotes.",
      })
  void aWrongValueSetsTheMethodAside(String line, String field, String text, String reason) {
    String moved =
        line.startsWith("calibration")
            ? TempBench.SETTINGS.replace("calibration-valid-days = 30\n", "")
            : TempBench.SETTINGS;
    List<SetAside> aside =
        bench
            .put("bench.toml", moved.replace("replicates = 2\n", "replicates = 2\n" + line + "\n"))
            .settingsAside();
    assertEquals(aside(10, field, text, reason + " The method was set aside."), aside.get(0));
    assertEquals(
        aside(
            26,
            "method",
            "total-glycerin",
            "\"total-glycerin\" cannot be used: its entry in bench.toml, line 4, was set aside: "
                + reason
                + " The material was set aside."),
        moved(aside.get(1), line.startsWith("calibration") ? 1 : 0));
    assertEquals(2, aside.size());
  }

  private static SetAside moved(SetAside a, long by) {
    return new SetAside(a.file(), a.line() + by, a.field(), a.text(), a.reason(), a.rows());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "decimals = 3|decimals = \"three\"|8|decimals|three|"
            + "decimals is \"three\"; it must be a whole number, without quotes.",
        "decimals = 3|decimals = 3.0|8|decimals|3.0|"
            + "decimals is 3.0; it must be a whole number, without quotes.",
        "decimals = 3|decimals = 10|8|decimals|10|decimals is 10, it must be at most 9; mend it.",
        "decimals = 3|#|4|decimals|``|The method has no decimals; write a line decimals = ….",
        "unit = \"% mass\"|#|4|unit|``|The method has no unit; write a line unit = ….",
        "unit = \"% mass\"|unti = \"% mass\"|4|unit|``|The method has no unit (is unti meant?);"
            + " write a line unit = ….",
        "key = \"total-glycerin\"|#|4|key|``|The method has no key; write a line key = ….",
        "key = \"total-glycerin\"|key = \"a/b\"|5|key|a/b|"
            + "key \"a/b\" holds a /, which a key may not; mend it.",
        "replicates = 2|replicates = 0|9|replicates|0|"
            + "replicates is 0, it must be at least 1; mend it.",
        "replicates = 2|replicates = 101|9|replicates|101|"
            + "replicates is 101, it must be at most 100; mend it.",
        "replicate-kind = \"re-read\"|replicate-kind = \"same\"|10|replicate-kind|same|"
            + "replicate-kind is \"same\"; write \"re-read\" where the same vial is measured again,"
            + " \"re-prepared\" where a fresh portion is taken through the whole method.",
        "replicate-kind = \"re-read\"|#|4|replicate-kind|``|"
            + "The method has 2 replicates but no replicate-kind; write \"re-read\" where the same"
            + " vial is measured again, \"re-prepared\" where a fresh portion is taken through the"
            + " whole method.",
        "key = \"total-glycerin\"|key = \"acid-number\"|14|key|acid-number|"
            + "There is a method \"acid-number\" already; each is named once.",
      })
  void aWrongNeededValueSetsTheMethodAside(
      String from, String to, long line, String field, String text, String reason) {
    String settings = TempBench.SETTINGS.replace(from + "\n", to + "\n");
    List<SetAside> aside = bench.put("bench.toml", settings).settingsAside();
    assertEquals(aside(line, field, text, reason + " The method was set aside."), aside.get(0));
  }

  @Test
  void replicatesAreTwoUnlessSaid() {
    bench.put("bench.toml", TempBench.SETTINGS.replace("replicates = 2\n", ""));
    assertEquals(2, bench.read().bench().settings().methods().get(0).replicates());
    assertEquals(List.of(), bench.settingsAside());
  }

  @Test
  void aPairThatDisagreesGetsOneMoreReadingUnlessSaid() {
    bench.put("bench.toml", TempBench.SETTINGS);
    assertEquals(
        RepeatPolicy.ONE_MORE, bench.read().bench().settings().methods().get(0).repeatPolicy());
    assertEquals(List.of(), withMethodLine("repeat-policy = \"two-more\""));
    assertEquals(
        RepeatPolicy.TWO_MORE, bench.read().bench().settings().methods().get(0).repeatPolicy());
  }

  @Test
  void bothAllowancesAtOnceSetTheMethodAside() {
    List<SetAside> aside = withMethodLine("allowable-bias = 0.01\nallowable-bias-percent = 5");
    assertEquals(
        aside(
            11,
            "allowable-bias-percent",
            "5",
            "Both allowable-bias and allowable-bias-percent are given; keep the one that holds. The"
                + " method was set aside."),
        aside.get(0));
  }

  @Test
  void limitsInTheWrongOrderSetTheMethodAside() {
    assertEquals(
        aside(
            10,
            "product-lower-limit",
            "0.30",
            "product-lower-limit 0.30 is not below product-upper-limit 0.24; mend it. The method was"
                + " set aside."),
        withMethodLine("product-lower-limit = 0.30\nproduct-upper-limit = 0.24").get(0));
  }

  @Test
  void aMistypedKeyIsReportedAndTheRestOfTheEntryCounts() {
    List<SetAside> aside = withMethodLine("product-uper-limit = 0.240\nflavour = 1");
    assertEquals(
        aside(
            10,
            "product-uper-limit",
            "0.240",
            "\"product-uper-limit\" is not a setting of a method (did you mean"
                + " product-upper-limit?). It was not used; the rest of the method was."),
        aside.get(0));
    assertTrue(
        aside
            .get(1)
            .reason()
            .startsWith("\"flavour\" is not a setting of a method (known: card, key, "));
    assertEquals(2, aside.size());
    assertEquals(2, bench.read().bench().settings().methods().size());
  }

  @Test
  void aMistypedKeyInAShelfLifeIsReported() {
    assertEquals(
        List.of(
            aside(
                10,
                "refridgerated",
                "60",
                "\"refridgerated\" is not a setting of a shelf life (did you mean refrigerated?). It"
                    + " was not used; the rest of the shelf life was.")),
        withMethodLine("shelf-life-days = { refridgerated = 60 }"));
  }

  @Test
  void aSourceWithoutItsNumberIsReported() {
    assertEquals(
        List.of(
            aside(
                10,
                "limit-source",
                "X",
                "limit-source is given, but neither product-upper-limit nor product-lower-limit;"
                    + " write the limit or take the source out. The source was not used; the rest"
                    + " of the method was."),
            aside(
                11,
                "published-repeatability-source",
                "Y",
                "published-repeatability-source is given, but no published-repeatability; write the"
                    + " figure or take the source out. The source was not used; the rest of the"
                    + " method was.")),
        withMethodLine("limit-source = \"X\"\npublished-repeatability-source = \"Y\""));
  }

  /** The added entry begins in line 28. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "[[instrument]];title='x'|instrument|28|key|``|"
            + "The instrument has no key; write a line key = ….",
        "[[instrument]];key='PM-1'|instrument|29|key|PM-1|"
            + "There is an instrument \"PM-1\" already; each is named once.",
        "[[material]];key='Q'|material|28|method|``|"
            + "The material has no method; write a line method = ….",
        "[[material]];key='Q';method='total-glycerine'|material|30|method|total-glycerine|"
            + "\"total-glycerine\" is no method of this bench (did you mean total-glycerin?).",
        "[[material]];key='Q';method='zinc'|material|30|method|zinc|"
            + "\"zinc\" is no method of this bench (known: total-glycerin, acid-number).",
        "[[material]];key='Q';method='acid-number';standard-uncertainty=0.1|material|31|"
            + "standard-uncertainty|0.1|"
            + "standard-uncertainty without an assigned-value; mend it.",
        "[[material]];key='QC-TG-A';method='total-glycerin'|material|30|method|total-glycerin|"
            + "There is a material \"total-glycerin/QC-TG-A\" already; each is named once.",
        "[[person]];key='RO';may=['tests']|person|30|may|tests|"
            + "\"tests\" is nothing a person may do (did you mean test?).",
        "[[person]];key='RO';may='test'|person|30|may|test|"
            + "may is \"test\"; it must be a list of texts, such as [\"one\", \"two\"].",
        "[[person]];key='RO';may=[1]|person|30|may|[1]|"
            + "may is [1]; it must be a list of texts, such as [\"one\", \"two\"].",
        "[[person]];key='RO';from=2026-02-30|person|30|from|2026-02-30|"
            + "from is \"2026-02-30\"; it must be a day that exists, written like 2026-01-05.",
        "[[person]];key='RO';from=2026|person|30|from|2026|"
            + "from is 2026; it must be a day that exists, written like 2026-01-05.",
        "[[baseline]];method='total-glycerin'|baseline|28|instrument|``|"
            + "The baseline has no instrument; write a line instrument = ….",
        "[[baseline]];method='acid-number';instrument='PM-1';material='QC-TG-A';from=2026-01-01;"
            + "to=2026-02-01|baseline|31|material|QC-TG-A|"
            + "\"QC-TG-A\" is no control material of acid-number.",
        "[[baseline]];method='total-glycerin';instrument='PM-2';material='QC-TG-A';"
            + "from=2026-01-01;to=2026-02-01|baseline|30|instrument|PM-2|"
            + "\"PM-2\" is no instrument of this bench (did you mean PM-1?).",
        "[[baseline]];method='total-glycerin';instrument='PM-1';material='QC-TG-A';"
            + "from=2026-03-01;to=2026-02-01|baseline|33|to|2026-02-01|"
            + "to 2026-02-01 is before from 2026-03-01; mend it.",
        "[[baseline]];method='total-glycerin';instrument='PM-1';material='QC-TG-A';"
            + "from=2026-03-01|baseline|28|to|``|The baseline has no to; write a line to = ….",
      })
  void otherEntriesThatCannotBeUsedAreSetAside(
      String entry, String kind, long line, String field, String text, String reason) {
    bench.put("bench.toml", TempBench.SETTINGS + "\n" + entry.replace(';', '\n') + "\n");
    assertEquals(
        List.of(aside(line, field, text, reason + " The " + kind + " was set aside.")),
        bench.settingsAside());
  }

  /** The table begins in line 28, its value stands in line 29. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "baseline-results = 4|baseline-results|4|baseline-results is 4; it must be at least 5. The"
            + " default, 20, was used.",
        "baseline-results = 'many'|baseline-results|many|baseline-results is \"many\"; it must be a"
            + " whole number, without quotes. The default, 20, was used.",
        "limits-from = 'range'|limits-from|range|limits-from is \"range\"; it must be one of"
            + " moving-range, sample-deviation, prediction, guaranteed, between-calibrations. The"
            + " default, moving-range, was used.",
        "restart-at = ['calibration', 'lot']|restart-at|[\"calibration\",\"lot\"]|restart-at is"
            + " [\"calibration\",\"lot\"]; \"lot\" is not one of calibration, reagent-lot,"
            + " closed-signal. The default, calibration, closed-signal, was used.",
        "restart-at = 'calibration'|restart-at|calibration|restart-at is \"calibration\"; it must"
            + " be a list of texts, such as [\"one\", \"two\"]. The default, calibration,"
            + " closed-signal, was used.",
        "weighting = 1.01|weighting|1.01|weighting is 1.01; it must be from 0.01 to 1. The"
            + " default, 0.4, was used.",
        "weighting = 0|weighting|0|weighting is 0; it must be from 0.01 to 1. The default,"
            + " 0.4, was used.",
        "stop-rules = 'none'|stop-rules|none|stop-rules is \"none\"; it must be a list of texts,"
            + " such as [\"one\", \"two\"]. The default, beyond-action-limit,"
            + " weighted-mean-beyond-limit, readings-disagree, was used.",
        "notice-rules = 1|notice-rules|1|notice-rules is 1; it must be a list of texts, such as"
            + " [\"one\", \"two\"]. The default, no rule, was used.",
        "wieghting = 0.2|wieghting|0.2|\"wieghting\" is not a setting of a chart (did you mean"
            + " weighting?). It was not used; the rest of the chart was.",
      })
  void aWrongChartValueLeavesItsDefault(String line, String field, String text, String reason) {
    bench.put("bench.toml", TempBench.SETTINGS + "\n[chart]\n" + line + "\n");
    assertEquals(List.of(aside(29, field, text, reason)), bench.settingsAside());
    assertEquals(ChartSettings.DEFAULTS, bench.read().bench().settings().chart());
  }

  @Test
  void limitsFromCalibrationsAndRestartsAreRead() {
    bench.put(
        "bench.toml",
        TempBench.SETTINGS
            + "[chart]\nlimits-from = \"between-calibrations\"\n"
            + "restart-at = [\"reagent-lot\", \"calibration\", \"reagent-lot\"]\n");
    ChartSettings chart = bench.read().bench().settings().chart();
    assertEquals(ChartSettings.LimitsFrom.BETWEEN_CALIBRATIONS, chart.limitsFrom());
    assertEquals(
        Set.of(ChartSettings.RestartAt.CALIBRATION, ChartSettings.RestartAt.REAGENT_LOT),
        chart.restartAt());
    assertEquals(List.of(), bench.settingsAside());
    bench.put("bench.toml", TempBench.SETTINGS + "[chart]\nrestart-at = []\n");
    assertEquals(Set.of(), bench.read().bench().settings().chart().restartAt());
    assertEquals(List.of(), bench.settingsAside());
    bench.put("bench.toml", TempBench.SETTINGS + "[chart]\nweighting = 0.4\n");
    assertEquals(
        Set.of(ChartSettings.RestartAt.CALIBRATION, ChartSettings.RestartAt.CLOSED_SIGNAL),
        bench.read().bench().settings().chart().restartAt());
  }

  @Test
  void anUnknownRuleIsReportedAndTheOthersHold() {
    bench.put(
        "bench.toml",
        TempBench.SETTINGS
            + "[chart]\nstop-rules = [\n  \"beyond-action-limit\", # one\n"
            + "  \"beyond-acton-limits\",\n  \"beyond-action-limit\"]\nnotice-rules = [\"zz\"]\n");
    Settings settings = bench.read().bench().settings();
    assertEquals(List.of(Rule.BEYOND_ACTION_LIMIT), settings.chart().stopRules());
    List<SetAside> aside = bench.settingsAside();
    String known =
        "the rules are beyond-action-limit, weighted-mean-beyond-limit, readings-disagree,"
            + " two-of-three-beyond-warning, four-of-five-beyond-one-deviation, eight-on-one-side,"
            + " six-rising-or-falling, cumulative-sum-beyond-limit, moving-range-beyond-limit,"
            + " calibration-step, blank-drifting, methods-disagree. It was left out; the other"
            + " rules of the list hold.";
    assertEquals(28, aside.get(0).line());
    assertEquals(
        "\"beyond-acton-limits\" is no rule (did you mean beyond-action-limit?); " + known,
        aside.get(0).reason());
    assertEquals(32, aside.get(1).line());
    assertEquals("\"zz\" is no rule; " + known, aside.get(1).reason());
  }

  @Test
  void aListMayBeEmpty() {
    bench.put("bench.toml", TempBench.SETTINGS + "[chart]\nstop-rules = []\n");
    assertEquals(List.of(), bench.read().bench().settings().chart().stopRules());
  }

  @Test
  void tablesOfTheWrongShapeAreReported() {
    bench.put(
        "bench.toml", "chart = 3\nperson = [1]\nbaseline = 2\nnmae = 1\n" + TempBench.SETTINGS);
    assertEquals(
        List.of(
            aside(2, "person", "1", "person must be written as [[person]]. It was set aside."),
            aside(
                3, "baseline", "2", "baseline must be written as [[baseline]]. It was set aside."),
            aside(
                1,
                "chart",
                "3",
                "chart must be written as one table [chart]. The defaults were used."),
            aside(
                4,
                "nmae",
                "1",
                "\"nmae\" is not a setting of a bench (did you mean name?). It was not used; the"
                    + " rest of the bench was.")),
        bench.settingsAside());
  }

  @Test
  void aSheetWithoutAUsableMatchIsSetAsideAndTheOthersAreRead() {
    bench
        .put(
            "bench.toml",
            TempBench.SETTINGS
                + """

                [[sheet]]
                match = "readings/stick-*.csv"
                delimiter = ";"
                columns = { method = "Test" }

                [[sheet]]
                delimiter = ";"

                [[sheet]]
                match = "readings/[x"
                """)
        .put("readings/stick-1.csv", "Date;Time;Test\n1;2;3\n4;5;6\n\n")
        .put("readings/a.csv", TempBench.HEADER + "\n");
    assertEquals(
        List.of(
            aside(
                33,
                "match",
                "",
                "The sheet has no match; write a line match = …. The sheet was set aside."),
            aside(
                37,
                "match",
                "readings/[x",
                "match is \"readings/[x\"; it must be a pattern such as readings/stick-*.csv. The"
                    + " sheet was set aside.")),
        bench.settingsAside());
    assertEquals(
        List.of(
            new SetAside(
                "readings/stick-1.csv",
                1,
                "header",
                "date,time,test",
                "The sheet says nothing of taken_at, instrument, role, sample, reading_1; name a"
                    + " column for it, or a default, in the [[sheet]] in bench.toml, line 28. The"
                    + " header is \"date,time,test\". All 2 rows were set aside.",
                2)),
        bench.aside());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "name = \"Invented bench\"|#|bench.toml, line 1: The bench has no name; write a line name ="
            + " …. Mend it and run again.",
        "name = \"Invented bench\"|name = 5|bench.toml, line 1: name is 5; it must be text in"
            + " quotes. Mend it and run again.",
        "timezone = \"Europe/Dublin\"|#|bench.toml, line 1: The bench has no timezone; write a line"
            + " timezone = …. Mend it and run again.",
        "timezone = \"Europe/Dublin\"|timezone = \"Europe/Dubln\"|bench.toml, line 2:"
            + " \"Europe/Dubln\" is no time zone (did you mean Europe/Dublin?). Mend it and run"
            + " again.",
        "timezone = \"Europe/Dublin\"|timezone = \"the kitchen clock\"|bench.toml, line 2: \"the"
            + " kitchen clock\" is no time zone (one is Europe/Dublin). Mend it and run again.",
        "decimals = 3|decimals =|bench.toml, line 8: not valid TOML: Newline not permitted here."
            + " Mend that line and run again.",
        "decimals = 3|decimals = 3;decimals = 4|bench.toml, line 9: not valid TOML: Duplicate key."
            + " Mend that line and run again.",
        "decimals = 3|decimals = 3 4|bench.toml, line 8: not valid TOML: More data after value has"
            + " already ended. Invalid value preceding this position? Mend that line and run"
            + " again.",
        "assigned-value = 0.180|assigned-value = [0.180,;;|bench.toml, line 26: not valid TOML:"
            + " Premature end of file. Mend that line and run again.",
      })
  void settingsThatCannotBeUsedAtAllEndTheReading(String from, String to, String sentence) {
    bench.put("bench.toml", TempBench.SETTINGS.replace(from + "\n", to.replace(';', '\n') + "\n"));
    IntakeException e = assertThrows(IntakeException.class, bench::read);
    assertEquals(sentence, e.getMessage());
    assertEquals(folder.resolve("bench.toml"), e.path());
  }

  @Test
  void aBenchWithoutAUsableMethodEndsTheReading() {
    bench.put("bench.toml", "name = \"x\"\ntimezone = \"UTC\"\n");
    assertEquals(
        "bench.toml holds no [[method]] that can be used. Write at least one and run again.",
        assertThrows(IntakeException.class, bench::read).getMessage());
    bench.put("bench.toml", "name = \"x\"\ntimezone = \"UTC\"\n[[method]]\nkey = \"m\"\n");
    assertEquals(
        "bench.toml holds no [[method]] that can be used (line 3: The method has no unit; write a"
            + " line unit = …. The method was set aside.). Write at least one and run again.",
        assertThrows(IntakeException.class, bench::read).getMessage());
  }

  @Test
  void settingsThatAreNotUtf8EndTheReading() {
    byte[] latin = "name = \"x\"\ntitle = \"5 µl\"\n".getBytes(StandardCharsets.ISO_8859_1);
    bench.put("bench.toml", latin);
    assertEquals(
        "bench.toml, line 2: not UTF-8. Save the file as UTF-8 and run again.",
        assertThrows(IntakeException.class, bench::read).getMessage());
  }

  @Test
  void aByteOrderMarkAndReturnsDoNotDisturb() {
    bench.put("bench.toml", "\uFEFF" + TempBench.SETTINGS.replace("\n", "\r\n"));
    Settings settings = bench.read().bench().settings();
    assertEquals("Invented bench", settings.name());
    assertEquals(2, settings.methods().size());
  }

  @Test
  void aDayMayStandInQuotes() {
    bench.put(
        "bench.toml", TempBench.SETTINGS + "[[person]]\nkey = \"A\"\nfrom = \"2026-01-05\"\n");
    assertEquals(
        LocalDate.of(2026, 1, 5),
        bench.read().bench().settings().people().get(0).from().orElseThrow());
  }

  @Test
  void aPartNamesAMethodItsResultsCanBeHeldAgainst() {
    String whole = "[[instrument]]";
    bench.put(
        "bench.toml",
        TempBench.SETTINGS.replace(
            whole,
            """
            [[method]]
            key = "free-glycerin"
            unit = "mg/kg"
            decimals = 0
            replicates = 1
            part-of = "total-glycerin"

            [[method]]
            key = "odd"
            unit = "mg/kg"
            decimals = 0
            replicates = 1
            part-of = "toal-glycerin"

            [[method]]
            key = "other"
            unit = "mg/kg"
            decimals = 0
            replicates = 1
            part-of = "acid-number"

            [[method]]
            key = "own"
            unit = "mg/kg"
            decimals = 0
            replicates = 1
            part-of = "own"

            [[instrument]]"""));
    assertEquals(
        List.of(
            "bench.toml, line 45, part-of: part-of is \"own\", the method itself; mend it. The"
                + " method was set aside.",
            "bench.toml, line 31, part-of: part-of names \"toal-glycerin\", which is no method of"
                + " this bench (did you mean total-glycerin?). It was not used; the rest of the"
                + " method was.",
            "bench.toml, line 38, part-of: part-of names \"acid-number\", whose unit mg KOH/g the"
                + " unit mg/kg does not convert to. It was not used; the rest of the method was."),
        bench.settingsAside().stream().map(Object::toString).toList());
    assertEquals(
        Optional.of("total-glycerin"), bench.read().bench().settings().methods().get(2).partOf());
  }

  @Test
  void whatIsAskedOfCalibrationsIsSet() {
    String lines = "\n[outlook]\nsafe-chance = 0.02\nreliability = 0.9\n";
    bench.put("bench.toml", TempBench.SETTINGS + lines);
    Intake intake = bench.read();
    assertEquals(List.of(), intake.accounting().settingsAside());
    assertEquals(new OutlookSettings(0.02, 0.9), intake.bench().settings().outlook());
  }

  @Test
  void whatCannotBeAskedOfCalibrationsLeavesTheDefault() {
    bench.put("bench.toml", TempBench.SETTINGS + "\n[outlook]\nsafe-chance = 0.5\n");
    Intake intake = bench.read();
    assertEquals(OutlookSettings.DEFAULTS, intake.bench().settings().outlook());
    String reason = intake.accounting().settingsAside().get(0).reason();
    assertTrue(reason.contains("it must be from 0.001 to 0.25"), reason);
    assertTrue(reason.endsWith("The default, 0.05, was used."), reason);
  }

  @Test
  void theFormOfDriftIsSetForAMethod() {
    String key = "key = \"total-glycerin\"\n";
    bench.put(
        "bench.toml",
        TempBench.SETTINGS.replaceFirst(key, key + "drift-form = \"proportional\"\n"));
    Settings settings = bench.read().bench().settings();
    assertEquals(
        List.of(DriftForm.PROPORTIONAL),
        settings.methods().stream().flatMap(m -> m.driftForm().stream()).toList());
    bench.put("bench.toml", TempBench.SETTINGS.replaceFirst(key, key + "drift-form = \"steep\"\n"));
    String reason = bench.read().accounting().settingsAside().get(0).reason();
    assertTrue(reason.contains("write \"additive\" where"), reason);
  }

  @Test
  void whatARuleOfReleaseAsksAndWhatErrorsCostIsSet() {
    bench.put(
        "bench.toml",
        TempBench.SETTINGS
            + "\n[release]\nconfidence = 0.975\ncost-of-bad-release = 9000\ncost-of-rework = 800\n");
    Intake intake = bench.read();
    assertEquals(
        new ReleaseSettings(
            0.975, Optional.of(new Costs(new BigDecimal("9000"), new BigDecimal("800")))),
        intake.bench().settings().release());
    assertEquals(List.of(), intake.accounting().settingsAside());
  }

  @Test
  void aReleaseSettingThatCannotBeUsedLeavesItsDefault() {
    bench.put(
        "bench.toml", TempBench.SETTINGS + "\n[release]\nconfidence = 95\ncost-of-rework = 800\n");
    Intake intake = bench.read();
    assertEquals(ReleaseSettings.DEFAULTS, intake.bench().settings().release());
    List<String> said =
        intake.accounting().settingsAside().stream()
            .map(a -> a.field() + ": " + a.reason())
            .toList();
    assertEquals(2, said.size(), said.toString());
    assertTrue(said.get(0).contains("0.8 to 0.999"), said.toString());
    assertTrue(said.get(1).contains("a cost alone says nothing"), said.toString());
  }
}
