package org.quietline.stats.capability;

import java.util.Optional;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.quietline.stats.Interval;
import org.quietline.stats.capability.Conformance.Population;
import org.quietline.stats.capability.Conformance.Risks;
import org.quietline.stats.numeric.Require;

/**
 * What wrong decisions cost on average for every thing judged, against the guard band: the cost of
 * accepting what does not conform times its chance, and that of rejecting what conforms times that.
 *
 * <p>Values are drawn from a normal population and measured once with a normal error. With one
 * limit the cheapest guard band is the one at whose edge the chance of conforming, the population
 * given, is {@code bad/(bad + rework)}. Source: JCGM 106:2012, clauses 9.4 and 9.5.
 *
 * @param conformance the limits and the uncertainty
 * @param population what true values are
 * @param bad the cost of accepting what does not conform, above zero
 * @param rework the cost of rejecting what conforms, above zero, in the same unit
 */
public record GuardCost(Conformance conformance, Population population, double bad, double rework) {
  private static final double REACH = 8;
  private static final int STEPS = 64;

  /**
   * Checks the costs.
   *
   * @param conformance the limits and the uncertainty
   * @param population what true values are
   * @param bad the cost of accepting what does not conform
   * @param rework the cost of rejecting what conforms
   * @throws IllegalArgumentException if a cost is not above zero
   */
  public GuardCost {
    Require.positive(bad, "cost of accepting");
    Require.positive(rework, "cost of rejecting");
  }

  /**
   * The chances of wrong decisions with a guard band.
   *
   * @param guard the width of the guard band, finite; negative accepts beyond the limits
   * @return both risks; where guard bands meet nothing is accepted
   * @throws IllegalArgumentException if the guard band is not finite
   */
  public Risks risks(double guard) {
    Optional<Interval> accepted = conformance.acceptedWith(guard);
    if (accepted.isPresent()) {
      return conformance.risks(population, accepted.get());
    }
    // an empty interval at a limit accepts nothing
    double at = conformance.upper().orElseThrow();
    return conformance.risks(population, new Interval(at, at));
  }

  /**
   * The mean cost of wrong decisions for every thing judged.
   *
   * @param guard the width of the guard band, finite
   * @return the cost, in the unit of the costs
   * @throws IllegalArgumentException if the guard band is not finite
   */
  public double cost(double guard) {
    Risks risks = risks(guard);
    return bad * risks.consumers() + rework * risks.producers();
  }

  /**
   * The guard band of the least cost, to about a thousandth of the uncertainty.
   *
   * @return its width, from −8 to 8 standard uncertainties
   */
  public double cheapest() {
    double u = conformance.uncertainty();
    double best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = -STEPS; i <= STEPS; i++) {
      double guard = REACH * u * i / STEPS;
      double cost = cost(guard);
      if (cost < least) {
        least = cost;
        best = guard;
      }
    }
    double step = REACH * u / STEPS;
    return new BrentOptimizer(1e-8, 1e-3 * u)
        .optimize(
            new MaxEval(200),
            GoalType.MINIMIZE,
            new UnivariateObjectiveFunction(this::cost),
            new SearchInterval(best - step, best + step, best))
        .getPoint();
  }
}
