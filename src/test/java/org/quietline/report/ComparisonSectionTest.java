package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Answer;
import org.quietline.assess.Batches;
import org.quietline.assess.CostAdvice;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutsideDifference;
import org.quietline.assess.OutsideScore;
import org.quietline.assess.PairedAgreement;
import org.quietline.assess.PairedAgreement.Line;
import org.quietline.assess.PairedAgreement.Point;
import org.quietline.assess.PairedComparison;
import org.quietline.assess.PairedComparison.Kind;
import org.quietline.assess.PairedComparison.Verdict;
import org.quietline.bench.ReleaseSettings.Costs;
import org.quietline.report.Block.Figure;
import org.quietline.stats.Interval;

/** Comparisons with others and costs of deciding, as the review prints them. */
class ComparisonSectionTest {
  private static final MethodFindings BASE = Invented.glycerin();

  private static MethodFindings with(Batches batches) {
    return new MethodFindings(
        BASE.method(),
        BASE.verdict(),
        BASE.replicates(),
        BASE.people(),
        BASE.streams(),
        BASE.drift(),
        BASE.precision(),
        BASE.capability(),
        BASE.outOfDate(),
        BASE.dates(),
        BASE.slips(),
        BASE.free(),
        BASE.stories(),
        batches);
  }

  private static MethodFindings with(
      List<OutsideScore> scores, List<PairedComparison> comparisons) {
    return with(new Batches(List.of(), scores, comparisons, List.of(), List.of()));
  }

  private static PairedComparison comparison(
      Verdict verdict, OptionalInt needed, Answer<PairedAgreement> agreement) {
    return new PairedComparison(
        Kind.REAGENT_LOT,
        "L7",
        "L8",
        4,
        0.0012,
        0.002,
        Answer.of(
            new PairedComparison.Intervals(
                new Interval(-0.002, 0.0044), new Interval(-0.0012, 0.0036))),
        OptionalDouble.of(0.003),
        Answer.of(verdict),
        needed,
        agreement);
  }

  private static PairedAgreement agreement(Interval trend) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      points.add(new Point(0.15 + 0.01 * i + (i % 2 == 0 ? 0.003 : -0.001), 0.15 + 0.01 * i));
    }
    Line line = new Line(1.0246, new Interval(0.974, 1.0735), 0.0003, new Interval(-0.009, 0.0104));
    return new PairedAgreement(
        points,
        new Interval(-0.0031, 0.0139),
        new Interval(-0.0081, -0.0009),
        new Interval(0.0117, 0.0189),
        Optional.of(trend),
        Answer.of(line),
        Answer.cannotSay("the levels are too much alike"),
        OptionalDouble.of(0.4));
  }

  private static void holds(String text, String part) {
    assertTrue(text.contains(part), () -> part + " is not in:\n" + text);
  }

  @Test
  void anUndecidedComparisonSaysHowManyMoreSamplesItNeeds() {
    Answer<PairedAgreement> few = Answer.cannotSay("needs 6 samples, has 4");
    String text =
        BlockText.of(
            ComparisonSection.of(
                with(List.of(), List.of(comparison(Verdict.UNDECIDED, OptionalInt.of(9), few)))));
    holds(
        text,
        "lot L7 less L8 | 4 | +0.0012 | −0.0020 to +0.0044 | cannot say yet: needs about 5 more");
    holds(text, "two one-sided tests");
    String alike =
        BlockText.of(
            ComparisonSection.of(
                with(List.of(), List.of(comparison(Verdict.ALIKE, OptionalInt.of(3), few)))));
    holds(alike, "−0.0020 to +0.0044 | alike");
  }

  @Test
  void manySamplesGetAFigureWithLimitsAndLines() {
    Answer<PairedAgreement> many = Answer.of(agreement(new Interval(-0.03, 0.08)));
    List<Block> blocks =
        ComparisonSection.of(
            with(List.of(), List.of(comparison(Verdict.ALIKE, OptionalInt.of(3), many))));
    Figure figure =
        (Figure) blocks.stream().filter(b -> b instanceof Figure).findFirst().orElseThrow();
    assertEquals("lot L7 less L8", figure.title());
    DotChart chart = assertInstanceOf(DotChart.class, figure.chart());
    assertEquals(12, chart.marks().size());
    assertTrue(chart.marks().stream().allMatch(m -> chart.up().holds(m.y())));
    assertTrue(chart.levels().stream().allMatch(l -> chart.up().holds(l.at())));
    String text = BlockText.of(blocks);
    holds(text, "About 95 of 100 such differences lie between −0.0031 and +0.0139.");
    holds(text, "Nothing shows that it depends on the level; it may change by −3 % to +8 %");
    holds(text, "slope 1.025 (0.974 to 1.074), intercept +0.0003 (−0.0090 to +0.0104)");
    holds(text, "Passing–Bablok: cannot say, the levels are too much alike");
    holds(text, "30 samples over all levels are advised");
    Answer<PairedAgreement> steep = Answer.of(agreement(new Interval(0.02, 0.08)));
    holds(
        BlockText.of(
            ComparisonSection.of(
                with(List.of(), List.of(comparison(Verdict.ALIKE, OptionalInt.of(3), steep))))),
        "It depends on the level, or the two scatter differently: it changes by +2 % to +8 %");
  }

  @Test
  void scoresArePrintedOnlyWhereUncertaintiesAreStated() {
    List<OutsideScore> scores =
        List.of(
            score("B-1", OptionalDouble.of(0.004), Answer.of(1.5784), Answer.cannotSay("none")),
            score(
                "B-2",
                OptionalDouble.of(0.004),
                Answer.cannotSay("own"),
                Answer.of(new OutsideScore.Round(1.344, true))),
            score(
                "B-3",
                OptionalDouble.empty(),
                Answer.cannotSay("stated"),
                Answer.of(new OutsideScore.Round(-2.1, false))));
    String text =
        BlockText.of(
            ComparisonSection.of(
                with(
                    scores,
                    List.of(
                        comparison(
                            Verdict.DIFFERENT, OptionalInt.empty(), Answer.cannotSay("few"))))));
    holds(text, "B-1, 2026-10-01 | 0.2310 | 0.2140 | +0.0170 | 0.79 | no round");
    holds(text, "B-2, 2026-10-01 | 0.2310 | 0.2140 | +0.0170 | own not known | 1.34 (z′)");
    holds(text, "B-3, 2026-10-01 | 0.2310 | 0.2140 | +0.0170 | none stated | −2.10");
    holds(text, "| different");
  }

  private static OutsideScore score(
      String sample, OptionalDouble stated, Answer<Double> zeta, Answer<OutsideScore.Round> round) {
    return new OutsideScore(
        new OutsideDifference(
            sample,
            "PM-1",
            "Invented Lab",
            Optional.of(LocalDate.of(2026, 10, 1)),
            0.231,
            1,
            0.214,
            stated,
            OptionalDouble.empty(),
            "outside.csv",
            2),
        zeta,
        round);
  }

  @Test
  void costsAreAdviceBesideTheRule() {
    CostAdvice advice =
        new CostAdvice(
            "PM-1",
            31,
            0.184,
            0.022,
            0.0051,
            new Costs(new BigDecimal("4000"), new BigDecimal("250")),
            List.of(
                new CostAdvice.Option(CostAdvice.Kind.LIMIT, 0, 0.0011, 0.0023, 5.1),
                new CostAdvice.Option(CostAdvice.Kind.RULE, 0.0084, 6.5e-5, 0.013, 3.5),
                new CostAdvice.Option(CostAdvice.Kind.CHEAPEST, -0.0053, 2e-7, 0.0075, 2.8)),
            List.of(
                new CostAdvice.Point(-0.01, 17),
                new CostAdvice.Point(0, 5),
                new CostAdvice.Point(0.02, 13)));
    String text =
        BlockText.of(
            CostSection.of(
                with(
                    new Batches(
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(Answer.of(advice), Answer.cannotSay("it is not known")),
                        List.of()))));
    holds(text, "At the limit itself: of 1000 batches 1.1 bad released, 2.3 good held; costs 5.1");
    holds(text, "The rule keeps 0.0084: of 1000 batches 0.065 bad released, 13 good held");
    holds(text, "Cheapest 0.0053 beyond the limit: of 1000 batches under 0.01 bad released");
    holds(text, "A bad batch released costs 4000, a good one held 250. True values as 31 batches");
    holds(text, "Advice beside the rule");
    holds(text, "Cannot say: it is not known.");
    assertTrue(CostSection.of(with(Batches.NONE)).isEmpty());
    assertTrue(ComparisonSection.of(with(Batches.NONE)).isEmpty());
  }
}
