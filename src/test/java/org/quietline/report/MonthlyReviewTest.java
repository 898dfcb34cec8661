package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.quietline.assess.AcrossRecords;
import org.quietline.assess.Answer;
import org.quietline.assess.DateCoverage;
import org.quietline.assess.Drift;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutOfDate;
import org.quietline.assess.Period;
import org.quietline.assess.Slips;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Role;
import org.quietline.report.Block.Fact;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.MethodRow;
import org.quietline.report.Block.Paragraph;

/** Pages as values: what stands on them, before anything is drawn. */
class MonthlyReviewTest {
  private static final Document REVIEW = MonthlyReview.of(Invented.bench(), "0.1.0");

  private static Page method(MethodFindings findings) {
    return MethodPage.of(findings, Invented.bench());
  }

  private static String text(Page page) {
    return page.blocks().toString();
  }

  private static List<Figure> figures(Page page) {
    List<Figure> figures = new ArrayList<>();
    for (Block block : page.blocks()) {
      if (block instanceof Figure figure) {
        figures.add(figure);
      }
    }
    return figures;
  }

  @Test
  void oneFrontPageOnePageAMethodOneLastPage() {
    assertEquals(
        List.of(
            "At a glance",
            "Total glycerin, enzymatic kit, photometric",
            "Acid number, colour kit",
            "Free fatty acid in incoming oil",
            "Water by reagent",
            "What came in, and how to read this"),
        REVIEW.pages().stream().map(Page::name).toList());
    assertEquals(
        "Monthly review, October 2026, Tidewick Oil & Fuel, bench 1 (invented)", REVIEW.title());
    assertEquals(
        "quietline 0.1.0 · settings 7c1f09ab · data 91abd3e2 · in-house production-control results",
        REVIEW.foot());
  }

  @Test
  void equalFindingsGiveEqualDocuments() {
    assertEquals(REVIEW, MonthlyReview.of(Invented.bench(), "0.1.0"));
  }

  @Test
  void theFrontPageAnswersFirst() {
    Page front = REVIEW.pages().get(0);
    assertEquals(
        Paragraph.lead("Of 4 methods, 1 is on hold, 2 need watching, 1 is steady."),
        front.blocks().get(1));
    MethodRow row = assertInstanceOf(MethodRow.class, front.blocks().get(2));
    assertEquals("hold", row.verdict().word());
    assertEquals(Emphasis.GRAVE, row.verdict().emphasis());
    assertTrue(row.reason().endsWith("no cause is recorded. 3 more reasons on its page."));
    assertEquals(
        List.of(
            "11 days left on calibration C-31, PM-1, to 11 November 2026.",
            "Last safe day 3 November 2026."),
        row.calibration().stream().map(Paragraph::text).toList());
    assertEquals(Colour.ACCENT, row.calibration().get(1).colour());
    assertEquals("now", row.steps().get(0).by());
    MethodRow empty = assertInstanceOf(MethodRow.class, front.blocks().get(5));
    assertTrue(empty.picture().isEmpty());
    assertEquals("No control result in 12 months.", empty.pictureWords());
  }

  @Test
  void theMiniatureShowsTwelveMonthsOnly() {
    MethodRow row = assertInstanceOf(MethodRow.class, REVIEW.pages().get(0).blocks().get(2));
    Miniature year = row.picture().orElseThrow();
    double start = Dates.onAxis(Invented.NOW.minusMonths(12));
    assertTrue(year.marks().stream().allMatch(m -> m.x() >= start));
    assertEquals(3, year.levels().size());
    assertTrue(year.rings().stream().allMatch(ControlChart.Ring::open));
  }

  @Test
  void theFrontPageCountsWhatCameInAndWhatChanceExpects() {
    Block.Facts facts = assertInstanceOf(Block.Facts.class, REVIEW.pages().get(0).blocks().get(6));
    List<Fact> cameIn = facts.columns().get(1).facts();
    assertEquals(
        List.of("415 rows read", "408 taken in", "4 met before", "3 set aside, see the last pages"),
        cameIn.stream().map(f -> f.figure() + " " + f.words()).toList());
    List<Fact> chance = facts.columns().get(2).facts();
    assertEquals("0.93", chance.get(0).figure());
    assertEquals("5", chance.get(1).figure());
    assertEquals(
        "stop signals of the period, on 3 results, of these open: 5", chance.get(1).words());
    Fact open = facts.columns().get(0).facts().get(0);
    assertEquals("15 days", open.figure());
    assertEquals(
        "total-glycerin, stop: 5 signals, weighted mean beyond its limit, result beyond the action"
            + " limit, 16 to 29 October 2026",
        open.words());
  }

  @Test
  void noOpenSignalIsNotCalledNoProblem() {
    Findings quiet =
        Invented.findings("Tidewick", Invented.accounting(0), List.of(Invented.acid()));
    Block.Facts facts = FrontFacts.of(quiet);
    assertEquals(
        "under the rules stated; they see sudden steps soon and slow moves late.",
        facts.columns().get(0).facts().get(0).words());
    assertFalse(
        MonthlyReview.of(quiet, "0.1.0").toString().toLowerCase(Locale.ROOT).contains("problem"));
  }

  @Test
  void chanceThatCannotBeSaidIsSaid() {
    Findings young =
        Invented.findings(
            "Tidewick",
            Invented.accounting(0),
            List.of(Invented.youngFattyAcid(1), Invented.nothing()));
    List<Fact> chance = FrontFacts.of(young).columns().get(2).facts();
    assertEquals("?", chance.get(0).figure());
    assertTrue(chance.get(0).words().contains("cannot say"));
    Findings mixed =
        Invented.findings(
            "Tidewick",
            Invented.accounting(0),
            List.of(Invented.youngFattyAcid(1), Invented.acid()));
    assertEquals(
        "of 2 streams cannot say and are not counted",
        FrontFacts.of(mixed).columns().get(2).facts().get(2).words());
  }

  @Test
  void aBenchWithoutMethodsSaysSo() {
    Findings none = Invented.findings("Tidewick", Invented.accounting(0), List.of());
    assertEquals("The bench has no method that could be judged.", FrontPage.answer(none));
  }

  @Test
  void calibrationsInEveryState() {
    Drift window = Invented.glycerin().drift().get(0);
    Drift expired =
        Invented.drift(
            "m",
            "PM-1",
            "C-9",
            40,
            new double[] {1},
            new double[] {0},
            Drift.Decision.EXPIRED,
            Answer.cannotSay("its validity is over"));
    List<Paragraph> said = FrontPage.calibration(expired, Invented.NOW.toLocalDate());
    assertEquals(
        "10 days past the end of validity on calibration C-9, PM-1, 21 October 2026.",
        said.get(0).text());
    assertEquals(1, said.size());
    Drift unrecorded =
        new Drift(
            "PM-1",
            java.util.Optional.empty(),
            java.util.Optional.empty(),
            0,
            List.of(),
            Answer.cannotSay("no calibration"),
            window.allowance(),
            Answer.cannotSay("no calibration"),
            Answer.cannotSay("no calibration"),
            Answer.cannotSay("no calibration"),
            Answer.cannotSay("no calibration"),
            Drift.Decision.CANNOT_SAY);
    assertEquals(
        "No calibration of PM-1 is recorded.",
        FrontPage.calibration(unrecorded, Invented.NOW.toLocalDate()).get(0).text());
    List<Paragraph> young =
        FrontPage.calibration(
            Invented.youngFattyAcid(5).drift().get(0), Invented.NOW.toLocalDate());
    assertEquals(
        "Last safe day: cannot say, needs 3 results in this window, has 2.", young.get(1).text());
  }

  @Test
  void questionsAreHeadingsAndTheAnswerComesFirst() {
    Page page = REVIEW.pages().get(1);
    List<String> questions = new ArrayList<>();
    for (Block block : page.blocks()) {
      if (block instanceof Heading heading) {
        questions.add(heading.question());
      }
    }
    assertEquals(
        List.of(
            "Is it in control?",
            "Is the calibration drifting?",
            "Do readings agree?",
            "What is the process capable of?",
            "Was anything used past its date?",
            "What to do"),
        questions);
    assertInstanceOf(Paragraph.class, page.blocks().get(1));
  }

  @Test
  void everyFigureHasTitleUnitAndCountAndAtMostSixtyWordsBesideIt() {
    int seen = 0;
    for (MethodFindings findings :
        List.of(
            Invented.glycerin(),
            Invented.acid(),
            Invented.youngFattyAcid(5),
            Invented.youngFattyAcid(3),
            Invented.crowded())) {
      for (Figure figure : figures(method(findings))) {
        seen++;
        assertFalse(figure.title().isBlank());
        assertTrue(figure.facts().contains(findings.method().unit().symbol()), figure.facts());
        assertTrue(figure.facts().matches(".*n = \\d+.*"), figure.facts());
        String side = String.join(" ", figure.side().stream().map(Paragraph::text).toList());
        int words = side.split("\\s+", -1).length;
        assertTrue(words <= 60, words + " words: " + side);
        assertFalse(figure.description().isBlank());
      }
    }
    assertEquals(12, seen);
  }

  @Test
  void lettersUnderTheChartAreThoseInTheChart() {
    Figure figure = figures(method(Invented.glycerin())).get(0);
    ControlChart chart = assertInstanceOf(ControlChart.class, figure.chart());
    List<String> drawn =
        chart.rings().stream().map(ControlChart.Ring::letter).filter(l -> !l.isEmpty()).toList();
    assertEquals(List.of("a", "b"), drawn);
    assertEquals("b", figure.under().get(0).letter());
    assertEquals(Colour.ACCENT, figure.under().get(0).colour());
    assertTrue(figure.under().get(0).text().startsWith("open, 16 to 29 October 2026: 5 signals ("));
    assertEquals("a", figure.under().get(1).letter());
    assertEquals(
        "closed (smaller ring), before this period; causes in actions.csv.",
        figure.under().get(1).text());
    assertTrue(
        figure
            .under()
            .get(2)
            .text()
            .startsWith("Cross, or triangle where off the scale: 1 result an action took out."));
  }

  @Test
  void aSignalClosedInThePeriodIsToldWithItsCause() {
    List<Block> blocks =
        ControlSection.of(
            Invented.glycerin(),
            ChartSettings.DEFAULTS,
            new Period(LocalDate.of(2026, 3, 1), LocalDate.of(2026, 3, 31)));
    Figure figure = assertInstanceOf(Figure.class, blocks.get(1));
    assertEquals(
        "closed, 12 March 2026: result beyond the action limit. Cause: bubble in the vial; decided by RO.",
        figure.under().get(1).text());
  }

  @Test
  void manySignalsAreToldWithoutAFlood() {
    Figure figure = figures(method(Invented.busy())).get(0);
    ControlChart chart = assertInstanceOf(ControlChart.class, figure.chart());
    long drawn = chart.rings().stream().filter(r -> !r.letter().isEmpty()).count();
    String told =
        String.join(
            ", ",
            figure.under().stream().map(Block.Caption::letter).filter(l -> !l.isEmpty()).toList());
    assertEquals(drawn, told.split(", ", -1).length);
    assertTrue(
        figure.under().stream()
            .anyMatch(
                c ->
                    c.text()
                        .equals(
                            "closed (smaller ring), before this period; causes in actions.csv.")));
  }

  @Test
  void provisionalLimitsHaveOpenDots() {
    ControlChart young =
        assertInstanceOf(
            ControlChart.class, figures(method(Invented.youngFattyAcid(5))).get(0).chart());
    assertTrue(young.marks().stream().allMatch(m -> m.shape() == Chart.Mark.Shape.OPEN));
    assertTrue(
        text(method(Invented.youngFattyAcid(5)))
            .contains("Provisional (open dots): each is judged"));
    ControlChart none =
        assertInstanceOf(
            ControlChart.class, figures(method(Invented.youngFattyAcid(3))).get(0).chart());
    assertEquals(List.of(), none.levels());
    assertTrue(none.baseline().isEmpty());
  }

  @Test
  void aResultFarAwayIsDrawnAtTheEdge() {
    ControlChart chart =
        assertInstanceOf(ControlChart.class, figures(method(Invented.crowded())).get(0).chart());
    Chart.Mark off =
        chart.marks().stream()
            .filter(m -> m.shape() == Chart.Mark.Shape.OFF)
            .findFirst()
            .orElseThrow();
    assertFalse(chart.value().holds(off.y()));
    assertTrue(chart.rings().stream().allMatch(r -> chart.value().holds(r.y())));
    assertTrue(chart.runs().stream().allMatch(s -> chart.value().holds(s.y())));
  }

  @Test
  void aMethodWithoutResultsSaysSoInsteadOfAnEmptyFrame() {
    Page page = method(Invented.nothing());
    assertEquals(List.of(), figures(page));
    String text = text(page);
    assertTrue(text.contains("Cannot say: there are no control results."));
    assertTrue(text.contains("Cannot say: no calibration of this method is recorded."));
    assertTrue(text.contains("Cannot say: there is no result with two readings to compare."));
    assertTrue(text.contains("Cannot say: there are no product results."));
    assertTrue(
        text(method(Invented.youngFattyAcid(0))).contains("it has no result that is a number."));
    assertTrue(text(method(Invented.youngFattyAcid(1))).contains("its only result, 0.1"));
  }

  @Test
  void whatAPairCanShowDependsOnItsKind() {
    String reRead = text(method(Invented.acid()));
    assertTrue(reRead.contains("nothing about pipetting or preparation"));
  }

  @Test
  void whatThePagesCannotSayIsPrintedWithItsReason() {
    String text = text(method(Invented.acid()));
    assertTrue(
        text.contains("Performance index: cannot say, the shape of the batches is not normal."));
    assertTrue(
        text.contains("Share of measurement: cannot say, needs the intermediate deviation."));
    String young = text(method(Invented.youngFattyAcid(5)));
    assertTrue(young.contains("Cannot say: needs 8 product results, has 5."));
    assertTrue(
        young.contains("Whether it lasts: cannot say, needs 3 results in this window, has 2."));
  }

  @Test
  void resultsPastADateAreListedAndTheRestCounted() {
    OutOfDate one = Invented.glycerin().outOfDate().get(0);
    List<OutOfDate> many = new ArrayList<>();
    for (int i = 0; i < 15; i++) {
      many.add(one);
    }
    many.add(
        new OutOfDate(
            Invented.result("B-1", Role.PRODUCT, 2),
            OutOfDate.Kind.REAGENT_EXPIRY,
            "L-1",
            one.lastDay(),
            9,
            false));
    MethodFindings base = Invented.glycerin();
    List<Block> blocks =
        DatesSection.of(
            new MethodFindings(
                base.method(),
                base.verdict(),
                base.replicates(),
                base.people(),
                base.streams(),
                base.drift(),
                base.precision(),
                base.capability(),
                many,
                new DateCoverage(5, 0, 0, List.of()),
                Slips.NONE),
            AcrossRecords.NOTHING);
    assertEquals(12, assertInstanceOf(Block.Table.class, blocks.get(1)).rows().size());
    assertEquals(
        Paragraph.small(
            "And 3 more results of the period; all are in findings.json. 1 earlier result was made"
                + " past a date."),
        blocks.get(2));
  }

  @Test
  void theLastPageListsEveryRowSetAside() {
    Accounting accounting = Invented.accounting(37);
    Page last = LastPage.of(Invented.findings("Tidewick", accounting, List.of()));
    long sentences =
        last.blocks().stream()
            .filter(
                b ->
                    b instanceof Paragraph p
                        && p.text().startsWith("readings/october.csv, line ")
                        && p.text().endsWith("The row was set aside."))
            .count();
    assertEquals(37, sentences);
    assertEquals(
        Paragraph.lead("449 rows: 408 taken in, 4 met before, 37 set aside."),
        last.blocks().get(1));
    assertTrue(text(last).contains("ab12cd34ef56,") || text(last).contains("ab12cd34ef56]"));
  }

  @Test
  void theLastPageListsSettingsSetAsideAndSaysWhenNoFileCame() {
    Accounting none =
        new Accounting(
            List.of(),
            List.of(),
            List.of(new SetAside("bench.toml", 4, "unit", "", "a method needs a unit", 1)),
            0,
            0);
    String text = text(LastPage.of(Invented.findings("Tidewick", none, List.of())));
    assertTrue(text.contains("bench.toml, line 4, unit: a method needs a unit"));
    assertTrue(text.contains("No file was read."));
    assertEquals(
        "settings not used, see the last pages",
        FrontFacts.of(Invented.findings("Tidewick", none, List.of()))
            .columns()
            .get(1)
            .facts()
            .get(4)
            .words());
  }
}
