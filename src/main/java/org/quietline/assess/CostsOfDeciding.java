package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.quietline.assess.CostAdvice.Kind;
import org.quietline.assess.CostAdvice.Option;
import org.quietline.assess.CostAdvice.Point;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.ReleaseSettings.Costs;
import org.quietline.stats.capability.Conformance;
import org.quietline.stats.capability.Conformance.Population;
import org.quietline.stats.capability.Conformance.Risks;
import org.quietline.stats.capability.GuardCost;
import org.quietline.stats.capability.StudentConformance;

/** What do wrong decisions on batches cost? */
final class CostsOfDeciding {
  private static final int STEPS = 60;
  private static final double FROM = -2;
  private static final double TO = 4;

  private CostsOfDeciding() {}

  /** The advice for each instrument; none where no costs are set. */
  static List<Answer<CostAdvice>> ask(
      ReleaseSettings settings, Answer<Capability> capability, Budgets budgets) {
    if (settings.costs().isEmpty()) {
      return List.of();
    }
    List<Answer<CostAdvice>> found = new ArrayList<>();
    for (Uncertainty uncertainty : budgets.statements()) {
      found.add(
          uncertainty.budget().value().isEmpty()
              ? Answer.cannotSay("the uncertainty on " + uncertainty.instrument() + " is not known")
              : advice(
                  settings,
                  settings.costs().get(),
                  capability,
                  uncertainty.instrument(),
                  uncertainty.budget().value().get(),
                  budgets));
    }
    return found;
  }

  private static Answer<CostAdvice> advice(
      ReleaseSettings settings,
      Costs costs,
      Answer<Capability> capability,
      String instrument,
      Uncertainty.Budget budget,
      Budgets budgets) {
    if (capability.value().isEmpty()) {
      return Answer.cannotSay(capability.why().orElseThrow());
    }
    Capability process = capability.value().get();
    if (process.index().value().isEmpty()) {
      return Answer.cannotSay(process.index().why().orElseThrow());
    }
    if (process.shape() != Capability.Shape.NORMAL) {
      return Answer.cannotSay("the batches are not shaped like a normal distribution");
    }
    double scatter = budgets.of(instrument).value().orElseThrow().split().reported().deviation();
    double own = process.deviation() * process.deviation() - scatter * scatter;
    if (own <= 0) {
      return Answer.cannotSay("control results scatter as much as the product results do");
    }
    OptionalDouble lower = process.lowerLimit();
    OptionalDouble upper = process.upperLimit();
    GuardCost cost =
        new GuardCost(
            new Conformance(lower, upper, budget.standard()),
            new Population(process.mean(), Math.sqrt(own)),
            costs.badRelease().doubleValue(),
            costs.rework().doubleValue());
    double rule =
        new StudentConformance(lower, upper, budget.standard(), budget.degreesOfFreedom())
            .guardBand(settings.confidence());
    List<Point> curve = new ArrayList<>();
    double to = Math.max(TO * budget.standard(), 1.2 * rule);
    double from = FROM * budget.standard();
    for (int i = 0; i <= STEPS; i++) {
      double distance = from + (to - from) * i / STEPS;
      curve.add(new Point(distance, cost.cost(distance)));
    }
    return Answer.of(
        new CostAdvice(
            instrument,
            process.batches().size() + process.bounds(),
            process.mean(),
            Math.sqrt(own),
            budget.standard(),
            costs,
            List.of(
                option(Kind.LIMIT, 0, cost),
                option(Kind.RULE, rule, cost),
                option(Kind.CHEAPEST, cost.cheapest(), cost)),
            curve));
  }

  private static Option option(Kind kind, double distance, GuardCost cost) {
    Risks risks = cost.risks(distance);
    return new Option(kind, distance, risks.consumers(), risks.producers(), cost.cost(distance));
  }
}
