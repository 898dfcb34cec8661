package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.bench.Accounting;

/** A row met again is counted once; two rows that contradict each other are not both believed. */
class MetBeforeTest {
  private static final String HEAD =
      "taken_at,method,instrument,role,sample,reading_1,reading_2,unit,calibration,reagent_lot,"
          + "operator,remark,session,temperature_c,sequence\n";
  private static final String ROW =
      "2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180,0.181,,C-1,L-1,RO,ok,S-1,21.5,7";

  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  @Test
  void theSameFileAgainUnderAnotherNameDoublesNothing() {
    String rows = ROW + "\n" + ROW.replace("B-1", "B-2") + "\n";
    bench.put("readings/a.csv", HEAD + rows).put("readings/b.csv", HEAD + rows);
    Accounting accounting = bench.read().accounting();
    assertEquals(2, accounting.takenIn());
    assertEquals(2, accounting.metBefore());
    assertEquals(List.of(), accounting.aside());
    assertEquals("readings/a.csv", bench.read().bench().results().get(0).origin().file());
  }

  @Test
  void anotherOrderOfColumnsAndAnotherWayToWriteTheTimeIsTheSameRow() {
    bench
        .put(
            "readings/a.csv",
            """
            taken_at,method,instrument,role,sample,reading_1,reading_2
            2026-10-14T09:12,total-glycerin,PM-1,product,B-1,0.180,
            """)
        .put(
            "readings/b.csv",
            """
            sample,role,instrument,method,taken_at,reading_1
            B-1,PRODUCT,PM-1,total-glycerin,2026-10-14 09:12:00,0.180
            """);
    assertEquals(1, bench.read().accounting().metBefore());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.180,0.181|0.180,0.18|readings is \"0.180 0.181\" there and \"0.180 0.18\" here",
        ",,C-1|,g/kg,C-1|unit is \"% mass\" there and \"g/kg\" here",
        "C-1|C-2|calibration is \"C-1\" there and \"C-2\" here",
        "L-1|L-2|reagent_lot is \"L-1\" there and \"L-2\" here",
        "RO|AB|operator is \"RO\" there and \"AB\" here",
        ",ok,|,,|remark is \"ok\" there and empty here",
        "S-1|S-2|session is \"S-1\" there and \"S-2\" here",
        "21.5|22|temperature_c is \"21.5\" there and \"22\" here",
        ",7|,8|sequence is \"7\" there and \"8\" here",
      })
  void theSameTestWithOtherContentIsSetAsideAndTheFirstStays(
      String from, String to, String difference) {
    String other = ROW.replace(from, to);
    bench.put("readings/a.csv", HEAD + ROW + "\n" + other + "\n");
    Intake intake = bench.read();
    assertEquals(1, intake.accounting().takenIn());
    assertEquals(
        "readings/a.csv, line 3, "
            + difference.split(" ", 2)[0]
            + ": the same row stands in readings/a.csv, line 2 with other content: "
            + difference
            + ". The first one stays until actions.csv names the row that holds.",
        intake.accounting().conflicts().get(0).toString());
    assertEquals(2, intake.bench().results().get(0).origin().line());
  }

  @Test
  void aUnitWrittenOtherwiseIsOtherContentEvenWhereItSaysTheSame() {
    bench.put(
        "readings/a.csv",
        HEAD + ROW + "\n" + ROW.replace("0.180,0.181,,", "1.80,1.81,g/kg,") + "\n");
    assertEquals(
        "readings/a.csv, line 3, readings: the same row stands in readings/a.csv, line 2 with other"
            + " content: readings is \"0.180 0.181\" there and \"1.80 1.81\" here. The first one"
            + " stays until actions.csv names the row that holds.",
        bench.read().accounting().conflicts().get(0).toString());
  }

  private static String describe(String part, String there, String here, String origin) {
    return "the same row stands in "
        + origin
        + " with other content: "
        + part
        + " is "
        + there
        + " there and "
        + here
        + " here. The first one stays; correct the wrong one.";
  }

  private static String said(Accounting.InConflict conflict) {
    return conflict.toString().split(": ", 2)[1];
  }

  @Test
  void calibrationsCountOnce() {
    bench.put(
        "calibrations.csv",
        """
        calibration,method,instrument,calibrated_at,blank_response,calibrator_1_assigned,\
        calibrator_1_response,reagent_lot,operator,remark
        C-1,total-glycerin,PM-1,2026-10-01T08:00,0.04,0.10,0.21,L-1,RO,a
        C-1,total-glycerin,PM-1,2026-10-01T08:00,0.04,0.10,0.21,L-1,RO,a
        C-1,total-glycerin,PM-1,2026-10-01T08:01,0.04,0.10,0.21,L-1,RO,a
        C-1,total-glycerin,PM-1,2026-10-01T08:00,0.05,0.10,0.21,L-1,RO,a
        C-1,total-glycerin,PM-1,2026-10-01T08:00,0.04,0.10,0.22,L-1,RO,a
        C-1,total-glycerin,PM-1,2026-10-01T08:00,0.04,0.10,0.21,L-2,RO,a
        C-1,total-glycerin,PM-1,2026-10-01T08:00,0.04,0.10,0.21,L-1,AB,a
        C-1,total-glycerin,PM-1,2026-10-01T08:00,0.04,0.10,0.21,L-1,RO,b
        C-1,acid-number,PM-1,2026-10-01T09:00,0.04,0.10,0.21,L-1,RO,a
        """);
    Accounting accounting = bench.read().accounting();
    assertEquals(2, accounting.takenIn());
    assertEquals(1, accounting.metBefore());
    String first = "calibrations.csv, line 2";
    assertEquals(
        List.of(
            describe("calibrated_at", "\"2026-10-01T08:00\"", "\"2026-10-01T08:01\"", first),
            describe("blank_response", "\"0.04\"", "\"0.05\"", first),
            describe("calibrators", "\"0.10:0.21\"", "\"0.10:0.22\"", first),
            describe("reagent_lot", "\"L-1\"", "\"L-2\"", first),
            describe("operator", "\"RO\"", "\"AB\"", first),
            describe("remark", "\"a\"", "\"b\"", first)),
        accounting.conflicts().stream().map(MetBeforeTest::said).toList());
  }

  @Test
  void reagentLotsCountOnce() {
    bench.put(
        "reagents.csv",
        """
        reagent_lot,method,received_on,opened_on,expires_on,storage,remark
        L-1,total-glycerin,2026-09-01,2026-09-02,2027-01-01,ambient,a
        L-1,total-glycerin,2026-09-01,2026-09-02,2027-01-01,Ambient,a
        L-1,total-glycerin,2026-09-03,2026-09-02,2027-01-01,ambient,a
        L-1,total-glycerin,2026-09-01,2026-09-03,2027-01-01,ambient,a
        L-1,total-glycerin,2026-09-01,2026-09-02,,ambient,a
        L-1,total-glycerin,2026-09-01,2026-09-02,2027-01-01,refrigerated,a
        L-1,total-glycerin,2026-09-01,2026-09-02,2027-01-01,ambient,b
        L-1,acid-number,,,,,
        """);
    Accounting accounting = bench.read().accounting();
    assertEquals(2, accounting.takenIn());
    assertEquals(1, accounting.metBefore());
    String first = "reagents.csv, line 2";
    assertEquals(
        List.of(
            describe("received_on", "\"2026-09-01\"", "\"2026-09-03\"", first),
            describe("opened_on", "\"2026-09-02\"", "\"2026-09-03\"", first),
            describe("expires_on", "\"2027-01-01\"", "empty", first),
            describe("storage", "\"ambient\"", "\"refrigerated\"", first),
            describe("remark", "\"a\"", "\"b\"", first)),
        accounting.conflicts().stream().map(MetBeforeTest::said).toList());
  }

  @Test
  void outsideResultsCountOnce() {
    bench.put(
        "outside.csv",
        """
        sample,method,laboratory,reported_on,value,expanded_uncertainty,coverage_factor,remark
        B-1,total-glycerin,Lab,2026-10-20,0.221,0.010,2,a
        B-1,total-glycerin,Lab,2026-10-20,0.221,0.010,2,a
        B-1,total-glycerin,Lab,2026-10-20,0.222,0.010,2,a
        B-1,total-glycerin,Lab,2026-10-20,0.221,0.011,2,a
        B-1,total-glycerin,Lab,2026-10-20,0.221,0.010,,a
        B-1,total-glycerin,Lab,2026-10-20,0.221,0.010,2,b
        B-1,total-glycerin,Lab,2026-10-21,0.222,0.010,2,a
        """);
    Accounting accounting = bench.read().accounting();
    assertEquals(2, accounting.takenIn());
    assertEquals(1, accounting.metBefore());
    String first = "outside.csv, line 2";
    assertEquals(
        List.of(
            describe("value", "\"0.221\"", "\"0.222\"", first),
            describe("expanded_uncertainty", "\"0.010\"", "\"0.011\"", first),
            describe("coverage_factor", "\"2\"", "empty", first),
            describe("remark", "\"a\"", "\"b\"", first)),
        accounting.conflicts().stream().map(MetBeforeTest::said).toList());
  }

  @Test
  void actionsCountOnceAndTwoForOneSignalAreBothKept() {
    String signal = "total-glycerin/PM-1/QC-TG-A/2026-10-14T09:12/beyond-action-limit";
    bench.put(
        "actions.csv",
        """
        recorded_at,signal,cause,action,exclude_result,decided_by,remark
        2026-10-14T15:00,SIGNAL,wrong vial,repeated,yes,RO,a
        2026-10-14T15:00,SIGNAL,wrong vial,repeated,YES,RO,a
        2026-10-14T15:00,SIGNAL,wrong vial,repeated,no,RO,a
        """
            .replace("SIGNAL", signal));
    Accounting accounting = bench.read().accounting();
    assertEquals(2, accounting.takenIn());
    assertEquals(1, accounting.metBefore());
  }
}
