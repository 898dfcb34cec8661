package org.quietline.assess;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.compare.BinomialTail;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.sample.DuplicateDeviation;

/** Do the readings of one result agree? */
final class ReadingsAgreement {
  /**
   * By the definition of the repeatability limit, the share of pairs that chance puts beyond it.
   */
  static final double SHARE_BEYOND_LIMIT = 0.05;

  /** The fewest pairs on each side for which two people are compared. */
  static final int PAIRS_TO_COMPARE = 8;

  /** Below this chance, after counting the people compared, a person's pairs are said to differ. */
  static final double CHANCE_THAT_TELLS = 0.01;

  private ReadingsAgreement() {}

  /** How pairs agree, for each instrument and role that has pairs, in key order. */
  static List<Replicates> ask(Records records) {
    Map<String, Map<Role, List<Result>>> groups =
        records.results().stream()
            .collect(
                groupingBy(
                    Result::instrument,
                    TreeMap::new,
                    groupingBy(Result::role, TreeMap::new, toList())));
    return groups.values().stream()
        .flatMap(byRole -> byRole.values().stream())
        .flatMap(group -> agreement(records, group).stream())
        .toList();
  }

  private static Optional<Replicates> agreement(Records records, List<Result> group) {
    List<Result> paired = group.stream().filter(r -> hasPair(records, r)).toList();
    if (paired.isEmpty()) {
      return Optional.empty();
    }
    DuplicateDeviation deviation = DuplicateDeviation.of(differences(paired));
    double limit = deviation.repeatabilityLimit();
    List<Result> inPeriod =
        paired.stream().filter(r -> records.period().contains(r.takenAt())).toList();
    List<Result> beyond =
        inPeriod.stream().filter(r -> r.pair().orElseThrow().range() > limit).toList();
    return Optional.of(
        new Replicates(
            group.get(0).instrument(),
            group.get(0).role(),
            records.method().replicateKind(),
            paired.size(),
            group.size() - paired.size(),
            deviation.deviation(),
            deviation.degreesOfFreedom(),
            deviation.interval(0.95),
            limit,
            inPeriod.size(),
            beyond,
            chanceOfSoMany(beyond.size(), inPeriod.size())));
  }

  /** The chance of at least so many pairs beyond a limit that one in twenty passes by chance. */
  static double chanceOfSoMany(int beyond, int pairs) {
    return beyond == 0 ? 1 : BinomialTail.atLeast(beyond, pairs, SHARE_BEYOND_LIMIT);
  }

  /**
   * How each person's pairs compare with everyone else's on the same instrument and kind of sample,
   * where there are enough of both and the levels are alike.
   */
  static List<PersonPairs> askByPerson(Records records) {
    Map<String, Map<Role, List<Result>>> groups =
        records.results().stream()
            .filter(r -> hasPair(records, r) && r.operator().isPresent())
            .collect(
                groupingBy(
                    Result::instrument,
                    TreeMap::new,
                    groupingBy(Result::role, TreeMap::new, toList())));
    List<List<Result>> alike =
        groups.values().stream()
            .flatMap(byRole -> byRole.values().stream())
            .filter(ReadingsAgreement::areLevelsAlike)
            .toList();
    int compared = alike.stream().mapToInt(g -> comparable(g).size()).sum();
    return alike.stream()
        .flatMap(g -> comparable(g).stream().map(person -> compare(person, g, compared)))
        .toList();
  }

  /**
   * Precision may follow the level, so people are compared only where nine tenths of the pairs lie
   * within a factor of two.
   */
  private static boolean areLevelsAlike(List<Result> group) {
    double[] levels =
        group.stream()
            .map(r -> r.pair().orElseThrow())
            .mapToDouble(p -> (p.first() + p.second()) / 2)
            .sorted()
            .toArray();
    double low = levels[levels.length / 20];
    double high = levels[levels.length - 1 - levels.length / 20];
    return low > 0 && high <= 2 * low;
  }

  private static List<String> comparable(List<Result> group) {
    Map<String, Long> pairs =
        group.stream()
            .collect(groupingBy(ReadingsAgreement::operator, TreeMap::new, Collectors.counting()));
    return pairs.entrySet().stream()
        .filter(e -> e.getValue() >= PAIRS_TO_COMPARE)
        .filter(e -> group.size() - e.getValue() >= PAIRS_TO_COMPARE)
        .map(Map.Entry::getKey)
        .toList();
  }

  private static String operator(Result signed) {
    return signed.operator().orElseThrow();
  }

  private static PersonPairs compare(String person, List<Result> group, int compared) {
    DuplicateDeviation own =
        DuplicateDeviation.of(
            differences(group.stream().filter(r -> operator(r).equals(person)).toList()));
    DuplicateDeviation others =
        DuplicateDeviation.of(
            differences(group.stream().filter(r -> !operator(r).equals(person)).toList()));
    double chance = Math.min(1, tail(own, others) * compared);
    return new PersonPairs(
        person,
        group.get(0).instrument(),
        group.get(0).role(),
        own.pairs(),
        own.deviation(),
        others.pairs(),
        others.deviation(),
        chance,
        chance < CHANCE_THAT_TELLS);
  }

  private static double tail(DuplicateDeviation own, DuplicateDeviation others) {
    if (others.deviation() == 0) {
      return own.deviation() == 0 ? 1 : 0;
    }
    return VarianceRatio.of(
            own.deviation(), own.degreesOfFreedom(), others.deviation(), others.degreesOfFreedom())
        .upperTail();
  }

  static boolean hasPair(Records records, Result result) {
    return records.method().replicates() >= 2
        && result.pair().isPresent()
        && !records.bench().isExcluded(result);
  }

  static double[] differences(List<Result> paired) {
    return paired.stream().mapToDouble(r -> r.pair().orElseThrow().range()).toArray();
  }

  /** The control pairs of the method, all instruments together. */
  static List<Result> controlPairs(Records records) {
    return records.of(Role.CONTROL).stream().filter(r -> hasPair(records, r)).toList();
  }
}
