package org.quietline.stats.runlength;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.stats.control.RunRule;
import org.quietline.stats.runlength.Chart.Side;

/** Which walk a chart takes, if its chances can be followed exactly. */
final class Walks {
  private double width = Double.POSITIVE_INFINITY;
  private final List<Chart.Rules> rules = new ArrayList<>();
  private final List<Chart.WeightedMean> means = new ArrayList<>();
  private final List<Chart.CumulativeSum> sums = new ArrayList<>();

  private Walks(Chart chart) {
    chart.parts().forEach(this::sort);
  }

  /**
   * The walk of a chart from its start.
   *
   * @param chart the chart
   * @return the walk, or nothing where none of ours is exact
   */
  static Optional<Walk> of(Chart chart) {
    return new Walks(chart).walk();
  }

  private void sort(Chart part) {
    if (part instanceof Chart.Individuals single) {
      width = Math.min(width, single.width());
    } else if (part instanceof Chart.WeightedMean mean) {
      if (mean.weight() == 1) {
        width = Math.min(width, mean.width());
      } else {
        means.add(mean);
      }
    } else if (part instanceof Chart.CumulativeSum sum) {
      sums.add(sum);
    } else if (part instanceof Chart.Rules set) {
      sort(set);
    }
  }

  /** A single value against limits is no rule for a chain where it is looked at each time. */
  private void sort(Chart.Rules set) {
    List<RunRule> others = new ArrayList<>();
    for (RunRule rule : set.rules()) {
      if (set.every() == 1 && rule instanceof RunRule.Beyond beyond && beyond.of() == 1) {
        width = Math.min(width, beyond.zone());
      } else if (set.every() == 1 && rule instanceof RunRule.EitherSide e && e.of() == 1) {
        width = Math.min(width, e.zone());
      } else {
        others.add(rule);
      }
    }
    if (!others.isEmpty()) {
      rules.add(new Chart.Rules(others, set.every()));
    }
  }

  private Optional<Walk> walk() {
    int kinds = (rules.isEmpty() ? 0 : 1) + means.size() + sums.size();
    if (kinds > 1) {
      return Optional.empty();
    }
    if (!means.isEmpty()) {
      return Optional.of(new WeightedMeanWalk(means.get(0), width));
    }
    if (!sums.isEmpty()) {
      return Optional.of(sum(sums.get(0)));
    }
    if (width < Double.POSITIVE_INFINITY) {
      rules.add(Chart.rules(new RunRule.Beyond(1, 1, width)));
    }
    return ZoneChain.of(rules)
        .map(chain -> chain.compares() ? new ComparisonWalk(chain) : new ZoneWalk(chain));
  }

  private Walk sum(Chart.CumulativeSum sum) {
    double k = sum.reference();
    double h = sum.interval();
    if (sum.side() == Side.BOTH) {
      return TwoSidedSumWalk.of(k, h, sum.headStart(), width);
    }
    Walk upper = CumulativeSumWalk.of(k, h, sum.headStart(), width);
    return sum.side() == Side.UPPER ? upper : new Mirrored(upper);
  }

  /** The same chart upside down. */
  private static final class Mirrored implements Walk {
    private final Walk walk;

    Mirrored(Walk walk) {
      this.walk = walk;
    }

    @Override
    public double step(double mean) {
      return walk.step(-mean);
    }

    @Override
    public double[] standing() {
      return walk.standing();
    }
  }
}
