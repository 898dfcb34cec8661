package org.quietline.assess;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.quietline.assess.Capability.Index;
import org.quietline.assess.Capability.Shape;
import org.quietline.stats.capability.CensoredIndex;
import org.quietline.stats.capability.PerformanceIndex;
import org.quietline.stats.compare.BinomialTail;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.CensoredNormal;
import org.quietline.stats.sample.CensoredSample;
import org.quietline.stats.sample.NormalShape;
import org.quietline.stats.sample.Summary;
import org.quietline.stats.sample.TruncatedFit;

/**
 * How product results spread, and the index that follows: of the numbers for a normal shape, of
 * their logarithms for a lognormal one, of a fitted population where some are only bounds.
 */
sealed interface ProductSpread {
  /** Below this chance the shape is called not normal. */
  double CHANCE_THAT_TELLS = 0.01;

  /** What the results are shaped like. */
  Shape shape();

  /** The chance of a shape at least so far from normal, if it can be told. */
  OptionalDouble normalChance();

  double mean();

  double deviation();

  /** The index; nothing where the shape allows none. */
  Optional<Index> index();

  /** Whether the results stop at a limit as if those beyond it had been taken away. */
  boolean isCut();

  private static double perMillion(double share) {
    return Math.min(1e6, 1e6 * share);
  }

  /** The logarithm of the likelihood's ratio that tells: twenty times as likely. */
  double TELLS = 3;

  /**
   * All results are numbers.
   *
   * @param shape their shape
   * @param normalChance the chance of a shape at least so far from normal
   * @param values their summary
   * @param working that of their logarithms for a lognormal shape, else the same
   * @param lower the lower limit on that scale, if any
   * @param upper the upper limit on that scale, if any
   */
  record Numbers(
      Shape shape,
      OptionalDouble normalChance,
      Summary values,
      Summary working,
      OptionalDouble lower,
      OptionalDouble upper)
      implements ProductSpread {
    private static final int ENOUGH_TO_SEE_A_CUT = 20;

    static Numbers of(double[] values, OptionalDouble lower, OptionalDouble upper) {
      Summary summary = Summary.of(values);
      double chance = NormalShape.of(values).chance();
      boolean positive = Arrays.stream(values).min().orElseThrow() > 0 && upper.orElse(1) > 0;
      boolean normal = chance >= CHANCE_THAT_TELLS;
      if (!normal && positive) {
        double[] logs = Arrays.stream(values).map(Math::log).toArray();
        if (NormalShape.of(logs).chance() >= CHANCE_THAT_TELLS) {
          return new Numbers(
              Shape.LOGNORMAL,
              OptionalDouble.of(chance),
              summary,
              Summary.of(logs),
              // a lower limit at zero or below is never crossed
              lower.orElse(0) > 0 ? mapped(lower, Math::log) : OptionalDouble.empty(),
              mapped(upper, Math::log));
        }
      }
      return new Numbers(
          normal ? Shape.NORMAL : Shape.NEITHER,
          OptionalDouble.of(chance),
          summary,
          summary,
          lower,
          upper);
    }

    private static OptionalDouble mapped(OptionalDouble value, DoubleUnaryOperator to) {
      return value.isPresent()
          ? OptionalDouble.of(to.applyAsDouble(value.getAsDouble()))
          : OptionalDouble.empty();
    }

    @Override
    public double mean() {
      return values.mean();
    }

    @Override
    public double deviation() {
      return values.deviation();
    }

    private boolean hasLimit() {
      return lower.isPresent() || upper.isPresent();
    }

    @Override
    public Optional<Index> index() {
      if (shape == Shape.NEITHER || !hasLimit()) {
        return Optional.empty();
      }
      PerformanceIndex index = PerformanceIndex.nearer(working, lower, upper);
      double lowest = index.lowerBound(0.95);
      int sides = (lower.isPresent() ? 1 : 0) + (upper.isPresent() ? 1 : 0);
      return Optional.of(
          new Index(
              index.index(),
              lowest,
              index.beyondPerMillion(),
              perMillion(sides * PerformanceIndex.shareBeyond(lowest)),
              index.shareBeyondInterval(0.95)));
    }

    @Override
    public boolean isCut() {
      return values.n() >= ENOUGH_TO_SEE_A_CUT
          && hasLimit()
          && TruncatedFit.of(working, lower, upper).gain() > TELLS;
    }
  }

  /**
   * Some results are known only to lie below a bound, away from the one limit, an upper one.
   *
   * @param censored the index of the population fitted to numbers and bounds
   */
  record Bounded(CensoredIndex censored) implements ProductSpread {
    /**
     * The fit to the likelier shape: lognormal only where it is twenty times as likely. Nothing
     * where no shape can be told, or so many results as low as the bounds do not belong to it.
     */
    static Optional<Bounded> of(double[] values, List<Double> below, double upper) {
      CensoredSample sample =
          CensoredSample.of(values)
              .withBelow(below.stream().mapToDouble(Double::doubleValue).toArray());
      if (!(sample.fit(CensoredSample.Shape.NORMAL) instanceof CensoredNormal normal)) {
        return Optional.empty();
      }
      boolean positive =
          Arrays.stream(values).min().orElseThrow() > 0
              && below.stream().allMatch(b -> b > 0)
              && upper > 0;
      CensoredNormal chosen = normal;
      if (positive
          && sample.fit(CensoredSample.Shape.LOGNORMAL) instanceof CensoredNormal lognormal) {
        double change = -Arrays.stream(values).map(Math::log).sum();
        if (lognormal.logLikelihood() + change > normal.logLikelihood() + TELLS) {
          chosen = lognormal;
        }
      }
      return belong(chosen, below, sample.n())
          ? Optional.of(new Bounded(new CensoredIndex(chosen, sample.n(), upper)))
          : Optional.empty();
    }

    /** Whether so many values may lie below the highest bound, by the population fitted. */
    private static boolean belong(CensoredNormal fit, List<Double> below, int n) {
      double highest = Collections.max(below);
      double working = fit.shape() == CensoredSample.Shape.NORMAL ? highest : Math.log(highest);
      double share = Normal.below((working - fit.location()) / fit.scale());
      return BinomialTail.atLeast(below.size(), n, share) >= CHANCE_THAT_TELLS;
    }

    @Override
    public Shape shape() {
      return censored.fit().shape() == CensoredSample.Shape.NORMAL ? Shape.NORMAL : Shape.LOGNORMAL;
    }

    @Override
    public OptionalDouble normalChance() {
      return OptionalDouble.empty();
    }

    @Override
    public double mean() {
      return censored.fit().mean();
    }

    @Override
    public double deviation() {
      return censored.fit().deviation();
    }

    @Override
    public Optional<Index> index() {
      double lowest = censored.lowerBound(0.95);
      return Optional.of(
          new Index(
              censored.index(),
              lowest,
              perMillion(censored.shareBeyond()),
              perMillion(PerformanceIndex.shareBeyond(lowest)),
              censored.shareBeyondInterval(0.95)));
    }

    @Override
    public boolean isCut() {
      return false;
    }
  }
}
