package org.quietline.assess;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.Capability.Batch;
import org.quietline.assess.Capability.Index;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.capability.PerformanceIndex;
import org.quietline.stats.compare.VonNeumannTest;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.NormalShape;
import org.quietline.stats.sample.Summary;
import org.quietline.stats.sample.TruncatedFit;

/** What is the process capable of against the method's limits? */
final class ProcessCapability {
  /** The fewest product results from which a capability is told. */
  static final int FEWEST = 10;

  /** Below this chance the shape is called not normal. */
  static final double CHANCE_THAT_TELLS = 0.01;

  /** From so many results a cut at the limit is looked for. */
  private static final int ENOUGH_TO_SEE_A_CUT = 20;

  /** A likelihood 20 times as large for results that were cut at the limit. */
  private static final double CUT = 3;

  private static final int MOST_EXACT = 1000;

  private ProcessCapability() {}

  static Answer<Capability> ask(Records records, Precision precision) {
    if (records.method().limits().isEmpty()) {
      return Answer.cannotSay("no product limit is set for this method");
    }
    List<Result> products = records.of(Role.PRODUCT);
    List<Batch> batches =
        products.stream()
            .filter(r -> !records.bench().isExcluded(r))
            .flatMap(r -> batch(records, r).stream())
            .toList();
    ProductLimits limits = records.method().limits().get();
    Censored censored = Censored.of(products, limits);
    if (batches.size() < FEWEST) {
      return Answer.cannotSay(
          "needs "
              + FEWEST
              + " product results, has "
              + batches.size()
              + (censored.beyond() == 0
                  ? ""
                  : "; " + censored.beyond() + " more are a bound beyond the limit"));
    }
    double[] values = batches.stream().mapToDouble(Batch::value).toArray();
    Summary summary = Summary.of(values);
    if (summary.deviation() == 0) {
      return Answer.cannotSay(
          "needs product results that differ: all " + batches.size() + " are the same number");
    }
    return Answer.of(
        describe(
            limits,
            batches,
            products.size() - batches.size(),
            censored,
            summary,
            NormalShape.of(values),
            precision));
  }

  private static Optional<Batch> batch(Records records, Result result) {
    OptionalDouble value = records.value(result);
    return value.isPresent()
        ? Optional.of(new Batch(result.takenAt(), result.sample(), value.getAsDouble()))
        : Optional.empty();
  }

  private static Capability describe(
      ProductLimits limits,
      List<Batch> batches,
      int leftOut,
      Censored censored,
      Summary summary,
      NormalShape shape,
      Precision precision) {
    OptionalDouble lower = asDouble(limits.lower());
    OptionalDouble upper = asDouble(limits.upper());
    int beyond =
        censored.beyond()
            + (int)
                batches.stream()
                    .filter(
                        b ->
                            (lower.isPresent() && b.value() < lower.getAsDouble())
                                || (upper.isPresent() && b.value() > upper.getAsDouble()))
                    .count();
    boolean normal = shape.chance() >= CHANCE_THAT_TELLS;
    return new Capability(
        batches,
        leftOut,
        censored.beyond(),
        lower,
        upper,
        summary.mean(),
        summary.deviation(),
        beyond,
        normal,
        shape.chance(),
        refused(batches, censored, beyond, summary, lower, upper)
            .<Answer<Index>>map(Answer::cannotSay)
            .orElseGet(
                () ->
                    normal
                        ? Answer.of(index(summary, lower, upper))
                        : notNormal(batches.size(), beyond)),
        measurementShare(summary, precision));
  }

  /** Why an index would mislead, whatever the shape. */
  private static Optional<String> refused(
      List<Batch> batches,
      Censored censored,
      int beyond,
      Summary summary,
      OptionalDouble lower,
      OptionalDouble upper) {
    if (censored.towardsLimit() > 0) {
      return Optional.of(
          censored.towardsLimit()
              + " results are only a bound on the limit's side, so the spread is not known");
    }
    double wander = chanceOfWandering(batches);
    if (wander < CHANCE_THAT_TELLS) {
      return Optional.of(
          "the batches are not stable: each is more like the one before it than chance allows (chance "
              + (wander < 0.001 ? "under 0.1" : String.format(Locale.ROOT, "%.1f", 100 * wander))
              + " %), so an index would speak of no process");
    }
    boolean cut =
        beyond == 0
            && batches.size() >= ENOUGH_TO_SEE_A_CUT
            && TruncatedFit.of(summary, lower, upper).gain() > CUT;
    return cut
        ? Optional.of(
            "the results stop at the limit as if batches beyond it had been reworked or left out;"
                + " an index of the rest would flatter the process")
        : Optional.empty();
  }

  /** The chance of neighbours so alike; beyond a thousand results by the normal distribution. */
  private static double chanceOfWandering(List<Batch> batches) {
    VonNeumannTest test = VonNeumannTest.of(batches.stream().mapToDouble(Batch::value).toArray());
    double n = test.n();
    return n <= MOST_EXACT
        ? test.chanceBelow()
        : Normal.below((test.ratio() - 2) / Math.sqrt(4 * (n - 2) / ((n - 1) * (n + 1))));
  }

  private static Index index(Summary summary, OptionalDouble lower, OptionalDouble upper) {
    PerformanceIndex index = PerformanceIndex.nearer(summary, lower, upper);
    double lowest = index.lowerBound(0.95);
    int sides = (lower.isPresent() ? 1 : 0) + (upper.isPresent() ? 1 : 0);
    double atMost = Math.min(1e6, sides * 1e6 * PerformanceIndex.shareBeyond(lowest));
    return new Index(index.index(), lowest, index.beyondPerMillion(), atMost);
  }

  /**
   * Product results that are only a bound.
   *
   * @param beyond those whose bound proves them beyond a limit
   * @param towardsLimit those whose bound leaves open how far they reach towards or past a limit
   */
  private record Censored(int beyond, int towardsLimit) {
    static Censored of(List<Result> products, ProductLimits limits) {
      int beyond = 0;
      int towards = 0;
      for (Result product : products) {
        boolean proven = false;
        boolean open = false;
        for (Reading reading : product.readings()) {
          if (reading instanceof Reading.Above above && limits.upper().isPresent()) {
            open = true;
            proven |= above.bound().compareTo(limits.upper().get()) >= 0;
          } else if (reading instanceof Reading.Below below && limits.lower().isPresent()) {
            open = true;
            proven |= below.bound().compareTo(limits.lower().get()) <= 0;
          }
        }
        beyond += proven ? 1 : 0;
        towards += open ? 1 : 0;
      }
      return new Censored(beyond, towards);
    }
  }

  private static Answer<Index> notNormal(int batches, int beyond) {
    return Answer.cannotSay(
        "the results are not shaped like a normal distribution, so the usual index would mislead; "
            + beyond
            + " of "
            + batches
            + " are beyond the limit");
  }

  private static Answer<Double> measurementShare(Summary summary, Precision precision) {
    return precision.intermediate().value().isEmpty()
        ? Answer.cannotSay(precision.intermediate().why().orElseThrow())
        : share(precision.intermediate().value().get() / summary.deviation());
  }

  private static Answer<Double> share(double ratio) {
    return ratio < 1
        ? Answer.of(ratio * ratio)
        : Answer.cannotSay("control results scatter as much as the product results do");
  }

  private static OptionalDouble asDouble(Optional<java.math.BigDecimal> limit) {
    return limit.isPresent()
        ? OptionalDouble.of(limit.get().doubleValue())
        : OptionalDouble.empty();
  }
}
