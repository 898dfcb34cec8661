package org.quietline.assess;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.quietline.assess.ReportedValue.Path;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/**
 * Do more pairs of the period disagree than chance lets, and what became of them? For one
 * instrument and role, each pair against the limit of its own time.
 *
 * <p>One pair in twenty is beyond by chance. With limits from all pairs before it, {@code
 * √2·t(0.975, m)·s}, the pairs of normal readings pass their limits independently of each other,
 * because the sum of squares is independent of the shares that its parts have in it; so the number
 * beyond has the binomial distribution from the first pair judged on, also with few pairs behind
 * the limits. Source of the rule: ISO 5725-6 (limit), common practice (binomial count).
 *
 * @param instrument the instrument's key
 * @param role what the samples were
 * @param pairs pairs of the period, none that an action took out
 * @param judged those among them that had a limit
 * @param beyond results of the period whose pair is beyond its limit, oldest first
 * @param expected how many of those judged chance puts beyond
 * @param chanceOfSoMany chance of at least so many; 1 when there are none
 * @param advisoryAt the fewest that call for attention; empty for fewer than two pairs
 * @param actionAt the fewest that call for action; empty for fewer than two pairs
 * @param standing what so many call for, or why it cannot be said
 * @param paths how many results of the period took which path, none that an action took out
 * @param withoutReading results whose readings disagree, for which a further reading was asked for
 *     and not taken, oldest first
 */
public record PairsOfPeriod(
    String instrument,
    Role role,
    int pairs,
    int judged,
    List<Result> beyond,
    double expected,
    double chanceOfSoMany,
    OptionalInt advisoryAt,
    OptionalInt actionAt,
    Answer<Standing> standing,
    Map<Path, Integer> paths,
    List<Result> withoutReading) {

  /** Below this chance so many pairs beyond call for attention: 3 of 20 (7.5 %). */
  static final double ADVISORY_CHANCE = 0.10;

  /** Below this chance they call for action: 4 of 20 (1.6 %). */
  static final double ACTION_CHANCE = 0.02;

  /** One pair alone beyond its limit is what chance does; it gets another reading, no alarm. */
  static final int FEWEST_BEYOND = 2;

  /** What a number of pairs calls for. */
  public enum Standing {
    /** No more than chance lets. */
    AS_EXPECTED,
    /** More than chance lets in nine periods of ten. */
    ADVISORY,
    /** More than chance lets in 98 periods of a hundred. */
    ACTION
  }

  /** Copies lists and paths, the paths in their own order. */
  public PairsOfPeriod {
    beyond = List.copyOf(beyond);
    withoutReading = List.copyOf(withoutReading);
    EnumMap<Path, Integer> copy = new EnumMap<>(Path.class);
    copy.putAll(paths);
    paths = Collections.unmodifiableMap(copy);
  }

  /** The pairs of the period for each instrument and role with results in it, in key order. */
  static List<PairsOfPeriod> ask(Records records) {
    Map<String, Map<Role, List<Result>>> groups =
        records.results().stream()
            .filter(r -> records.period().contains(r.takenAt()))
            .filter(r -> !records.bench().isExcluded(r))
            .collect(
                groupingBy(
                    Result::instrument,
                    TreeMap::new,
                    groupingBy(Result::role, TreeMap::new, toList())));
    return groups.values().stream()
        .flatMap(byRole -> byRole.values().stream())
        .map(group -> of(records, group))
        .toList();
  }

  private static PairsOfPeriod of(Records records, List<Result> group) {
    List<Result> paired =
        group.stream().filter(r -> ReadingsAgreement.hasPair(records, r)).toList();
    List<Result> judged =
        paired.stream().filter(r -> !records.reported(r).comparisons().isEmpty()).toList();
    List<Result> beyond = judged.stream().filter(r -> records.reported(r).disagrees()).toList();
    Map<Path, Integer> paths = new EnumMap<>(Path.class);
    group.forEach(r -> paths.merge(records.reported(r).path(), 1, Integer::sum));
    return new PairsOfPeriod(
        group.get(0).instrument(),
        group.get(0).role(),
        paired.size(),
        judged.size(),
        beyond,
        ReadingsAgreement.SHARE_BEYOND_LIMIT * judged.size(),
        ReadingsAgreement.chanceOfSoMany(beyond.size(), judged.size()),
        fewest(judged.size(), ADVISORY_CHANCE),
        fewest(judged.size(), ACTION_CHANCE),
        standing(records, paired.size(), judged.size(), beyond.size()),
        paths,
        group.stream().filter(r -> records.reported(r).wantsReading()).toList());
  }

  private static Answer<Standing> standing(Records records, int pairs, int judged, int beyond) {
    if (records.method().replicates() < 2) {
      return Answer.cannotSay("one reading makes a result, so there are no pairs");
    }
    if (judged < FEWEST_BEYOND) {
      return Answer.cannotSay(
          "needs "
              + FEWEST_BEYOND
              + " pairs with a limit from before them, has "
              + judged
              + " of "
              + pairs);
    }
    if (beyond >= fewest(judged, ACTION_CHANCE).orElseThrow()) {
      return Answer.of(Standing.ACTION);
    }
    return Answer.of(
        beyond >= fewest(judged, ADVISORY_CHANCE).orElseThrow()
            ? Standing.ADVISORY
            : Standing.AS_EXPECTED);
  }

  /** The fewest beyond of so many pairs whose chance is below the one given. */
  static OptionalInt fewest(int judged, double chance) {
    for (int beyond = FEWEST_BEYOND; beyond <= judged; beyond++) {
      if (ReadingsAgreement.chanceOfSoMany(beyond, judged) < chance) {
        return OptionalInt.of(beyond);
      }
    }
    return OptionalInt.empty();
  }
}
