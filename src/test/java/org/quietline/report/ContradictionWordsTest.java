package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.quietline.assess.Concern;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.bench.Check;

/** Records that cannot all be right, from the files to the sentences. */
class ContradictionWordsTest {
  private static final String CALIBRATED = "C-1,total,PM-1,2026-10-01T08:00";

  @TempDir private Path folder;

  private WrittenBench bench;

  @BeforeEach
  void begin() {
    bench = new WrittenBench(folder).calibrations(CALIBRATED);
  }

  private static String product(String at, String sample, String rest) {
    return at + ",total,PM-1,product," + sample + ",0.180,0.181,," + rest;
  }

  private static List<String> reasons(Findings findings, String method) {
    MethodFindings found =
        findings.methods().stream()
            .filter(m -> m.method().key().equals(method))
            .findFirst()
            .orElseThrow();
    Reasons words = new Reasons(found, findings);
    return found.verdict().concerns().stream()
        .filter(c -> c instanceof Concern.RecordsContradict || c instanceof Concern.RowsInConflict)
        .map(words::sentence)
        .toList();
  }

  @Test
  void recordsThatAgreeRaiseNoQuestion() {
    bench
        .lots("L-1,total,2026-09-20,2026-10-01,2026-12-31,refrigerated")
        .rows(
            product("2026-10-02T09:00", "B-1", ",L-1,RO,7"),
            product("2026-10-03T09:00", "B-2", "C-1,L-1,RO,8"),
            "2026-10-03T10:00,free,PM-1,product,B-2,180,,,,,RO,9");
    assertEquals(List.of(), bench.told());
  }

  @Test
  void aResultThatNamesALaterCalibrationIsTakenInAndAskedAbout() {
    bench
        .calibrations(CALIBRATED, "C-2,total,PM-1,2026-10-20T09:00")
        .rows(
            product("2026-10-10T09:00", "B-1", "C-2,,,"),
            product("2026-10-21T09:00", "B-2", "C-2,,,"));
    String id = "total/PM-1/B-1/2026-10-10T09:00/result-before-calibration";
    String sentence =
        "readings/a.csv, line 2: B-1 of 10 Oct 2026, 09:00 (total on PM-1) names calibration C-2,"
            + " which was made later, on 20 Oct 2026, 09:00 (calibrations.csv, line 3).";
    assertEquals(List.of(id + " open: " + sentence), bench.told());
    assertEquals(2, bench.read().bench().results().size());
    assertEquals(
        Optional.empty(),
        bench.read().bench().calibrationOf(bench.read().bench().results().get(0)));
    assertEquals(List.of(sentence), reasons(bench.findings(), "total"));
    assertEquals(1, bench.findings().methods().get(0).dates().withoutCalibration());
  }

  @Test
  void anActionWithACauseAnswersAndIsNotIdle() {
    bench
        .calibrations(CALIBRATED, "C-2,total,PM-1,2026-10-20T09:00")
        .rows(product("2026-10-10T09:00", "B-1", "C-2,,,"))
        .actions(
            "2026-10-22T09:00,total/PM-1/B-1/2026-10-10T09:00/result-before-calibration,"
                + "Typed C-2 for C-1,,RO");
    Findings findings = bench.findings();
    assertEquals(
        List.of(
            "total/PM-1/B-1/2026-10-10T09:00/result-before-calibration answered: readings/a.csv,"
                + " line 2: B-1 of 10 Oct 2026, 09:00 (total on PM-1) names calibration C-2, which"
                + " was made later, on 20 Oct 2026, 09:00 (calibrations.csv, line 3)."),
        WrittenBench.told(findings));
    assertEquals(List.of(), findings.idleActions());
    assertEquals(List.of(), reasons(findings, "total"));
  }

  @Test
  void resultsBeforeTheFirstCalibrationAreOneQuestionThatLaterResultsDoNotInherit() {
    bench
        .calibrations("C-1,total,PM-1,2026-10-20T08:00")
        .rows(
            product("2026-10-10T09:00", "B-1", ",,,"),
            product("2026-10-11T09:00", "B-2", ",,,"),
            product("2026-10-19T09:00", "B-3", ",,,"),
            product("2026-10-21T09:00", "B-4", ",,,"))
        .actions(
            "2026-10-12T09:00,total/PM-1/before-first-calibration,The certificate is lost,,RO");
    assertEquals(
        List.of(
            "total/PM-1/before-first-calibration answered: readings/a.csv, line 2: 2 results, the"
                + " first B-1 of 10 Oct 2026, 09:00 (total on PM-1), are older than the first"
                + " calibration recorded, C-1 of 20 Oct 2026, 08:00 (calibrations.csv, line 2).",
            "total/PM-1/before-first-calibration open: readings/a.csv, line 4: B-3 of 19 Oct 2026,"
                + " 09:00 (total on PM-1) is older than the first calibration recorded, C-1 of 20"
                + " Oct 2026, 08:00 (calibrations.csv, line 2)."),
        bench.told());
  }

  @Test
  void aMethodWithoutValidityMayHaveResultsBeforeItsCalibrations() {
    bench
        .calibrations("C-1,free,PM-1,2026-10-20T08:00")
        .rows(
            "2026-10-03T10:00,free,PM-1,product,B-2,180,,,,,RO,9",
            "2026-10-21T10:00,free,PM-1,product,B-3,180,,,,,RO,10");
    assertEquals(List.of(), bench.told());
  }

  @Test
  void aDateThatPassedNamesTheRuleThatGovernsAndHoldsUntilAnswered() {
    bench
        .lots(
            "L-1,total,2026-09-20,2026-10-01,2026-12-31,refrigerated",
            "L-2,total,2026-09-20,2026-10-01,2026-10-05,refrigerated")
        .rows(
            product("2026-10-23T09:00", "B-1", ",L-1,,"),
            product("2026-10-06T09:00", "B-2", ",L-2,,"),
            product("2026-11-03T09:00", "B-3", ",,,"));
    List<String> told =
        List.of(
            "total/PM-1/B-3/2026-11-03T09:00/result-after-validity open: readings/a.csv, line 4:"
                + " B-3 of 3 Nov 2026, 09:00 (total on PM-1) was made 3 days after calibration C-1"
                + " ended on 31 October 2026.",
            "total/PM-1/B-2/2026-10-06T09:00/reagent-past-date open, not of the period:"
                + " readings/a.csv, line 3: B-2 of 6 Oct 2026, 09:00 (total on PM-1) was made 1 day"
                + " after reagent lot L-2 expired on 5 October 2026; the printed date governs, the"
                + " shelf life would end later, on 21 October 2026.",
            "total/PM-1/B-1/2026-10-23T09:00/reagent-past-date open, not of the period:"
                + " readings/a.csv, line 2: B-1 of 23 Oct 2026, 09:00 (total on PM-1) was made 2"
                + " days after the shelf life of opened reagent lot L-1 ended on 21 October 2026;"
                + " the shelf life governs, the printed date is later, 31 December 2026.");
    assertEquals(told, bench.told());
    assertTrue(holdsForDates(bench.findings()));
    bench.actions(
        "2026-11-04T09:00,total/PM-1/B-3/2026-11-03T09:00/result-after-validity,Extended,,RO");
    assertFalse(holdsForDates(bench.findings()));
    assertEquals(told.get(0).replace(" open: ", " answered: "), bench.told().get(0));
    assertEquals(List.of(), bench.findings().idleActions());
  }

  private static boolean holdsForDates(Findings findings) {
    return findings.methods().get(0).verdict().concerns().stream()
        .anyMatch(Concern.UsedPastDate.class::isInstance);
  }

  @Test
  void aLotHasItsDaysInOrder() {
    bench
        .lots(
            "L-1,total,2026-10-10,2026-10-08,2026-12-31,",
            "L-2,total,2026-10-01,2026-10-09,2026-10-08,",
            "L-3,total,2026-10-12,2026-10-20,,")
        .rows(
            product("2026-10-07T09:00", "B-1", ",L-1,,"),
            product("2026-10-09T09:00", "B-2", ",L-1,,"),
            product("2026-10-15T09:00", "B-3", ",L-3,,"),
            product("2026-10-22T09:00", "B-4", ",L-3,,"));
    assertEquals(
        List.of(
            "total/L-1/lot-opened-before-received open: reagents.csv, line 2: reagent lot L-1 of"
                + " total was opened on 8 October 2026, before it was received on 10 October 2026.",
            "total/L-2/lot-opened-after-expiry open: reagents.csv, line 3: reagent lot L-2 of total"
                + " was opened on 9 October 2026, after the date printed on it, 8 October 2026.",
            "total/L-1/lot-used-before-received open: readings/a.csv, line 2: 2 results, the first"
                + " B-1 of 7 Oct 2026, 09:00 (total on PM-1), were made with reagent lot L-1 before"
                + " it was received on 10 October 2026 (reagents.csv, line 2).",
            "total/L-3/lot-used-before-opened open: readings/a.csv, line 4: B-3 of 15 Oct 2026,"
                + " 09:00 (total on PM-1) was made with reagent lot L-3 before it was opened on 20"
                + " October 2026 (reagents.csv, line 4)."),
        bench.told());
  }

  @Test
  void aLotThatIsNotRecordedIsAskedAboutOnlyWhereLotsAreKept() {
    bench.rows(product("2026-10-07T09:00", "B-1", ",L-9,,"));
    assertEquals(List.of(), bench.told());
    bench
        .lots("L-1,total,2026-10-01,2026-10-01,,", "L-9,free,2026-10-01,2026-10-01,,")
        .rows(
            product("2026-10-07T09:00", "B-1", ",L-9,,"),
            product("2026-10-08T09:00", "B-2", ",L-8,,"),
            product("2026-10-09T09:00", "B-3", ",L-8,,"));
    assertEquals(
        List.of(
            "total/L-9/lot-not-recorded open: readings/a.csv, line 2: B-1 of 7 Oct 2026, 09:00"
                + " (total on PM-1) names reagent lot L-9, which reagents.csv does not hold for"
                + " this method, only for free.",
            "total/L-8/lot-not-recorded open: readings/a.csv, line 3: 2 results, the first B-2 of 8"
                + " Oct 2026, 09:00 (total on PM-1), name reagent lot L-8, which reagents.csv does"
                + " not hold."),
        bench.told());
    assertEquals(
        List.of(
            "2 questions of the check lot-not-recorded are open; the first: readings/a.csv, line 2:"
                + " B-1 of 7 Oct 2026, 09:00 (total on PM-1) names reagent lot L-9, which"
                + " reagents.csv does not hold for this method, only for free."),
        reasons(bench.findings(), "total"));
  }

  @Test
  void oneIdForTwoCalibrationsIsAQuestionOfTheWholeBench() {
    bench
        .calibrations(CALIBRATED, "C-1,free,PM-1,2026-10-02T08:00")
        .rows(product("2026-10-07T09:00", "B-1", "C-1,,,"));
    assertEquals(
        List.of(
            "C-1/calibration-id-twice open: calibrations.csv, line 2: the id C-1 stands for 2"
                + " calibrations: total on PM-1 of 1 Oct 2026, 08:00 (calibrations.csv, line 2),"
                + " free on PM-1 of 2 Oct 2026, 08:00 (calibrations.csv, line 3)."),
        bench.told());
    assertEquals(1, bench.findings().across().openOfBench().size());
    assertEquals(List.of(), reasons(bench.findings(), "total"));
  }

  @Test
  void missingAndRepeatedNumbersAreFoundPerInstrument() {
    bench.rows(
        product("2026-10-07T09:00", "B-1", ",,,101"),
        product("2026-10-07T09:10", "B-2", ",,,102"),
        "2026-10-07T09:20,total,PM-2,product,B-2,0.180,0.181,,,,,104",
        product("2026-10-08T09:00", "B-3", ",,,105"),
        product("2026-10-08T09:10", "B-4", ",,,106"),
        product("2026-10-08T09:20", "B-5", ",,,106"),
        product("2026-10-08T09:30", "B-6", ",,,108"));
    assertEquals(
        List.of(
            "PM-1/2026-10-08/103-104/sequence-gap open: readings/a.csv, line 5: before number 105"
                + " of PM-1, numbers 103 to 104 are missing; the row before is of 7 Oct 2026, 09:10"
                + " (readings/a.csv, line 3).",
            "PM-1/2026-10-08/107/sequence-gap open: readings/a.csv, line 8: before number 108 of"
                + " PM-1, number 107 is missing; the row before is of 8 Oct 2026, 09:20"
                + " (readings/a.csv, line 7).",
            "PM-1/2026-10-08/106/sequence-repeated open: readings/a.csv, line 6: number 106 of PM-1"
                + " stands on 2 results: B-4 of 8 Oct 2026, 09:10 (readings/a.csv, line 6), B-5 of"
                + " 8 Oct 2026, 09:20 (readings/a.csv, line 7)."),
        bench.told());
    assertFalse(bench.findings().steady());
  }

  @Test
  void aCounterThatStartsAnewIsNoGapAndNoRepetition() {
    bench.rows(
        product("2026-10-07T09:00", "B-1", ",,,1"),
        product("2026-10-07T09:10", "B-2", ",,,2"),
        product("2026-10-08T09:00", "B-3", ",,,1"),
        product("2026-10-09T09:10", "B-4", ",,,1"),
        product("2026-10-09T09:20", "B-5", ",,,2"),
        product("2026-10-10T09:20", "B-6", ",,,501"),
        product("2026-10-10T09:10", "B-7", ",,,502"),
        product("2026-10-11T09:30", "B-8", ",,,A-4"));
    assertEquals(
        List.of(
            "PM-1/2026-10-10/3-500/sequence-gap open: readings/a.csv, line 7: before number 501 of"
                + " PM-1, numbers 3 to 500 are missing; the row before is of 9 Oct 2026, 09:20"
                + " (readings/a.csv, line 6)."),
        bench.told());
  }

  @Test
  void aYearTypedWrongIsOutOfStepWithItsNeighbours() {
    bench.rows(
        product("2026-10-07T09:00", "B-1", ",,,"),
        product("2026-10-07T10:00", "B-2", ",,,"),
        product("2025-10-08T09:00", "B-3", ",,,"),
        product("2026-10-08T10:00", "B-4", ",,,"));
    Findings findings = bench.findings();
    assertEquals(
        List.of(
            "total/PM-1/before-first-calibration open, not of the period: readings/a.csv, line 4:"
                + " B-3 of 8 Oct 2025, 09:00 (total on PM-1) is older than the first calibration"
                + " recorded, C-1 of 1 Oct 2026, 08:00 (calibrations.csv, line 2).",
            "total/PM-1/B-3/2025-10-08T09:00/time-out-of-step open: readings/a.csv, line 4: B-3 of"
                + " 8 Oct 2025, 09:00 (total on PM-1) stands between rows of 7 Oct 2026, 10:00 and"
                + " 8 Oct 2026, 10:00."),
        WrittenBench.told(findings));
    assertFalse(findings.steady());
    assertTrue(
        ScreenLines.of(findings)
            .contains(
                "readings/a.csv, line 4: B-3 of 8 Oct 2025, 09:00 (total on PM-1) stands between"
                    + " rows of 7 Oct 2026, 10:00 and 8 Oct 2026, 10:00."));
  }

  @Test
  void aMonthTypedWrongMakesNoMonthUntilItIsAnsweredFor() {
    String[] rows = {
      product("2026-10-07T09:00", "B-1", ",,,"),
      product("2026-10-07T10:00", "B-2", ",,,"),
      product("2026-12-08T09:00", "B-3", ",,,"),
      product("2026-10-08T10:00", "B-4", ",,,")
    };
    bench.rows(rows);
    assertEquals(Optional.of(YearMonth.of(2026, 10)), bench.review().latestMonth());
    assertEquals(
        List.of(
            "total/PM-1/B-3/2026-12-08T09:00/time-out-of-step open: readings/a.csv, line 4: B-3 of"
                + " 8 Dec 2026, 09:00 (total on PM-1) stands between rows of 7 Oct 2026, 10:00 and"
                + " 8 Oct 2026, 10:00; this review does not use it."),
        bench.told());
    bench.actions(
        "2026-12-09T09:00,total/PM-1/B-3/2026-12-08T09:00/time-out-of-step,Filed late,,RO");
    assertEquals(Optional.of(YearMonth.of(2026, 12)), bench.review().latestMonth());
    assertEquals(List.of(), bench.findings().idleActions());
  }

  @Test
  void aFileThatIsNotInTimeOrderIsNotAskedAbout() {
    bench.calibrations("C-1,total,PM-1,2025-01-01T08:00");
    String[] rows = new String[20];
    for (int i = 0; i < rows.length; i++) {
      rows[i] =
          product(
              (i % 2 == 0 ? "2026-10-" : "2026-0" + (1 + i % 8) + "-") + (10 + i / 2) + "T09:00",
              "B-" + i,
              ",,,");
    }
    bench.rows(rows);
    assertTrue(
        bench.findings().contradictions().stream()
            .noneMatch(c -> c.check() == Check.TIME_OUT_OF_STEP));
  }

  @Test
  void aResultInTheFutureMakesNoMonthAndIsTold() {
    bench.rows(
        product("2026-10-06T09:00", "B-1", ",,,"),
        product("2026-10-07T09:00", "B-2", ",,,"),
        product("2026-10-08T09:00", "B-3", ",,,"),
        product("2062-10-09T09:00", "B-4", ",,,"));
    assertEquals(Optional.of(YearMonth.of(2026, 10)), bench.review().latestMonth());
    Findings findings = bench.findings();
    assertEquals("2026-10-08T09:00", findings.now().toString());
    String sentence =
        "readings/a.csv, line 5: B-4 of 9 Oct 2062, 09:00 (total on PM-1) lies 13150 days after"
            + " everything else, which ends on 8 October 2026; this review does not use it.";
    assertEquals(
        List.of("total/PM-1/B-4/2062-10-09T09:00/time-in-future open: " + sentence),
        WrittenBench.told(findings));
    assertTrue(ScreenLines.of(findings).contains(sentence));
    assertTrue(
        ScreenLines.of(findings)
            .contains(
                "1 question about the records of the whole bench is open, see the last pages."));
    assertEquals(List.of(), WrittenBench.told(bench.findings("2026-09")));
  }

  @Test
  void aFewResultsAfterALongRestAreNotInTheFutureOnceTheBenchIsCalibratedAgain() {
    String[] rows = {
      product("2026-01-06T09:00", "B-1", ",,,"),
      product("2026-01-07T09:00", "B-2", ",,,"),
      product("2026-01-08T09:00", "B-3", ",,,"),
      product("2026-10-09T09:00", "B-4", ",,,")
    };
    bench.calibrations("C-0,total,PM-1,2026-01-05T08:00").rows(rows);
    assertEquals(Optional.of(YearMonth.of(2026, 1)), bench.review().latestMonth());
    bench.calibrations("C-0,total,PM-1,2026-01-05T08:00", "C-1,total,PM-1,2026-10-09T08:00");
    assertEquals(Optional.of(YearMonth.of(2026, 10)), bench.review().latestMonth());
    assertEquals(List.of(), bench.told());
  }

  @Test
  void aTimeThatTheClocksLeftOutIsAskedAbout() {
    bench
        .calibrations("C-1,total,PM-1,2026-03-01T08:00", "C-2,total,PM-2,2026-03-29T01:00")
        .rows(
            product("2026-03-29T00:59", "B-1", ",,,"),
            product("2026-03-29T01:30", "B-2", ",,,"),
            product("2026-03-29T02:00", "B-3", ",,,"));
    assertEquals(
        List.of(
            "total/PM-2/C-2/time-does-not-exist open: calibrations.csv, line 3: the time"
                + " 2026-03-29T01:00 of C-2 does not exist: the clocks were put forward from 01:00"
                + " to 02:00 on that day.",
            "total/PM-1/B-2/2026-03-29T01:30/time-does-not-exist open: readings/a.csv, line 3: the"
                + " time 2026-03-29T01:30 of B-2 does not exist: the clocks were put forward from"
                + " 01:00 to 02:00 on that day."),
        bench.told());
  }

  @Test
  void aPartIsNotLargerThanTheWhole() {
    bench.rows(
        "2026-10-07T09:00,total,PM-1,product,B-1,0.180,0.182,,,,,",
        "2026-10-07T09:10,free,PM-1,product,B-1,1811,,,,,,",
        "2026-10-07T09:20,total,PM-1,product,B-2,0.180,0.180,,,,,",
        "2026-10-07T09:30,free,PM-1,product,B-2,1800,,,,,,",
        "2026-10-07T09:40,free,PM-1,product,B-3,9000,,,,,,",
        "2026-10-07T09:50,total,PM-1,product,B-4,<0.1,0.2,,,,,",
        "2026-10-07T10:00,free,PM-1,product,B-4,9000,,,,,,");
    assertEquals(
        List.of(
            "free/PM-1/B-1/2026-10-07T09:10/part-exceeds-whole open: readings/a.csv, line 3: B-1 of"
                + " 7 Oct 2026, 09:10 (free on PM-1) is 0.1811 in the unit of total, more than the"
                + " whole it is a part of, 0.1810 (readings/a.csv, line 2)."),
        bench.told());
    assertEquals(1, reasons(bench.findings(), "free").size());
  }

  @Test
  void peopleAreListedAndMayTestWhereTheBenchListsPeople() {
    String[] rows = {
      product("2026-10-07T09:00", "B-1", ",,RO,"),
      product("2026-10-08T09:00", "B-2", ",,XY,"),
      product("2026-10-09T09:00", "B-3", ",,ML,"),
      product("2026-10-10T09:00", "B-4", ",,TB,"),
      product("2026-10-12T09:00", "B-5", ",,TB,"),
      product("2026-10-13T09:00", "B-6", ",,NN,"),
      product("2026-10-14T09:00", "B-7", ",,,")
    };
    bench.rows(rows);
    assertEquals(List.of(), bench.told());
    bench.settings(
        """
        [[person]]
        key = "RO"
        may = ["test"]

        [[person]]
        key = "ML"
        may = ["review", "release"]

        [[person]]
        key = "TB"
        may = ["test"]
        from = 2026-10-12

        [[person]]
        key = "NN"
        """);
    assertEquals(
        List.of(
            "total/XY/person-not-listed open: readings/a.csv, line 3: B-2 of 8 Oct 2026, 09:00"
                + " (total on PM-1) was made by XY, who is not among the people in bench.toml.",
            "total/ML/person-not-entitled open: readings/a.csv, line 4: B-3 of 9 Oct 2026, 09:00"
                + " (total on PM-1) was made by ML, who may review and release, but not test.",
            "total/TB/person-not-entitled open: readings/a.csv, line 5: B-4 of 10 Oct 2026, 09:00"
                + " (total on PM-1) was made by TB, who may test from 12 October 2026 on."),
        bench.told());
  }

  @Test
  void anActionIsRecordedAfterItsResult() {
    bench
        .rows(
            product("2026-10-07T09:00", "B-1", ",,,"),
            "2026-10-08T09:00,total,PM-1,control,QC,0.180,0.181,,,,,")
        .actions("2026-10-07T10:00,total/PM-1/QC/2026-10-08T09:00/beyond-action-limit,Bubble,,RO");
    assertEquals(
        List.of(
            "total/PM-1/QC/2026-10-08T09:00/beyond-action-limit/action-before-result open:"
                + " actions.csv, line 2: the action on"
                + " total/PM-1/QC/2026-10-08T09:00/beyond-action-limit was recorded on 7 Oct 2026,"
                + " 10:00, before its result was taken on 8 Oct 2026, 09:00 (readings/a.csv, line"
                + " 3)."),
        bench.told());
  }

  @Test
  void anAnswerIsRecordedAfterItsResultToo() {
    bench
        .calibrations(CALIBRATED, "C-2,total,PM-1,2026-10-20T09:00")
        .rows(product("2026-10-10T09:00", "B-1", "C-2,,,"))
        .actions(
            "2026-10-09T09:00,total/PM-1/B-1/2026-10-10T09:00/result-before-calibration,"
                + "Typed C-2 for C-1,,RO");
    assertEquals(
        "total/PM-1/B-1/2026-10-10T09:00/result-before-calibration/action-before-result open:"
            + " actions.csv, line 2: the action on"
            + " total/PM-1/B-1/2026-10-10T09:00/result-before-calibration was recorded on 9 Oct"
            + " 2026, 09:00, before its result was taken on 10 Oct 2026, 09:00 (readings/a.csv,"
            + " line 2).",
        bench.told().get(1));
  }

  @Test
  void aCheckThatIsSwitchedOffAsksNothingAndStaysListedWithItsReason() {
    bench
        .lots("L-1,total,2026-10-01,2026-10-01,,")
        .rows(product("2026-10-07T09:00", "B-1", ",L-9,,"))
        .actions("2026-10-08T10:00,total/L-9/lot-not-recorded,Lost,,RO")
        .settings(
            """
            [[check-off]]
            check = "lot-not-recorded"
            method = "total"
            reason = "lots came without papers in autumn"

            [[check-off]]
            check = "reagent-past-date"
            reason = "dates are checked on paper"
            """);
    Findings findings = bench.findings();
    assertEquals(List.of(), WrittenBench.told(findings));
    assertEquals(List.of(), findings.idleActions());
    List<String> last = texts(LastPage.of(findings));
    assertTrue(last.contains("lot-not-recorded, for total: lots came without papers in autumn"));
    assertTrue(last.contains("reagent-past-date, for all methods: dates are checked on paper"));
    assertTrue(
        texts(MethodPage.of(findings.methods().get(0), findings)).stream()
            .anyMatch(
                t ->
                    t.contains(
                        "Not asked: reagent-past-date, switched off in bench.toml, see the last"
                            + " pages.")));
  }

  private static List<String> texts(Page page) {
    return page.blocks().stream()
        .flatMap(
            b ->
                b instanceof Block.Paragraph p
                    ? List.of(p.text()).stream()
                    : List.<String>of().stream())
        .toList();
  }

  @Test
  void eachCheckOfThisKindSaysWhatToDo() {
    assertEquals(
        19,
        Arrays.stream(Check.values())
            .filter(c -> c.kind() == Check.Kind.CONTRADICTION)
            .map(ContradictionWords::whatToDo)
            .filter(words -> words.endsWith("."))
            .count());
  }

  @Test
  void manyOfOneKindFillNoPage() {
    String[] rows = new String[20];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = product("2026-10-" + (10 + i) + "T09:00", "B-" + i, ",,," + 3 * (i + 1));
    }
    bench.rows(rows);
    List<String> last = texts(LastPage.of(bench.findings()));
    assertEquals(8, last.stream().filter(t -> t.contains("are missing")).count());
    assertTrue(
        last.contains("And 11 more of sequence-gap that are open, all in findings.json."),
        last.toString());
  }
}
