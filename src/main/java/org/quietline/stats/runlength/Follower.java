package org.quietline.stats.runlength;

import java.util.List;
import org.quietline.stats.runlength.Chart.Limits;
import org.quietline.stats.runlength.Chart.Side;

/** A chart that is given actual values, for simulation. */
interface Follower {
  /**
   * Takes one value more.
   *
   * @param value the value
   * @return whether it signals
   */
  boolean signals(double value);

  /**
   * A chart at its start.
   *
   * @param chart the chart
   * @param place where the first value stands: sets begin at place 0 and, counted back, before it
   * @return what follows it
   */
  static Follower of(Chart chart, long place) {
    if (chart instanceof Chart.Individuals single) {
      return value -> Math.abs(value) > single.width();
    }
    if (chart instanceof Chart.WeightedMean mean) {
      return new OfWeightedMean(mean);
    }
    if (chart instanceof Chart.CumulativeSum sum) {
      return new OfCumulativeSum(sum);
    }
    if (chart instanceof Chart.Rules rules) {
      return new OfRules(rules, place);
    }
    List<Follower> all = chart.parts().map(part -> of(part, place)).toList();
    return value -> {
      boolean signal = false;
      for (Follower follower : all) {
        signal |= follower.signals(value);
      }
      return signal;
    };
  }

  /** Follows a weighted mean. */
  final class OfWeightedMean implements Follower {
    private final Chart.WeightedMean chart;
    private final double steady;
    private double mean;
    private double forgotten = 1;

    OfWeightedMean(Chart.WeightedMean chart) {
      this.chart = chart;
      this.steady = chart.width() * Math.sqrt(chart.weight() / (2 - chart.weight()));
    }

    @Override
    public boolean signals(double value) {
      double kept = 1 - chart.weight();
      mean = chart.weight() * value + kept * mean;
      forgotten *= kept * kept;
      return Math.abs(mean)
          > (chart.limits() == Limits.STEADY ? steady : steady * Math.sqrt(1 - forgotten));
    }
  }

  /** Follows cumulative sums. */
  final class OfCumulativeSum implements Follower {
    private final Chart.CumulativeSum chart;
    private double upper;
    private double lower;

    OfCumulativeSum(Chart.CumulativeSum chart) {
      this.chart = chart;
      this.upper = chart.headStart();
      this.lower = chart.headStart();
    }

    @Override
    public boolean signals(double value) {
      upper = Math.max(0, upper + value - chart.reference());
      lower = Math.max(0, lower - value - chart.reference());
      return (chart.side() != Side.LOWER && upper > chart.interval())
          || (chart.side() != Side.UPPER && lower > chart.interval());
    }
  }

  /** Follows run rules. */
  final class OfRules implements Follower {
    private final List<Watch> watches;
    private final int[] memory;
    private double before = Double.NaN;
    private long place;

    OfRules(Chart.Rules chart, long place) {
      this.watches = Watch.of(chart);
      this.memory = new int[watches.size()];
      this.place = place;
    }

    @Override
    public boolean signals(double value) {
      int direction = Double.isNaN(before) ? 0 : Double.compare(value, before);
      before = value;
      boolean met = false;
      for (int w = 0; w < memory.length; w++) {
        int now = watches.get(w).next(memory[w], value, direction, place);
        met |= now < 0;
        memory[w] = now;
      }
      place++;
      return met;
    }
  }
}
