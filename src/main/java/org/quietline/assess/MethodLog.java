package org.quietline.assess;

import static java.util.stream.Collectors.groupingBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.quietline.bench.Bench;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.sample.RobustSummary;

/**
 * The results of one method on the scale of logarithms, with what they show about each other: how
 * readings of one result agree, how results of one sample agree, and where results of a kind lie. A
 * result whose own readings disagree says nothing about others.
 */
final class MethodLog {
  private final Method method;
  private final List<Logged> all = new ArrayList<>();
  private final Map<Origin, Logged> byOrigin = new HashMap<>();
  private final Set<Origin> sound = new HashSet<>();
  private final Map<String, List<Logged>> bySample;
  private final Map<String, double[]> levels = new HashMap<>();
  private final Map<Kind, RobustSummary> kinds = new HashMap<>();
  private final Map<Role, RobustSummary> rareKinds = new HashMap<>();
  private final Spread pairs;
  private final Spread repeats;

  /** Results compared as one kind: of a control material, or with ids that begin alike. */
  private record Kind(Role role, String letters) {}

  private MethodLog(Bench bench, Method method, List<Result> results) {
    this.method = method;
    ReportedValues values = ReportedValues.of(bench, method, results);
    for (Result result : results) {
      Logged.of(result, values.of(result), !bench.isExcluded(result))
          .ifPresent(
              logged -> {
                all.add(logged);
                byOrigin.put(result.origin(), logged);
              });
    }
    List<Logged> counted = all.stream().filter(Logged::counts).toList();
    pairs =
        Spread.of(
            counted.stream().filter(l -> l.readings().size() == 2).map(MethodLog::pair).toList());
    Agreement agreement = new Agreement(this);
    List<Logged> agreeing = counted.stream().filter(l -> !agreement.isBroken(l)).toList();
    agreeing.forEach(l -> sound.add(l.result().origin()));
    bySample =
        agreeing.stream()
            .filter(l -> l.result().role() != Role.CONTROL)
            .collect(groupingBy(l -> l.result().sample()));
    bySample.forEach(
        (sample, tested) ->
            levels.put(sample, tested.stream().mapToDouble(Logged::level).sorted().toArray()));
    repeats =
        Spread.of(
            Stream.concat(
                    bySample.values().stream().flatMap(s -> repeats(s).stream()),
                    repeatedControls(agreeing))
                .toList());
    summarise(agreeing);
  }

  static MethodLog of(Bench bench, Method method, List<Result> results) {
    return new MethodLog(bench, method, results);
  }

  private void summarise(List<Logged> sound) {
    Map<Role, List<Logged>> rare = new HashMap<>();
    sound.stream()
        .collect(groupingBy(MethodLog::kind))
        .forEach(
            (kind, members) -> {
              if (members.size() >= Spread.FEWEST) {
                kinds.put(kind, summary(members));
              } else {
                rare.computeIfAbsent(kind.role(), k -> new ArrayList<>()).addAll(members);
              }
            });
    rare.forEach(
        (role, members) -> {
          if (role != Role.CONTROL && members.size() >= Spread.FEWEST) {
            rareKinds.put(role, summary(members));
          }
        });
  }

  private static RobustSummary summary(List<Logged> members) {
    return RobustSummary.of(members.stream().mapToDouble(Logged::level).toArray());
  }

  private static Kind kind(Logged logged) {
    Role role = logged.result().role() == Role.RETEST ? Role.PRODUCT : logged.result().role();
    return new Kind(role, role == Role.CONTROL ? logged.result().sample() : logged.kind());
  }

  private static Spread.At pair(Logged logged) {
    return new Spread.At(
        Logged.mean(logged.readings()), logged.readings().get(0) - logged.readings().get(1));
  }

  /** Each later result of a sample against the others. */
  private List<Spread.At> repeats(List<Logged> sample) {
    return sample.stream()
        .skip(1)
        .map(l -> new Spread.At(others(l), l.level() - others(l)))
        .toList();
  }

  /** Each result of a control against the one before it. */
  private static Stream<Spread.At> repeatedControls(List<Logged> sound) {
    Map<String, Logged> last = new HashMap<>();
    List<Spread.At> seen = new ArrayList<>();
    for (Logged logged : sound) {
      if (logged.result().role() == Role.CONTROL) {
        Logged before = last.put(logged.result().sample(), logged);
        if (before != null) {
          seen.add(new Spread.At(before.level(), logged.level() - before.level()));
        }
      }
    }
    return seen.stream();
  }

  /** The median of the other results of a result's sample. */
  private double others(Logged logged) {
    double[] sorted = levels.getOrDefault(logged.result().sample(), new double[0]);
    int rest = sorted.length - 1;
    int place = Arrays.binarySearch(sorted, logged.level());
    int low = (rest - 1) / 2;
    int high = rest / 2;
    return (sorted[low + (place <= low ? 1 : 0)] + sorted[high + (place <= high ? 1 : 0)]) / 2;
  }

  Method method() {
    return method;
  }

  List<Logged> all() {
    return all;
  }

  Optional<Logged> of(Result result) {
    return Optional.ofNullable(byOrigin.get(result.origin()));
  }

  /** The results of a sample that is no control. */
  List<Logged> ofSample(String sample) {
    return bySample.getOrDefault(sample, List.of());
  }

  /** How readings of one result differ at a level. */
  Optional<RobustSummary> pairsAt(double level) {
    return pairs.at(level);
  }

  /** The median of the results of a sample that is no control. */
  Optional<Double> levelOf(String sample) {
    return Optional.ofNullable(levels.get(sample)).map(RobustSummary::medianOf);
  }

  /** The other results of the same sample. */
  Optional<Witness> sameSample(Logged logged) {
    List<Logged> sample = ofSample(logged.result().sample());
    boolean among = sound.contains(logged.result().origin());
    int others = sample.size() - (among ? 1 : 0);
    if (others < 1 || logged.result().role() == Role.CONTROL) {
      return Optional.empty();
    }
    double expected = among ? others(logged) : levelOf(logged.result().sample()).orElseThrow();
    Optional<Logged> other =
        others > 1 ? Optional.empty() : sample.stream().filter(l -> !isSame(l, logged)).findFirst();
    return repeats
        .at(expected)
        .map(s -> repeated(s, expected))
        .map(s -> Witness.of(Slip.Source.SAME_SAMPLE, expected, s, logged.digit(), other));
  }

  /** Results of one sample differ about zero, and by no less than readings of one result do. */
  private RobustSummary repeated(RobustSummary spread, double level) {
    double readings = pairsAt(level).map(RobustSummary::deviation).orElse(0.0);
    return new RobustSummary(spread.n(), 0, Math.max(spread.deviation(), readings));
  }

  private static boolean isSame(Logged one, Logged other) {
    return one.result().origin().equals(other.result().origin());
  }

  /** The results of the same material or kind, or of kinds too rare to stand alone. */
  Optional<Witness> kindOf(Logged logged) {
    Kind kind = kind(logged);
    RobustSummary own = kinds.get(kind);
    if (own != null) {
      Slip.Source source =
          kind.role() == Role.CONTROL ? Slip.Source.MATERIAL : Slip.Source.SAME_KIND;
      return Optional.of(Witness.of(source, own.median(), own, logged.digit(), Optional.empty()));
    }
    return Optional.ofNullable(rareKinds.get(kind.role()))
        .map(
            s ->
                Witness.of(Slip.Source.SAME_ROLE, s.median(), s, logged.digit(), Optional.empty()));
  }
}
