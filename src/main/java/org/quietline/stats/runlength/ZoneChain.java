package org.quietline.stats.runlength;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.quietline.stats.control.RunRule;

/**
 * The smallest automaton that reads the zones of successive values and knows when a set of run
 * rules is met.
 *
 * <p>Where a rule compares values with each other, a value in the zone of the one before comes in
 * two kinds, above and below it. Where a rule looks at sets, the automaton is told which sets a
 * value ends; the place in the set is no part of its state, so that large sets need no more states
 * than small ones. States that no continuation tells apart are one state. Source: Fu and Chang
 * (2002), J. Appl. Probab. 39, 1–18 (finite Markov chain imbedding); Champ and Woodall (1987),
 * Technometrics 29, 393–399.
 */
final class ZoneChain {
  /** In place of a state: a rule is met. */
  static final int SIGNAL = -1;

  private static final int MOST_STATES = 60_000;

  private final double[] cuts;
  private final boolean compares;
  private final Places places;
  private final int[][] next;
  private final int[] zone;

  private ZoneChain(double[] cuts, boolean compares, Places places, int[][] next, int[] zone) {
    this.cuts = cuts;
    this.compares = compares;
    this.places = places;
    this.next = next;
    this.zone = zone;
  }

  /**
   * The automaton of rules that are watched together.
   *
   * @param rules the rules, and when they are looked at
   * @return the automaton, or nothing where it would be too large
   */
  static Optional<ZoneChain> of(List<Chart.Rules> rules) {
    return Places.of(rules.stream().flatMapToInt(Watch::sets).toArray())
        .flatMap(places -> new Search(rules, places).walk())
        .map(ZoneChain::smallest);
  }

  int states() {
    return next.length;
  }

  int zones() {
    return cuts.length + 1;
  }

  boolean compares() {
    return compares;
  }

  /** Where values stand in the sets that rules look at. */
  Places places() {
    return places;
  }

  /** The lower end of a zone. */
  double low(int a) {
    return a == 0 ? Double.NEGATIVE_INFINITY : cuts[a - 1];
  }

  /** The upper end of a zone. */
  double high(int a) {
    return a == cuts.length ? Double.POSITIVE_INFINITY : cuts[a];
  }

  /** The zone of the latest value where values are compared; −1 before the first. */
  int zone(int state) {
    return zone[state];
  }

  /**
   * The state after one value more.
   *
   * @param state the state, 0 at the start
   * @param symbol the zone of the value; where values are compared and it lies in the zone of the
   *     one before and below it, the number of zones
   * @param kind the kind of its place
   * @return the state, or {@link #SIGNAL}
   */
  int next(int state, int symbol, int kind) {
    return next[state][kind * symbols(zones(), compares) + symbol];
  }

  private static int symbols(int zones, boolean compares) {
    return compares ? zones + 1 : zones;
  }

  /** Merges states that no continuation tells apart (Moore's refinement of a partition). */
  private ZoneChain smallest() {
    int[] group = zone.clone();
    int groups = 0;
    while (true) {
      Map<List<Integer>, Integer> seen = new HashMap<>();
      int[] finer = new int[group.length];
      for (int s = 0; s < group.length; s++) {
        List<Integer> signature = new ArrayList<>();
        signature.add(group[s]);
        for (int t : next[s]) {
          signature.add(t == SIGNAL ? SIGNAL - 1 : group[t]);
        }
        finer[s] = seen.computeIfAbsent(signature, x -> seen.size());
      }
      group = finer;
      if (seen.size() == groups) {
        break;
      }
      groups = seen.size();
    }
    int[][] merged = new int[groups][];
    int[] mergedZone = new int[groups];
    for (int s = 0; s < group.length; s++) {
      int[] names = group;
      merged[group[s]] = Arrays.stream(next[s]).map(t -> t == SIGNAL ? SIGNAL : names[t]).toArray();
      mergedZone[group[s]] = zone[s];
    }
    return new ZoneChain(cuts, compares, places, merged, mergedZone);
  }

  /** All states that can be reached. */
  private static final class Search {
    private final boolean compares;
    private final Places places;
    private final List<Watch> watches;
    private final double[] cuts;
    private final Map<List<Integer>, Integer> names = new HashMap<>();
    private final List<List<Integer>> states = new ArrayList<>();

    Search(List<Chart.Rules> rules, Places places) {
      this.places = places;
      this.watches = rules.stream().flatMap(r -> Watch.of(r).stream()).toList();
      List<RunRule> all = rules.stream().flatMap(r -> r.rules().stream()).toList();
      this.compares = all.stream().anyMatch(Watch::comparesValues);
      TreeSet<Double> ends = new TreeSet<>();
      for (RunRule rule : all) {
        Watch.zone(rule)
            .ifPresent(
                zone -> {
                  ends.add(0.0 + zone);
                  ends.add(0.0 - zone);
                });
      }
      this.cuts = ends.stream().mapToDouble(e -> e).toArray();
    }

    Optional<ZoneChain> walk() {
      List<Integer> start = new ArrayList<>();
      watches.forEach(w -> start.add(0));
      start.add(-1);
      name(start);
      List<int[]> next = new ArrayList<>();
      for (int s = 0; s < states.size(); s++) {
        if (states.size() > MOST_STATES) {
          return Optional.empty();
        }
        next.add(from(states.get(s)));
      }
      int[] zone = states.stream().mapToInt(s -> s.get(watches.size())).toArray();
      return Optional.of(new ZoneChain(cuts, compares, places, next.toArray(int[][]::new), zone));
    }

    private int[] from(List<Integer> state) {
      int zones = cuts.length + 1;
      int symbols = symbols(zones, compares);
      int last = state.get(watches.size());
      int[] to = new int[places.kinds() * symbols];
      for (int i = 0; i < to.length; i++) {
        int symbol = i % symbols;
        boolean below = symbol == zones;
        int a = below ? Math.max(0, last) : symbol;
        int direction = last < 0 ? 0 : below ? -1 : a == last ? 1 : Integer.compare(a, last);
        to[i] = after(state, a, direction, places.example(i / symbols));
      }
      return to;
    }

    private int after(List<Integer> state, int a, int direction, long place) {
      double value = insideOf(a);
      List<Integer> now = new ArrayList<>();
      for (int w = 0; w < watches.size(); w++) {
        int memory = watches.get(w).next(state.get(w), value, direction, place);
        if (memory < 0) {
          return SIGNAL;
        }
        now.add(memory);
      }
      now.add(compares ? a : -1);
      return name(now);
    }

    private double insideOf(int a) {
      if (cuts.length == 0) {
        return 0;
      }
      if (a == 0) {
        return cuts[0] - 1;
      }
      return a == cuts.length ? cuts[a - 1] + 1 : (cuts[a - 1] + cuts[a]) / 2;
    }

    private int name(List<Integer> state) {
      Integer known = names.putIfAbsent(state, states.size());
      if (known == null) {
        states.add(state);
        return states.size() - 1;
      }
      return known;
    }
  }
}
