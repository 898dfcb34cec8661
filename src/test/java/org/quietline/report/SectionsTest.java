package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Answer;
import org.quietline.assess.Capability;
import org.quietline.assess.Concern;
import org.quietline.assess.DateCoverage;
import org.quietline.assess.Drift;
import org.quietline.assess.MaterialBias;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.PairsOfPeriod;
import org.quietline.assess.PersonPairs;
import org.quietline.assess.Replicates;
import org.quietline.assess.Slips;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.assess.Verdict;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Method;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Role;
import org.quietline.bench.Unit;
import org.quietline.report.Block.Caption;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;
import org.quietline.stats.Interval;
import org.quietline.stats.control.ControlLimits;

/** The sections of a method's page in their rarer states. */
class SectionsTest {
  private static final MethodFindings BASE = Invented.glycerin();
  private static final LocalDate TODAY = Invented.NOW.toLocalDate();

  private static MethodFindings with(
      Method method,
      List<StreamFindings> streams,
      List<Drift> drift,
      List<Replicates> replicates,
      List<PersonPairs> people,
      Answer<Capability> capability) {
    return new MethodFindings(
        method,
        BASE.verdict(),
        replicates,
        people,
        streams,
        drift,
        BASE.precision(),
        capability,
        List.of(),
        new DateCoverage(5, 0, 0, List.of()),
        Slips.NONE);
  }

  private static MethodFindings withStream(StreamFindings stream) {
    return with(BASE.method(), List.of(stream), List.of(), List.of(), List.of(), BASE.capability());
  }

  private static StreamFindings changed(
      List<Point> points, Answer<Baseline> baseline, Answer<MaterialBias> bias) {
    StreamFindings s = BASE.streams().get(0);
    return new StreamFindings(
        s.instrument(),
        s.material(),
        points,
        s.pointsInPeriod(),
        baseline,
        s.choiceNotUsed(),
        baseline.value().isPresent() ? s.next() : Optional.empty(),
        s.signals(),
        Invented.price(Answer.cannotSay("the limits are provisional"), 0.003),
        bias,
        s.diagnosis(),
        s.revisions(),
        s.proposal());
  }

  private static Figure figure(List<Block> blocks) {
    return assertInstanceOf(Figure.class, blocks.get(1));
  }

  private static String side(Figure figure) {
    return String.join(" ", figure.side().stream().map(Paragraph::text).toList());
  }

  private static String under(Figure figure) {
    return String.join(" ", figure.under().stream().map(Caption::text).toList());
  }

  private static Baseline basis(ControlLimits.Basis from, boolean chosen) {
    Baseline b = BASE.streams().get(0).baseline().value().orElseThrow();
    return new Baseline(
        b.results(),
        b.from(),
        b.to(),
        chosen,
        b.centre(),
        b.deviation(),
        0.0012,
        b.meanMovingRange(),
        b.sampleDeviation(),
        b.limits(),
        from,
        false,
        b.readingsRangeUpper(),
        b.weightedLower(),
        b.weightedUpper());
  }

  @Test
  void theOriginOfLimitsIsNamed() {
    List<Point> points = BASE.streams().get(0).points();
    for (ControlLimits.Basis from : ControlLimits.Basis.values()) {
      StreamFindings stream =
          changed(points, Answer.of(basis(from, true)), BASE.streams().get(0).bias());
      String side =
          side(
              figure(
                  ControlSection.of(withStream(stream), ChartSettings.DEFAULTS, Invented.OCTOBER)));
      String word =
          switch (from) {
            case MOVING_RANGE -> "2.6587 times the mean moving range 0.003500";
            case SAMPLE_DEVIATION -> "3 times the deviation 0.003000";
            case PREDICTION -> "t prediction with deviation 0.003000";
            case GUARANTEED -> "tolerance form with deviation 0.003000";
            case BETWEEN_GROUPS ->
                "t prediction for a new calibration, deviation between calibrations 0.0012";
          };
      assertTrue(side.contains("Limits: chosen baseline, 20 results, 4 October 2025 to "), side);
      assertTrue(side.contains("; " + word + "."), side);
      assertTrue(side.contains("cannot say, the limits are provisional."), side);
    }
  }

  @Test
  void biasBelowAndUnknownAreSaid() {
    List<Point> points = BASE.streams().get(0).points();
    Answer<Baseline> baseline = BASE.streams().get(0).baseline();
    StreamFindings below =
        changed(points, baseline, Answer.of(new MaterialBias(-0.0012, 0.0031, false)));
    assertTrue(
        under(
                figure(
                    ControlSection.of(withStream(below), ChartSettings.DEFAULTS, Invented.OCTOBER)))
            .endsWith(
                "Baseline mean 0.0012 below the assigned value 0.180; standard uncertainty of the"
                    + " difference 0.0031."));
    StreamFindings unknown =
        changed(points, baseline, Answer.cannotSay("the material has no assigned value"));
    assertTrue(
        under(
                figure(
                    ControlSection.of(
                        withStream(unknown), ChartSettings.DEFAULTS, Invented.OCTOBER)))
            .endsWith("Against the true value: cannot say, the material has no assigned value."));
  }

  @Test
  void censoredResultsAreCountedAndNotDrawn() {
    List<Point> points = new ArrayList<>(BASE.streams().get(0).points());
    Point first = points.get(30);
    points.set(
        30,
        new Point(
            first.at(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            false,
            false,
            Optional.empty(),
            OptionalDouble.empty(),
            Set.of(),
            false,
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            "readings/a.csv",
            9));
    StreamFindings stream =
        changed(points, BASE.streams().get(0).baseline(), BASE.streams().get(0).bias());
    Figure figure =
        figure(ControlSection.of(withStream(stream), ChartSettings.DEFAULTS, Invented.OCTOBER));
    assertTrue(figure.facts().contains("n = 59"), figure.facts());
    assertTrue(under(figure).contains("1 result below or above a bound is not drawn."));
    StreamFindings none =
        changed(points.subList(30, 31), Answer.cannotSay("needs 5 results, has 0"), stream.bias());
    assertTrue(
        ControlSection.of(withStream(none), ChartSettings.DEFAULTS, Invented.OCTOBER)
            .toString()
            .contains("no result that is a number, only results below or above a bound."));
  }

  @Test
  void aGapInTheWeightedMeanBreaksItsLine() {
    List<Point> points = new ArrayList<>(BASE.streams().get(0).points());
    Point p = points.get(30);
    points.set(
        30,
        new Point(
            p.at(),
            p.value(),
            p.range(),
            false,
            false,
            Optional.empty(),
            OptionalDouble.empty(),
            Set.of(),
            false,
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            p.file(),
            p.line()));
    StreamFindings stream =
        changed(points, BASE.streams().get(0).baseline(), BASE.streams().get(0).bias());
    ControlChart chart =
        assertInstanceOf(
            ControlChart.class,
            figure(ControlSection.of(withStream(stream), ChartSettings.DEFAULTS, Invented.OCTOBER))
                .chart());
    assertEquals(2, chart.weightedMean().size());
  }

  @Test
  void aLongHistoryShowsItsLatestYear() {
    List<Point> points = new ArrayList<>();
    for (Point p : BASE.streams().get(0).points()) {
      points.add(
          new Point(
              p.at().minusYears(2),
              p.value(),
              p.range(),
              p.excluded(),
              p.inBaseline(),
              p.judgedBy(),
              p.rangeUpper(),
              p.since(),
              p.restarted(),
              p.calibration(),
              p.weightedMean(),
              p.weightedLower(),
              p.weightedUpper(),
              p.file(),
              p.line()));
    }
    points.addAll(BASE.streams().get(0).points());
    StreamFindings stream =
        changed(points, BASE.streams().get(0).baseline(), BASE.streams().get(0).bias());
    Figure figure =
        figure(ControlSection.of(withStream(stream), ChartSettings.DEFAULTS, Invented.OCTOBER));
    assertTrue(
        figure.facts().matches(".*n = \\d+ of 120, the latest 12 months; .*"), figure.facts());
  }

  private static Drift drift(OptionalDouble allowance, Drift.Decision decision, boolean assigned) {
    Drift d = BASE.drift().get(0);
    List<Drift.Deviation> deviations =
        d.deviations().stream()
            .map(v -> new Drift.Deviation(v.at(), v.day(), v.deviation(), assigned, v.material()))
            .toList();
    return new Drift(
        d.instrument(),
        d.calibration(),
        Optional.empty(),
        d.windows(),
        deviations,
        Answer.of(0.003),
        allowance,
        d.line(),
        Answer.cannotSay("no allowance is set"),
        Answer.cannotSay("no allowance is set"),
        Answer.cannotSay("no allowance is set"),
        decision);
  }

  private static List<Block> section(Drift drift) {
    return DriftSection.of(
        with(BASE.method(), List.of(), List.of(drift), List.of(), List.of(), BASE.capability()),
        TODAY);
  }

  @Test
  void withoutAnAllowanceNoSafeDayIsClaimed() {
    Figure figure =
        figure(section(drift(OptionalDouble.empty(), Drift.Decision.CANNOT_SAY, false)));
    assertTrue(side(figure).contains("No allowance is set, so no last safe day can be given."));
    assertTrue(side(figure).contains("its reference (open: baseline centre)"));
    assertTrue(under(figure).endsWith("Whether it lasts: cannot say, no allowance is set."));
    DriftChart chart = assertInstanceOf(DriftChart.class, figure.chart());
    assertEquals(1, chart.levels().size());
    assertTrue(chart.marks().stream().allMatch(m -> m.shape() == Chart.Mark.Shape.OPEN));
  }

  @Test
  void everyDecisionIsWorded() {
    OptionalDouble allowance = OptionalDouble.of(0.012);
    List<String> said = new ArrayList<>();
    for (Drift.Decision decision : Drift.Decision.values()) {
      String under = under(figure(section(drift(allowance, decision, true))));
      said.add(under.substring(under.indexOf(").") + 3));
    }
    assertEquals(
        List.of(
            "Keep the calibration.",
            "Recalibrate by the last safe day.",
            "Recalibrate now, after a check as found.",
            "The validity is over.",
            "Whether it lasts: cannot say, no allowance is set."),
        said);
  }

  @Test
  void aWindowWithoutResultsIsASentence() {
    Drift d = BASE.drift().get(0);
    Drift empty =
        new Drift(
            "PM-1",
            d.calibration(),
            d.expires(),
            3,
            List.of(),
            Answer.of(0.003),
            d.allowance(),
            Answer.cannotSay("needs 3 results, has 0"),
            Answer.cannotSay("needs 3 results, has 0"),
            Answer.cannotSay("needs 3 results, has 0"),
            Answer.cannotSay("needs 3 results, has 0"),
            Drift.Decision.CANNOT_SAY);
    assertEquals(
        Paragraph.body("Calibration C-31 on PM-1: cannot say, needs 3 results, has 0."),
        section(empty).get(1));
    Drift unrecorded =
        new Drift(
            "PM-1",
            Optional.empty(),
            Optional.empty(),
            0,
            List.of(),
            Answer.of(0.003),
            d.allowance(),
            Answer.cannotSay("no calibration is recorded"),
            Answer.cannotSay("no calibration is recorded"),
            Answer.cannotSay("no calibration is recorded"),
            Answer.cannotSay("no calibration is recorded"),
            Drift.Decision.CANNOT_SAY);
    assertEquals(
        Paragraph.body(
            "No calibration of PM-1 is recorded: cannot say, no calibration is recorded."),
        section(unrecorded).get(1));
  }

  private static Method twoSided(ReplicateKind kind) {
    return new Method(
        "viscosity",
        "Viscosity",
        new Unit("mm2/s"),
        2,
        1,
        kind,
        OptionalInt.empty(),
        Optional.empty(),
        Optional.of(
            new Method.ProductLimits(
                Optional.of(new BigDecimal("0.15")),
                Optional.of(new BigDecimal("0.22")),
                Optional.empty())),
        Method.ShelfLife.NOT_SET,
        Optional.empty());
  }

  @Test
  void freshPortionsShowMoreThanReReading() {
    Replicates many = Invented.pairs("PM-1", Role.PRODUCT, 30, 6, 5);
    MethodFindings findings =
        with(
            twoSided(ReplicateKind.RE_PREPARED),
            List.of(),
            List.of(),
            List.of(many),
            List.of(new PersonPairs("RO", "PM-1", Role.PRODUCT, 30, 0.002, 9, 0.0021, 1, false)),
            BASE.capability());
    PairsOfPeriod far = Invented.policy("PM-1", Role.PRODUCT, 6, 5);
    List<Block> blocks = AgreementSection.of(judged(findings, Verdict.of(List.of()), far));
    Table table = assertInstanceOf(Table.class, blocks.get(1));
    Row row = table.rows().get(0);
    assertEquals(Colour.INK, row.colour());
    assertTrue(
        row.cells()
            .get(2)
            .endsWith(
                "In the period 5 of 6 beyond the limit of their time, chance expects 0.3, more than"
                    + " chance explains: B-1041 on 4 Oct, B-1042 on 5 Oct, B-1043 on 6 Oct and 2"
                    + " more. Reported otherwise: 5 median of three."),
        row.cells().get(2));
    MethodFindings doubted =
        judged(findings, Verdict.of(List.of(new Concern.PairsDisagree(far))), far);
    Table marked = assertInstanceOf(Table.class, AgreementSection.of(doubted).get(1));
    assertEquals(Colour.ACCENT, marked.rows().get(0).colour());
    assertEquals(
        Paragraph.small(
            "Pairs against the others': RO (product, PM-1) 0.0020 against 0.0021 (30 and 9 pairs)."),
        blocks.get(2));
    assertTrue(blocks.get(3).toString().contains("Each reading is a fresh portion"));
  }

  private static MethodFindings judged(
      MethodFindings findings, Verdict verdict, PairsOfPeriod policy) {
    return new MethodFindings(
        findings.method(),
        verdict,
        findings.replicates(),
        findings.people(),
        findings.streams(),
        findings.drift(),
        findings.precision(),
        findings.capability(),
        findings.outOfDate(),
        new DateCoverage(5, 0, 0, List.of()),
        Slips.NONE,
        Invented.free(policy),
        List.of(),
        org.quietline.assess.Batches.NONE);
  }

  @Test
  void batchesAreHeldAgainstBothLimits() {
    List<Capability.Batch> batches = new ArrayList<>();
    double[] values = {0.14, 0.18, 0.19, 0.23, 0.24, 0.25};
    for (int i = 0; i < values.length; i++) {
      batches.add(
          new Capability.Batch(LocalDateTime.of(2026, 10, 1 + i, 9, 0), "V-" + i, values[i]));
    }
    Capability capability =
        new Capability(
            batches,
            0,
            0,
            0,
            OptionalDouble.of(0.15),
            OptionalDouble.of(0.22),
            0.205,
            0.0428,
            4,
            Capability.Shape.NORMAL,
            OptionalDouble.of(0.5),
            Answer.of(new Capability.Index(0.12, 0.01, 400, 9000, new Interval(4e-5, 0.012))),
            Answer.of(0.004));
    Figure figure =
        figure(
            CapabilitySection.of(
                with(
                    twoSided(ReplicateKind.RE_READ),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    Answer.of(capability))));
    assertEquals("mm2/s, n = 6", figure.facts());
    assertTrue(side(figure).contains("4 of 6 beyond (ringed): V-0, V-3, V-4, …."), side(figure));
    assertTrue(
        side(figure)
            .contains("beyond: 400 in a million (95 % interval 40 in a million to 1.2 %)."));
    assertFalse(under(figure).contains("left out"));
    DotChart chart = assertInstanceOf(DotChart.class, figure.chart());
    assertEquals(3, chart.levels().size());
    assertEquals(4, chart.rings().size());
  }

  @Test
  void aFarDeviationIsDrawnAtTheEdgeOnlyIfTheAxisCannotHoldIt() {
    Figure figure = figure(section(drift(OptionalDouble.of(0.012), Drift.Decision.KEEP, true)));
    DriftChart chart = assertInstanceOf(DriftChart.class, figure.chart());
    assertTrue(chart.marks().stream().allMatch(m -> chart.deviation().holds(m.y())));
  }
}
