package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Findings;
import org.quietline.assess.StillNeeded;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.FileRead;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Method.Allowance;
import org.quietline.bench.Method.ShelfLife;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Unit;

class ScreenLinesTest {
  @Test
  void theWholeScreenOfASmallBench() {
    Findings findings =
        Invented.findings(
            "Tidewick (invented)",
            Invented.accounting(1),
            List.of(Invented.acid(), Invented.nothing()));
    assertEquals(
        """
        Tidewick (invented), October 2026, as of 31 October 2026
        413 rows: 408 taken in, 4 met before, 1 set aside
        readings/october.csv, line 17, reading_1: "O.18" is not a number (a letter O where a zero\
         belongs?). The row was set aside.
        steady  acid-number  No signal under the rules stated, on 5 control results of the period; slow
                             moves show late. Next: Check the control as found, recalibrate PM-1, check it
                             as left. (by 19 November 2026)
        watch   water        There is no control result, so nothing can be said about this method. Next:
                             Measure a control before the next result is relied on. (now)""",
        String.join("\n", ScreenLines.of(findings)));
  }

  @Test
  void aBenchThatHasOnlyBegunIsToldWhatItNeeds() {
    Method titrated =
        method("acid-number", OptionalInt.of(1), Optional.of(new Allowance(BigDecimal.ONE, true)));
    Method plain = method("water", OptionalInt.empty(), Optional.empty());
    List<Material> two =
        List.of(
            new Material("QC-A", "acid-number", Optional.of(BigDecimal.ONE), Optional.empty()),
            new Material("QC-B", "acid-number", Optional.of(BigDecimal.ONE), Optional.empty()));
    Accounting nothing = new Accounting(List.of(), List.of(), List.of(), 0, 0);
    assertEquals(
        """
        Oil shed: no result is in yet, so nothing can be judged.
        0 rows: 0 taken in, 0 met before, 0 set aside
        acid-number  Calibrate, and write a row into calibrations.csv; it then holds for 1 day. Measure QC-A
                     or QC-B, and write each result into readings/ as a row of role control.
        water        Name a control material for it with a [[material]] in bench.toml, and measure it. Not
                     set in bench.toml: allowable-bias, without which drift is not judged.
        A control material has provisional limits from its result number 5 on, which stay provisional with
          so small a baseline, and its first 10 make the baseline.""",
        String.join(
            "\n",
            ScreenLines.of(
                "Oil shed",
                List.of(
                    new StillNeeded(titrated, Optional.empty(), two, 5, OptionalInt.empty(), 10),
                    new StillNeeded(
                        plain, Optional.empty(), List.of(), 5, OptionalInt.empty(), 10)),
                nothing)));
  }

  private static Method method(String key, OptionalInt validDays, Optional<Allowance> allowance) {
    return new Method(
        key,
        key,
        new Unit("mg/kg"),
        1,
        1,
        ReplicateKind.RE_READ,
        validDays,
        allowance,
        Optional.empty(),
        ShelfLife.NOT_SET,
        Optional.empty());
  }

  @Test
  void tenRowsSetAsideAndNoMore() {
    List<String> lines =
        ScreenLines.of(Invented.findings("Tidewick", Invented.accounting(15), List.of()));
    assertEquals(10, lines.stream().filter(l -> l.startsWith("readings/")).count());
    assertEquals("and 5 more such sentences on the last pages", lines.get(lines.size() - 1));
  }

  @Test
  void everythingElseKeepsToTheWidth() {
    Findings findings =
        Invented.findings(
            "A bench whose name is long enough to fill a line and then a second line, and of which"
                + " nobody knows where it will end",
            Invented.accounting(0),
            List.of(Invented.crowded(), Invented.glycerin(), Invented.youngFattyAcid(0)));
    List<String> lines = ScreenLines.of(findings);
    assertTrue(lines.size() > 10);
    for (String line : lines) {
      assertTrue(line.length() <= ScreenLines.WIDTH, line);
    }
    assertTrue(lines.get(1).startsWith("  "));
  }

  @Test
  void aReasonWithoutItsEndGetsOne() {
    SetAside plain = new SetAside("a.csv", 3, "unit", "x", "\"x\" is no unit", 1);
    assertEquals(
        "a.csv, line 3, unit: \"x\" is no unit. The row was set aside.",
        IntakeWords.sentence(plain));
    SetAside file = new SetAside("a.csv", 1, "header", "x", "no such column.", 40);
    assertEquals(
        "a.csv, line 1, header: no such column. 40 rows were set aside.",
        IntakeWords.sentence(file));
    SetAside question = new SetAside("a.csv", 3, "unit", "x", "is that a unit?", 1);
    assertEquals(
        "a.csv, line 3, unit: is that a unit? The row was set aside.",
        IntakeWords.sentence(question));
  }

  @Test
  void settingsThatCouldNotBeUsedAreTold() {
    Accounting one = Invented.accounting(0);
    List<SetAside> settings = new ArrayList<>();
    settings.add(new SetAside("bench.toml", 9, "unit", "", "a method needs a unit", 1));
    Accounting both =
        new Accounting(one.files(), one.aside(), settings, one.takenIn(), one.metBefore());
    List<String> lines = ScreenLines.of(Invented.findings("Tidewick", both, List.of()));
    assertEquals("1 setting could not be used", lines.get(3));
    assertEquals("bench.toml, line 9, unit: a method needs a unit", lines.get(4));
  }

  @Test
  void aFileThatChangedWhileItWasReadIsToldAndIsNeverSteady() {
    Accounting still = new Accounting(List.of(), List.of(), List.of(), 0, 0);
    FileRead file = new FileRead("readings/a.csv", "abc", 0, true);
    Accounting changed = new Accounting(List.of(file), List.of(), List.of(), 0, 0);
    assertTrue(Invented.findings("Tidewick", still, List.of()).steady());
    Findings findings = Invented.findings("Tidewick", changed, List.of());
    assertFalse(findings.steady());
    assertEquals(
        List.of("readings/a.csv changed while it was read; run again."),
        IntakeWords.alarms(findings));
  }
}
