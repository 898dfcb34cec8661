package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.Conversion;
import org.quietline.bench.Accounting.NumberAside;
import org.quietline.bench.Unit;

/** Conversions are counted, units can be asked for, and running numbers of rows aside are kept. */
class UnitsAndNumbersTest {
  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  private static final String THREE_UNITS =
      """
      taken_at,method,instrument,role,sample,reading_1,unit
      2026-10-14T09:12,total-glycerin,PM-1,product,B-1,1.80,g/kg
      2026-10-14T09:13,total-glycerin,PM-1,product,B-2,0.180,
      2026-10-14T09:14,total-glycerin,PM-1,product,B-3,0.180,% mass
      2026-10-14T09:15,total-glycerin,PM-1,product,B-4,1.81,g/kg
      2026-10-14T09:15,total-glycerin,PM-1,product,B-4,1.81,g/kg
      2026-10-14T09:15,total-glycerin,PM-1,product,B-4,1.82,g/kg
      2026-10-14T09:16,total-glycerin,PM-1,product,B-5,1810,ppm
      """;

  @Test
  void eachConversionIsCountedForTheResultsThatWereTakenIn() {
    bench.put("readings/a.csv", THREE_UNITS);
    Unit mass = new Unit("% mass");
    assertEquals(
        List.of(
            new Conversion(
                "total-glycerin", new Unit("g/kg"), mass, BigDecimal.ONE.scaleByPowerOfTen(-1), 2),
            new Conversion(
                "total-glycerin", new Unit("ppm"), mass, BigDecimal.ONE.scaleByPowerOfTen(-4), 1)),
        bench.read().accounting().conversions());
  }

  @Test
  void aBenchMayAskForAUnitInEveryRow() {
    bench
        .put("bench.toml", "unit-required = true\n" + TempBench.SETTINGS)
        .put("readings/a.csv", THREE_UNITS);
    Intake intake = bench.read();
    assertEquals(List.of(), intake.accounting().settingsAside());
    assertEquals(
        List.of(
            "readings/a.csv, line 3, unit: No unit is written, and bench.toml says unit-required;"
                + " write % mass or a unit that converts to it. The row was set aside."),
        intake.accounting().aside().stream().map(Object::toString).toList());
  }

  @Test
  void aWordThatIsNeitherYesNorNoAsksForTheUnit() {
    bench
        .put("bench.toml", "unit-required = \"yes\"\n" + TempBench.SETTINGS)
        .put("readings/a.csv", THREE_UNITS);
    Accounting accounting = bench.read().accounting();
    assertEquals(
        "bench.toml, line 1, unit-required: unit-required is \"yes\"; it must be true or false,"
            + " without quotes. It was read as true.",
        accounting.settingsAside().get(0).toString());
    assertEquals(1, accounting.rowsAside());
  }

  @Test
  void theRunningNumberOfARowSetAsideIsKept() {
    bench.put(
        "readings/a.csv",
        """
        taken_at,method,instrument,role,sample,reading_1,sequence,remark
        2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180,1,
        2026-10-14T09:13,total-glycerin,PM-1,product,B-2,O.180,2,
        2026-10-14T09:14,total-glycerin,PM-1,product,B-3,0.180,3,4,
        2026-10-14T09:15,total-glycerin,PM-1,product,B-4,0.180,5,a\0b
        2026-10-14T09:16,total-glycerin,PM-1,product,B-5,,,
        2026-10-14T09:17,total-glycerin,,product,B-6,0.1,6,
        taken_at,method,instrument,role,sample,reading_1,sequence,remark
        """);
    Accounting accounting = bench.read().accounting();
    assertEquals(6, accounting.rowsAside());
    assertEquals(
        List.of(new NumberAside("PM-1", "2"), new NumberAside("PM-1", "5")),
        accounting.numbersAside());
  }

  @Test
  void aRowSetAsideKeepsItsTextAsItStandsInTheFile() {
    bench.put(
        "readings/a.csv",
        "taken_at,method,instrument,role,sample,reading_1,remark\n"
            + "2026-10-14T09:12, total-glycerin ,PM-1,product,B-1,O.180,\"one\r\n\"\"two\"\"\"\n"
            + "2026-10-14T09:13,total-glycerin,PM-1,product,B-2,0.180,"
            + "x".repeat(5000)
            + "\n");
    List<Accounting.SetAside> aside = bench.read().accounting().aside();
    assertEquals(
        "2026-10-14T09:12, total-glycerin ,PM-1,product,B-1,O.180,\"one\r\n\"\"two\"\"\"",
        aside.get(0).raw());
    assertEquals(4000, aside.get(1).raw().length());
  }
}
