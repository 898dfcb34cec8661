package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Result;
import org.quietline.bench.Unit;

/** Units with a basis, in the settings and in rows; near spellings are asked about, not taken. */
class UnitWordsTest {
  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  private TempBench method(String unitLines) {
    return bench.put(
        "bench.toml",
        """
        name = "Invented bench"
        timezone = "Europe/Dublin"

        [[method]]
        key = "ffa"
        %s
        decimals = 2
        replicates = 1

        [[instrument]]
        key = "PM-1"
        """
            .formatted(unitLines));
  }

  private TempBench row(String reading, String unit) {
    return bench.rows("2026-10-14T09:12,ffa,PM-1,product,T-1," + reading + ",,," + unit + ",,,,");
  }

  private String reasonFor(String unit) {
    return row("1.20", unit).aside().get(0).reason();
  }

  @ParameterizedTest
  @CsvSource({
    "%, % mass",
    "wt%, % mass",
    "wt. %, % mass",
    "% (w/w), % mass",
    "% m/m, % mass",
    "g/100g, % mass",
    "g / 100 g, % mass",
    "%mass, % mass",
    "% Mass, % mass",
    "mgKOH/g, mg KOH/g",
    "mg KOH / g, mg KOH/g",
    "MG/KG, mg/kg",
    "\u00B5g/g, mg/kg",
    "ppm (m/m), ppm",
    "\u03BCl, \u00B5L",
    "ml, mL",
    "% as oleic, % mass as oleic",
    "wt% as Oleic acid, % mass as oleic",
    "mg/kg as lauric acid, mg/kg as lauric"
  })
  void a_near_spelling_is_known_for_what_it_was_meant(String written, String meant) {
    assertEquals(Optional.of(new Unit(meant)), UnitWords.meant(new Unit(written)));
    assertEquals(
        Optional.empty(), new Unit(written).factorTo(new Unit(meant)), "nothing is guessed");
  }

  @ParameterizedTest
  @ValueSource(strings = {"% mass", "mg KOH/g", "ppm (v/v)", "% vol", "ohm\u00B7cm", "% as olive"})
  void other_spellings_are_left_alone(String written) {
    assertEquals(Optional.empty(), UnitWords.meant(new Unit(written)));
  }

  @Test
  void a_basis_is_written_into_the_unit_or_beside_it() {
    for (String lines :
        List.of(
            "unit = \"% mass as oleic\"",
            "unit = \"% mass\"\nbasis = \"oleic\"",
            "unit = \"% mass as oleic\"\nbasis = \"oleic\"")) {
      Intake intake = method(lines).read();
      assertEquals(List.of(), intake.accounting().settingsAside(), lines);
      assertEquals(
          new Unit("% mass as oleic"), intake.bench().settings().methods().get(0).unit(), lines);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "% mass|olive|basis is \"olive\"; it must be one of oleic, palmitic, lauric, stearic,"
            + " linoleic.",
        "% mass as lauric|oleic|The unit is % mass as lauric, but basis is oleic; keep the one that"
            + " holds.",
        "mg KOH/g|oleic|A basis goes with a mass fraction, and the unit is mg KOH/g; take the basis"
            + " out, or write the unit as % mass, g/kg, mg/g, mg/kg or ppm.",
      })
  void a_basis_that_cannot_be_used(String unit, String basis, String reason) {
    String lines = "unit = \"" + unit + "\"\nbasis = \"" + basis + "\"";
    bench.put("bench.toml", TempBench.SETTINGS.replace("unit = \"mg KOH/g\"", lines));
    int line =
        TempBench.SETTINGS.substring(0, TempBench.SETTINGS.indexOf("mg KOH/g")).split("\n").length
            + 1;
    assertEquals(
        List.of(
            new SetAside(
                "bench.toml", line, "basis", basis, reason + " The method was set aside.", 1)),
        bench.settingsAside());
  }

  @Test
  void a_row_without_basis_has_the_method_s_and_keeps_what_was_written() {
    method("unit = \"% mass as oleic\"");
    Result result = row("1.20", "% mass").read().bench().results().get(0);
    assertEquals("[1.20]", result.readings().toString());
    assertEquals(new Unit("% mass"), result.writtenUnit());
  }

  @Test
  void an_acid_number_becomes_an_acidity_with_the_method_s_basis() {
    method("unit = \"% mass as oleic\"");
    Result result = row("0.50", "mg KOH/g").read().bench().results().get(0);
    BigDecimal percent = new BigDecimal(result.readings().get(0).toString());
    assertEquals(0.2517, percent.doubleValue(), 5e-5);
    assertEquals("[0.50]", result.writtenReadings().toString());
  }

  @Test
  void a_method_without_basis_asks_for_one() {
    method("unit = \"% mass\"");
    String end =
        "; write % mass or g/kg or mg/g or mg/kg or ppm, or leave the field empty where it is %"
            + " mass. The row was set aside.";
    assertEquals(
        "\"% mass as oleic\" does not convert to the unit of ffa (the method names no basis; write"
            + " basis = \"oleic\" into it in bench.toml if it holds)"
            + end,
        reasonFor("% mass as oleic"));
    assertEquals(
        "\"mg KOH/g\" does not convert to the unit of ffa (an acid number converts only to free"
            + " fatty acid, and only where the method in bench.toml names its basis)"
            + end,
        reasonFor("mg KOH/g"));
    assertEquals(
        "\"ppm (v/v)\" does not convert to the unit of ffa (ppm is by mass here, and parts by volume"
            + " do not convert)"
            + end,
        reasonFor("ppm (v/v)"));
    assertEquals(
        "\"ohm\u00B7cm\" does not convert to the unit of ffa" + end, reasonFor("ohm\u00B7cm"));
  }

  @Test
  void a_method_whose_own_unit_is_nearly_a_known_one_is_asked_about() {
    method("unit = \"wt%\"");
    assertEquals(
        "\"% mass\" does not convert to the unit of ffa (did you mean % mass in bench.toml?); write"
            + " wt%, or leave the field empty where it is wt%. The row was set aside.",
        reasonFor("% mass"));
    assertEquals("[1.20]", row("1.20", "").read().bench().results().get(0).readings().toString());
  }
}
