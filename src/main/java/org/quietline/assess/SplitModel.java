package org.quietline.assess;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.quietline.assess.VarianceSplit.Averaged;
import org.quietline.assess.VarianceSplit.Part;
import org.quietline.assess.VarianceSplit.Scatter;
import org.quietline.assess.VarianceSplit.Source;
import org.quietline.bench.Calibration;
import org.quietline.bench.Material;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.Interval;
import org.quietline.stats.mixed.NestedGroups;
import org.quietline.stats.mixed.PivotalComponents;
import org.quietline.stats.mixed.StudentEstimate;
import org.quietline.stats.mixed.VarianceComponents;
import org.quietline.stats.mixed.VarianceEstimate;

/** The fitted components of one control material, for the scatter of any mean of results. */
final class SplitModel {
  /** So many sessions must hold several results before sessions have a component of their own. */
  private static final int SEVERAL = 3;

  private static final double LEVEL = 0.95;

  /** Sets of readings, sessions and calibrations whose mean is printed. */
  private static final int[][] SETS = {
    {1, 1, 1}, {2, 1, 1}, {4, 1, 1}, {2, 2, 1}, {2, 1, 2}, {2, 1, 3}
  };

  private final VarianceComponents fit;
  private final List<Source> sources;
  private final VarianceSplit split;

  private SplitModel(VarianceComponents fit, List<Source> sources, Data data, int replicates) {
    this.fit = fit;
    this.sources = sources;
    this.split = describe(data, replicates);
  }

  /**
   * Where a result stands.
   *
   * @param calibration the calibration behind it
   * @param session its session
   * @param readings how many readings its value rests on
   */
  record Place(String calibration, int session, int readings) {}

  /** One control result. */
  private record Entry(Result result, String calibration, List<Double> readings) {
    double mean() {
      return readings.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    Optional<String> named() {
      return Optional.of(calibration);
    }
  }

  /** A reading with the groups it stands in. */
  private record Row(double value, int calibration, int session, int result) {
    int label(Source source) {
      return switch (source) {
        case CALIBRATION -> calibration;
        case SESSION -> session;
        case RESULT -> result;
        case READING -> throw new IllegalArgumentException("a reading is no group");
      };
    }
  }

  /** The readings of a material's results. */
  private record Data(Material material, List<Entry> entries, List<Row> rows) {
    double[] values() {
      return rows.stream().mapToDouble(Row::value).toArray();
    }

    int[] labels(Source source) {
      return rows.stream().mapToInt(r -> r.label(source)).toArray();
    }

    int groups(Source source) {
      return source == Source.READING
          ? rows.size()
          : (int) Arrays.stream(labels(source)).distinct().count();
    }
  }

  /** Fits one material on one instrument. */
  static Answer<SplitModel> of(Records records, String instrument, Material material) {
    List<Entry> entries = new ArrayList<>();
    for (Result result : records.results()) {
      if (result.role() == Role.CONTROL
          && result.sample().equals(material.key())
          && result.instrument().equals(instrument)) {
        entry(records, result).ifPresent(entries::add);
      }
    }
    if (entries.size() < MethodPrecision.FEWEST) {
      return Answer.cannotSay(
          "needs "
              + MethodPrecision.FEWEST
              + " control results with a calibration behind them, has "
              + entries.size());
    }
    return fitted(records, material, entries);
  }

  private static Optional<Entry> entry(Records records, Result result) {
    if (!records.counts(result)) {
      return Optional.empty();
    }
    List<Double> readings =
        result.readings().stream()
            .filter(Reading.Measured.class::isInstance)
            .limit(records.method().replicates())
            .map(r -> ((Reading.Measured) r).value().doubleValue())
            .toList();
    return records
        .bench()
        .calibrationOf(result)
        .map(Calibration::key)
        .map(key -> new Entry(result, key, readings));
  }

  private static Answer<SplitModel> fitted(
      Records records, Material material, List<Entry> entries) {
    boolean pairs = entries.stream().anyMatch(e -> e.readings.stream().distinct().count() > 1);
    Data data = data(material, entries, pairs);
    List<Source> sources = sources(data, pairs);
    if (sources.size() < 2 || !scattersWithin(data, sources.get(sources.size() - 2))) {
      return Answer.cannotSay("the control results do not tell one source of scatter from another");
    }
    int[][] labels =
        sources.stream().limit(sources.size() - 1L).map(data::labels).toArray(int[][]::new);
    VarianceComponents fit = VarianceComponents.fit(data.values(), NestedGroups.of(labels));
    return Answer.of(new SplitModel(fit, sources, data, records.method().replicates()));
  }

  private static boolean scattersWithin(Data data, Source group) {
    Map<Integer, Double> first = new HashMap<>();
    boolean found = false;
    for (Row row : data.rows) {
      Double other = first.putIfAbsent(row.label(group), row.value);
      found |= other != null && other != row.value;
    }
    return found;
  }

  private static Data data(Material material, List<Entry> entries, boolean pairs) {
    List<List<Entry>> sessions = Sessions.of(entries, Entry::result, Entry::named);
    Map<String, Integer> calibrations = new HashMap<>();
    List<Row> rows = new ArrayList<>();
    int result = 0;
    for (int session = 0; session < sessions.size(); session++) {
      for (Entry entry : sessions.get(session)) {
        int calibration = calibrations.computeIfAbsent(entry.calibration, k -> calibrations.size());
        List<Double> own = pairs ? entry.readings : List.of(entry.mean());
        for (double value : own) {
          rows.add(new Row(value, calibration, session, result));
        }
        result++;
      }
    }
    return new Data(material, List.copyOf(entries), List.copyOf(rows));
  }

  /** The sources that the results tell apart, the outermost first; the last is the residual. */
  private static List<Source> sources(Data data, boolean pairs) {
    List<Source> sources = new ArrayList<>();
    int calibrations = data.groups(Source.CALIBRATION);
    int sessions = data.groups(Source.SESSION);
    int results = data.groups(Source.RESULT);
    if (calibrations > 1) {
      sources.add(Source.CALIBRATION);
    }
    if (several(data) >= SEVERAL && sessions > calibrations) {
      sources.add(Source.SESSION);
    }
    if (results > (sources.contains(Source.SESSION) ? sessions : calibrations)) {
      sources.add(Source.RESULT);
    }
    if (pairs) {
      sources.add(Source.READING);
    }
    return sources;
  }

  /** How many sessions hold several results. */
  private static long several(Data data) {
    Map<Integer, Set<Integer>> results = new HashMap<>();
    for (Row row : data.rows) {
      results.computeIfAbsent(row.session, k -> new HashSet<>()).add(row.result);
    }
    return results.values().stream().filter(r -> r.size() > 1).count();
  }

  private VarianceSplit describe(Data data, int replicates) {
    PivotalComponents pivotal = fit.pivotal();
    List<Part> parts = new ArrayList<>();
    for (int k = 0; k < sources.size(); k++) {
      double[] weights = new double[sources.size()];
      weights[k] = 1;
      parts.add(
          new Part(
              sources.get(k),
              data.groups(sources.get(k)),
              Math.sqrt(fit.components().get(k)),
              root(pivotal.interval(LEVEL, weights))));
    }
    double[] one = weights(List.of(new Place("", 0, replicates)));
    VarianceEstimate reported = fit.sum(one);
    List<Averaged> averaging = new ArrayList<>();
    for (int[] set : SETS) {
      averaging.add(
          new Averaged(set[0], set[1], set[2], ofMean(places(set[0], set[1], set[2])).deviation()));
    }
    StudentEstimate level = fit.coefficient(0);
    return new VarianceSplit(
        data.entries.get(0).result.instrument(),
        data.material.key(),
        level.value(),
        level.standardError(),
        level.degreesOfFreedom(),
        data.rows.size(),
        data.entries.size(),
        data.groups(Source.SESSION),
        data.groups(Source.CALIBRATION),
        data.entries.get(0).result.takenAt(),
        data.entries.get(data.entries.size() - 1).result.takenAt(),
        parts,
        replicates,
        new Scatter(
            reported.deviation(), root(pivotal.interval(LEVEL, one)), reported.degreesOfFreedom()),
        averaging);
  }

  private static Interval root(Interval variances) {
    return new Interval(Math.sqrt(variances.lower()), Math.sqrt(variances.upper()));
  }

  VarianceSplit split() {
    return split;
  }

  /** Places of a set that is the same in each session and calibration. */
  static List<Place> places(int readings, int sessions, int calibrations) {
    List<Place> places = new ArrayList<>();
    for (int c = 0; c < calibrations; c++) {
      for (int s = 0; s < sessions; s++) {
        places.add(new Place("c" + c, c * sessions + s, readings));
      }
    }
    return places;
  }

  /** The variance of the plain mean of results. */
  VarianceEstimate ofMean(List<Place> results) {
    return fit.sum(weights(results));
  }

  /** The part of the mean's variance that lies between calibrations. */
  double ofCalibrations(List<Place> results) {
    List<Weighed> mean = results.stream().map(p -> new Weighed(p, 1.0 / results.size())).toList();
    return component(Source.CALIBRATION) * shared(mean, Place::calibration);
  }

  /** The variance of one component, zero where it has none. */
  double component(Source source) {
    int at = sources.indexOf(source);
    return at < 0 ? 0 : fit.components().get(at);
  }

  /** The variance of one more result less the plain mean of those there are. */
  VarianceEstimate ofDifference(List<Place> results, Place more) {
    List<Weighed> weighed = new ArrayList<>();
    results.forEach(p -> weighed.add(new Weighed(p, -1.0 / results.size())));
    weighed.add(new Weighed(more, 1));
    return fit.sum(sumWeights(weighed));
  }

  /** A result with its factor in a sum of results. */
  private record Weighed(Place place, double factor) {}

  private double[] weights(List<Place> mean) {
    return sumWeights(mean.stream().map(p -> new Weighed(p, 1.0 / mean.size())).toList());
  }

  /**
   * What each component counts for in a sum of results. Where sessions have no component of their
   * own that of results is shared by a session, the careful reading of a mean.
   */
  private double[] sumWeights(List<Weighed> results) {
    double[] weights = new double[sources.size()];
    for (int k = 0; k < weights.length; k++) {
      weights[k] =
          switch (sources.get(k)) {
            case CALIBRATION -> shared(results, Place::calibration);
            case SESSION -> shared(results, Place::session);
            case RESULT ->
                sources.contains(Source.SESSION)
                    ? results.stream().mapToDouble(r -> r.factor * r.factor).sum()
                    : shared(results, Place::session);
            case READING ->
                results.stream().mapToDouble(r -> r.factor * r.factor / r.place.readings).sum();
          };
    }
    return weights;
  }

  private static double shared(List<Weighed> results, Function<Place, Object> group) {
    Map<Object, Double> sums = new LinkedHashMap<>();
    results.forEach(r -> sums.merge(group.apply(r.place), r.factor, Double::sum));
    return sums.values().stream().mapToDouble(f -> f * f).sum();
  }
}
