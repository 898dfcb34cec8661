package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.SplitModel.Place;
import org.quietline.assess.Uncertainty.Budget;
import org.quietline.assess.Uncertainty.Kind;
import org.quietline.assess.Uncertainty.Part;
import org.quietline.assess.VarianceSplit.Source;
import org.quietline.bench.Material;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.mixed.VarianceEstimate;
import org.quietline.stats.sample.DuplicateDeviation;

/** What a result of one method on one instrument is uncertain by, near the product limit. */
final class UncertaintyBudget {
  /**
   * With fewer calibrations, a guard band for 95 % let more than 6 % of results on the limit pass
   * in simulations.
   */
  static final int FEWEST_CALIBRATIONS = 4;

  /** Readings of products count for a level up to so many times lower or higher. */
  private static final double NEAR = 2;

  private static final double TWO_SIDED_95 = 0.025;

  private final SplitModel model;
  private final List<Part> bias;
  private final double moreOfProducts;
  private final double freedomOfProducts;
  private final OptionalDouble limit;
  private final int replicates;

  private UncertaintyBudget(
      SplitModel model,
      List<Part> bias,
      Optional<DuplicateDeviation> products,
      OptionalDouble limit,
      int replicates) {
    this.model = model;
    this.bias = bias;
    double own = model.component(Source.READING);
    this.moreOfProducts =
        products.map(p -> Math.max(0, p.deviation() * p.deviation() - own)).orElse(0.0);
    this.freedomOfProducts = products.map(p -> (double) p.pairs()).orElse(1.0);
    this.limit = limit;
    this.replicates = replicates;
  }

  /** A standard uncertainty with its degrees of freedom. */
  record Combined(double uncertainty, double degreesOfFreedom) {}

  /** The budget of one instrument. */
  static Answer<UncertaintyBudget> of(
      Records records,
      String instrument,
      List<Answer<SplitModel>> models,
      List<OutsideDifference> outside) {
    OptionalDouble limit = limit(records);
    if (models.isEmpty()) {
      return Answer.cannotSay("there is no control result on " + instrument);
    }
    Optional<SplitModel> nearest =
        models.stream()
            .flatMap(m -> m.value().stream())
            .filter(m -> m.split().calibrations() >= FEWEST_CALIBRATIONS)
            .min((a, b) -> Double.compare(distance(a, limit), distance(b, limit)));
    if (nearest.isEmpty()) {
      int most =
          models.stream()
              .flatMap(m -> m.value().stream())
              .mapToInt(m -> m.split().calibrations())
              .max()
              .orElse(0);
      return Answer.cannotSay(
          "needs control results of one material in "
              + FEWEST_CALIBRATIONS
              + " calibrations on "
              + instrument
              + ", has "
              + most);
    }
    SplitModel model = nearest.get();
    return bias(records, model, outside)
        .map(
            b ->
                new UncertaintyBudget(
                    model,
                    b,
                    products(records, instrument, limit.orElse(model.split().level())),
                    limit,
                    records.method().replicates()));
  }

  /** The limit results are held against: the upper one where there is one. */
  private static OptionalDouble limit(Records records) {
    return records
        .method()
        .limits()
        .flatMap(l -> l.upper().or(l::lower))
        .map(v -> OptionalDouble.of(v.doubleValue()))
        .orElse(OptionalDouble.empty());
  }

  private static double distance(SplitModel model, OptionalDouble limit) {
    double level = model.split().level();
    return limit.isPresent() ? Math.abs(level - limit.getAsDouble()) : -level;
  }

  /** How product readings near a level repeat; readings may scatter more at other levels. */
  private static Optional<DuplicateDeviation> products(
      Records records, String instrument, double level) {
    List<Result> pairs =
        records.of(Role.PRODUCT).stream()
            .filter(r -> r.instrument().equals(instrument))
            .filter(r -> ReadingsAgreement.hasPair(records, r))
            .filter(r -> isNear(records.value(r), level))
            .toList();
    return pairs.size() < MethodPrecision.FEWEST
        ? Optional.empty()
        : Optional.of(DuplicateDeviation.of(ReadingsAgreement.differences(pairs)));
  }

  private static boolean isNear(OptionalDouble value, double level) {
    return value.isPresent()
        && value.getAsDouble() * NEAR >= level
        && value.getAsDouble() <= NEAR * level;
  }

  /** The larger of what the assigned value and the outside laboratories say; else the allowance. */
  private static Answer<List<Part>> bias(
      Records records, SplitModel model, List<OutsideDifference> outside) {
    VarianceSplit split = model.split();
    Optional<Material> material =
        records.bench().settings().material(records.method().key(), split.material());
    List<List<Part>> routes = new ArrayList<>();
    material
        .filter(m -> m.assignedValue().isPresent() && m.standardUncertainty().isPresent())
        .ifPresent(
            m ->
                routes.add(
                    List.of(
                        known(
                            Kind.BIAS,
                            Math.abs(split.level() - m.assignedValue().get().doubleValue())),
                        new Part(Kind.BIAS_ERROR, split.errorOfLevel(), split.freedomOfLevel()),
                        known(Kind.REFERENCE, m.standardUncertainty().get().doubleValue()))));
    if (outside.size() >= OutsideDifference.FEWEST_FOR_BIAS) {
      routes.add(outsideParts(outside));
    }
    if (routes.isEmpty() && records.method().allowance().isPresent()) {
      double at = records.method().allowance().get().at(limit(records).orElse(split.level()));
      routes.add(List.of(known(Kind.ALLOWANCE, at / Math.sqrt(3))));
    }
    return routes.stream()
        .max((a, b) -> Double.compare(squares(a), squares(b)))
        .map(Answer::of)
        .orElseGet(
            () ->
                Answer.cannotSay(
                    "nothing tells the bias: needs an assigned-value with its"
                        + " standard-uncertainty for "
                        + split.material()
                        + ", "
                        + OutsideDifference.FEWEST_FOR_BIAS
                        + " samples with an outside laboratory's result, or an allowable-bias"));
  }

  private static List<Part> outsideParts(List<OutsideDifference> outside) {
    double squares = outside.stream().mapToDouble(d -> d.difference() * d.difference()).sum();
    List<Part> parts = new ArrayList<>();
    parts.add(new Part(Kind.OUTSIDE, Math.sqrt(squares / outside.size()), outside.size()));
    outside.stream()
        .flatMapToDouble(d -> d.stated().stream())
        .average()
        .ifPresent(u -> parts.add(known(Kind.OUTSIDE_STATED, u)));
    return parts;
  }

  private static Part known(Kind kind, double uncertainty) {
    return new Part(kind, uncertainty, Double.POSITIVE_INFINITY);
  }

  private static double squares(List<Part> parts) {
    return parts.stream().mapToDouble(p -> p.uncertainty() * p.uncertainty()).sum();
  }

  VarianceSplit split() {
    return model.split();
  }

  /** The plain mean of results, bias and all. */
  Combined ofMean(List<Place> results) {
    VarianceEstimate scatter = model.ofMean(results);
    List<Part> parts = new ArrayList<>(bias);
    parts.add(new Part(Kind.RESULTS, scatter.deviation(), scatter.degreesOfFreedom()));
    parts.add(productPart(results));
    return combined(parts);
  }

  /** What more results of the same calibrations cannot shrink: calibrations and bias. */
  double shared(List<Place> results) {
    return Math.sqrt(model.ofCalibrations(results) + squares(bias));
  }

  /** What the difference of one more result from the mean of those there are scatters by. */
  Combined ofDifference(List<Place> results, Place more) {
    VarianceEstimate scatter = model.ofDifference(results, more);
    double products =
        moreOfProducts
            * (1.0 / more.readings()
                + results.stream().mapToDouble(p -> 1.0 / p.readings()).sum()
                    / (results.size() * (double) results.size()));
    return combined(
        List.of(
            new Part(Kind.RESULTS, scatter.deviation(), scatter.degreesOfFreedom()),
            new Part(Kind.PRODUCT_READINGS, Math.sqrt(products), freedomOfProducts)));
  }

  /** What one more reading differs by from the mean of so many of the same result. */
  Combined ofReading(int readings) {
    double own = model.component(Source.READING) + moreOfProducts;
    double freedom =
        moreOfProducts > 0 ? freedomOfProducts : Math.max(1, model.split().readings() / 2.0);
    return new Combined(Math.sqrt(own * (1 + 1.0 / readings)), freedom);
  }

  private Part productPart(List<Place> results) {
    double share =
        results.stream().mapToDouble(p -> 1.0 / p.readings()).sum()
            / (results.size() * (double) results.size());
    return new Part(Kind.PRODUCT_READINGS, Math.sqrt(moreOfProducts * share), freedomOfProducts);
  }

  static Combined combined(List<Part> parts) {
    double squares = squares(parts);
    double slack =
        parts.stream().mapToDouble(p -> Math.pow(p.uncertainty(), 4) / p.degreesOfFreedom()).sum();
    return new Combined(
        Math.sqrt(squares), slack == 0 ? Double.POSITIVE_INFINITY : squares * squares / slack);
  }

  /** A single reported result of a new calibration, part by part. */
  Budget statement() {
    List<Place> one = List.of(new Place("", 0, replicates));
    Combined all = ofMean(one);
    List<Part> parts = new ArrayList<>();
    for (VarianceSplit.Part part : model.split().parts()) {
      double share = part.source() == Source.READING ? 1.0 / replicates : 1;
      parts.add(
          new Part(
              switch (part.source()) {
                case CALIBRATION -> Kind.CALIBRATIONS;
                case SESSION, RESULT -> Kind.RESULTS;
                case READING -> Kind.READINGS;
              },
              part.deviation() * Math.sqrt(share),
              Double.NaN));
    }
    if (moreOfProducts > 0) {
      parts.add(productPart(one));
    }
    parts.addAll(bias);
    VarianceSplit split = model.split();
    return new Budget(
        split.material(),
        split.level(),
        limit,
        split.calibrations(),
        split.results(),
        replicates,
        split.from(),
        split.to(),
        parts,
        all.uncertainty(),
        all.degreesOfFreedom(),
        Student.exceededWith(TWO_SIDED_95, all.degreesOfFreedom()));
  }
}
