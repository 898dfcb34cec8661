package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.Answer;
import org.quietline.assess.CostAdvice;
import org.quietline.assess.CostAdvice.Kind;
import org.quietline.assess.CostAdvice.Option;
import org.quietline.assess.CostAdvice.Point;
import org.quietline.assess.MethodFindings;
import org.quietline.report.Block.Caption;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Chart.Spot;
import org.quietline.report.Chart.Upright;

/** "What do wrong decisions on batches cost?" */
final class CostSection {
  private static final double HEIGHT = 92;

  private final MethodFindings findings;
  private final Numbers numbers;

  private CostSection(MethodFindings findings) {
    this.findings = findings;
    this.numbers = new Numbers(findings.method().decimals());
  }

  /** The section of one method; nothing where no costs are set. */
  static List<Block> of(MethodFindings findings) {
    List<Block> blocks = new ArrayList<>();
    CostSection section = new CostSection(findings);
    if (!findings.batches().costs().isEmpty()) {
      blocks.add(new Heading("What do wrong decisions on batches cost?"));
    }
    for (Answer<CostAdvice> advice : findings.batches().costs()) {
      blocks.add(
          advice
              .value()
              .<Block>map(section::figure)
              .orElseGet(() -> Paragraph.body("Cannot say: " + advice.why().orElseThrow() + ".")));
    }
    return blocks;
  }

  private Figure figure(CostAdvice advice) {
    List<Paragraph> side = new ArrayList<>();
    for (Option option : advice.options()) {
      side.add(
          Paragraph.small(sentence(option))
              .in(option.kind() == Kind.RULE ? Colour.INK : Colour.GREY));
    }
    return new Figure(
        "Cost of wrong decisions for every batch on " + advice.instrument(),
        "in the unit of the costs set, against the distance kept from the limit, "
            + findings.method().unit(),
        side,
        chart(advice),
        HEIGHT,
        List.of(Caption.of(footnote(advice))),
        "Curve of the cost of wrong decisions against the distance kept from the limit.");
  }

  private String sentence(Option option) {
    String which =
        switch (option.kind()) {
          case LIMIT -> "At the limit itself";
          case RULE -> "The rule keeps " + numbers.fine(option.distance());
          case CHEAPEST ->
              "Cheapest "
                  + numbers.fine(Math.abs(option.distance()))
                  + (option.distance() < 0 ? " beyond the limit" : " from it");
        };
    return which
        + ": of 1000 batches "
        + ofThousand(option.badReleased())
        + " bad released, "
        + ofThousand(option.goodHeld())
        + " good held; costs "
        + Numbers.figures(option.cost(), 2)
        + " a batch.";
  }

  private static String ofThousand(double share) {
    return share < 1e-5 ? "under 0.01" : Numbers.figures(1000 * share, 2);
  }

  private static String footnote(CostAdvice advice) {
    return "A bad batch released costs "
        + advice.costs().badRelease().toPlainString()
        + ", a good one held "
        + advice.costs().rework().toPlainString()
        + ". True values as "
        + advice.batches()
        + " batches show them: mean "
        + Numbers.figures(advice.mean(), 3)
        + ", deviation "
        + Numbers.uncertainty(advice.deviation())
        + " without measurement; a result is uncertain by "
        + Numbers.uncertainty(advice.uncertainty())
        + ". Advice beside the rule, which stays as it is; it is only as good as the costs, and as"
        + " the process staying what it was.";
  }

  private static CurveChart chart(CostAdvice advice) {
    List<Double> distances = advice.curve().stream().map(Point::distance).toList();
    List<Double> costs = new ArrayList<>(advice.curve().stream().map(Point::cost).toList());
    costs.add(0.0);
    List<Upright> uprights =
        advice.options().stream()
            .filter(o -> o.distance() >= distances.get(0))
            .filter(o -> o.distance() <= distances.get(distances.size() - 1))
            .map(
                o ->
                    new Upright(
                        o.distance(),
                        switch (o.kind()) {
                          case LIMIT -> "the limit";
                          case RULE -> "the rule";
                          case CHEAPEST -> "cheapest";
                        },
                        o.kind() == Kind.RULE ? Colour.INK : Colour.GREY,
                        o.kind() == Kind.RULE))
            .toList();
    return new CurveChart(
        Axes.around(distances, Axes.MOST_TICKS),
        Axes.around(costs, Axes.FEW_TICKS),
        advice.curve().stream().map(p -> new Spot(p.distance(), p.cost())).toList(),
        uprights);
  }
}
