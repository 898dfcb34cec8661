package org.quietline.assess;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.Capability.Batch;
import org.quietline.assess.Capability.Index;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.compare.VonNeumannTest;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.sample.Summary;

/** What is the process capable of against the method's limits? */
final class ProcessCapability {
  /** The fewest product results from which a capability is told. */
  static final int FEWEST = 10;

  private static final int MOST_EXACT = 1000;

  private final Precision precision;
  private final List<Batch> batches;
  private final int products;
  private final BoundedResults bounds;
  private final OptionalDouble lower;
  private final OptionalDouble upper;

  private ProcessCapability(
      Precision precision,
      List<Batch> batches,
      int products,
      BoundedResults bounds,
      ProductLimits limits) {
    this.precision = precision;
    this.batches = batches;
    this.products = products;
    this.bounds = bounds;
    this.lower = asDouble(limits.lower());
    this.upper = asDouble(limits.upper());
  }

  static Answer<Capability> ask(Records records, Precision precision) {
    if (records.method().limits().isEmpty()) {
      return Answer.cannotSay("no product limit is set for this method");
    }
    ProductLimits limits = records.method().limits().get();
    List<Result> products = records.of(Role.PRODUCT);
    List<Result> kept = products.stream().filter(r -> !records.bench().isExcluded(r)).toList();
    List<Batch> batches = kept.stream().flatMap(r -> batch(records, r).stream()).toList();
    return new ProcessCapability(
            precision, batches, products.size(), BoundedResults.of(kept, limits), limits)
        .ask();
  }

  private static Optional<Batch> batch(Records records, Result result) {
    OptionalDouble value = records.value(result);
    return value.isPresent()
        ? Optional.of(new Batch(result.takenAt(), result.sample(), value.getAsDouble()))
        : Optional.empty();
  }

  private Answer<Capability> ask() {
    if (batches.size() < FEWEST) {
      return Answer.cannotSay(
          "needs "
              + FEWEST
              + " product results, has "
              + batches.size()
              + (bounds.beyond() == 0
                  ? ""
                  : "; " + bounds.beyond() + " more are a bound beyond the limit"));
    }
    double[] values = batches.stream().mapToDouble(Batch::value).toArray();
    if (Summary.of(values).deviation() == 0) {
      return Answer.cannotSay(
          "needs product results that differ: all " + batches.size() + " are the same number");
    }
    Optional<ProductSpread> bounded = bounded(values);
    ProductSpread spread = bounded.orElseGet(() -> ProductSpread.Numbers.of(values, lower, upper));
    int beyond =
        bounds.beyond()
            + (int)
                batches.stream()
                    .filter(
                        b ->
                            b.value() < lower.orElse(Double.NEGATIVE_INFINITY)
                                || b.value() > upper.orElse(Double.POSITIVE_INFINITY))
                    .count();
    int used = bounded.isPresent() ? bounds.below().size() : 0;
    return Answer.of(
        new Capability(
            batches,
            products - batches.size() - used,
            used,
            bounds.beyond(),
            lower,
            upper,
            spread.mean(),
            spread.deviation(),
            beyond,
            spread.shape(),
            spread.normalChance(),
            index(spread, beyond),
            measurementShare(spread)));
  }

  /** Where results away from an upper limit are bounds, and at most half of all. */
  private Optional<ProductSpread> bounded(double... values) {
    return bounds.below().isEmpty() || upper.isEmpty() || bounds.below().size() > values.length
        ? Optional.empty()
        : ProductSpread.Bounded.of(values, bounds.below(), upper.getAsDouble()).map(b -> b);
  }

  private Answer<Index> index(ProductSpread spread, int beyond) {
    return refused(spread, beyond)
        .<Answer<Index>>map(Answer::cannotSay)
        .orElseGet(
            () ->
                spread
                    .index()
                    .map(Answer::of)
                    .orElse(
                        Answer.cannotSay(
                            "the results are shaped like neither a normal nor a lognormal"
                                + " distribution, so an index would mislead; "
                                + beyond
                                + " of "
                                + batches.size()
                                + " are beyond the limit")));
  }

  /** Why an index would mislead, whatever the shape. */
  private Optional<String> refused(ProductSpread spread, int beyond) {
    if (bounds.towardsLimit() > 0) {
      return Optional.of(
          bounds.towardsLimit()
              + " results are only a bound on the limit's side, so the spread is not known");
    }
    if (bounds.aside() > 0 || bounds.below().size() > batches.size()) {
      return Optional.of(
          bounds.aside()
              + bounds.below().size()
              + " results are only a bound, so the spread is not known");
    }
    double wander = chanceOfWandering();
    if (wander < ProductSpread.CHANCE_THAT_TELLS) {
      return Optional.of(
          "the batches are not stable: each is more like the one before it than chance allows (chance "
              + (wander < 0.001 ? "under 0.1" : String.format(Locale.ROOT, "%.1f", 100 * wander))
              + " %), so an index would speak of no process");
    }
    return beyond == 0 && spread.isCut()
        ? Optional.of(
            "the results stop at the limit as if batches beyond it had been reworked or left out;"
                + " an index of the rest would flatter the process")
        : Optional.empty();
  }

  /** The chance of neighbours so alike; beyond a thousand results by the normal distribution. */
  private double chanceOfWandering() {
    VonNeumannTest test = VonNeumannTest.of(batches.stream().mapToDouble(Batch::value).toArray());
    double n = test.n();
    return n <= MOST_EXACT
        ? test.chanceBelow()
        : Normal.below((test.ratio() - 2) / Math.sqrt(4 * (n - 2) / ((n - 1) * (n + 1))));
  }

  private Answer<Double> measurementShare(ProductSpread spread) {
    return precision.intermediate().value().isEmpty()
        ? Answer.cannotSay(precision.intermediate().why().orElseThrow())
        : share(precision.intermediate().value().get() / spread.deviation());
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
