package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.quietline.assess.PlantedBench.Drawn;
import org.quietline.assess.Planting.Kind;
import org.quietline.bench.Bench;
import org.quietline.bench.Method;

/**
 * How many of 30 slips among 600 results are asked about, and how many sound results are.
 *
 * <p>Over 300 seeds, none of them used here, 94.1 % were found: powers of ten 96.6 %, the other
 * acidity 99.7 %, swapped readings 93.7 %, swapped samples 93.1 %, copied rows 98.3 %, volumes 83.4
 * %; and one false question a bench, 0.2 % of its sound results. With two slips on one sample
 * allowed, 90.2 % were found.
 *
 * <p>What is missed cannot be seen: a factor of two on a batch whose kind spreads by 14 %, a factor
 * of two or ten on an incoming oil that nothing else is known of, and exchanges of samples that
 * differ by little more than the limit needs from few results. A false question names a result that
 * holds no slip, is no partner of one, and is of no sample that holds one.
 */
class SlipEvaluationTest {
  private static final Period ALL =
      new Period(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 12, 31));

  /**
   * What came of one seed.
   *
   * @param found slips that a question is on or names
   * @param falsely sound results that a question is on or names
   * @param sound results that hold no slip and have no part in one
   * @param byKind found slips of each kind
   */
  record Outcome(int found, int falsely, int sound, Map<Kind, Integer> byKind) {}

  static Outcome of(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Planting planting = new Planting(new PlantedBench(random).results(), random);
    Set<Integer> asked = asked(questions(PlantedBench.bench(planting.rows())));
    Set<Integer> concerned = concerned(planting);
    Map<Kind, Integer> byKind = Planting.counts();
    int found = 0;
    for (Map.Entry<Integer, Kind> entry : planting.planted().entrySet()) {
      int hit = asked.contains(entry.getKey()) ? 1 : 0;
      found += hit;
      byKind.merge(entry.getValue(), hit, Integer::sum);
    }
    int falsely = (int) asked.stream().filter(r -> !concerned.contains(r)).count();
    return new Outcome(found, falsely, planting.rows().size() - concerned.size(), byKind);
  }

  /** Rows that a question is on, or names as exchanged with one. */
  private static Set<Integer> asked(List<Slip> slips) {
    Set<Integer> asked = new HashSet<>();
    for (Slip slip : slips) {
      asked.add(row(slip.result().origin().line()));
      if (!(slip.evidence() instanceof Slip.Coincidence)) {
        slip.partner().ifPresent(p -> asked.add(row(p.origin().line())));
      }
    }
    return asked;
  }

  private static int row(long line) {
    return (int) line - 2;
  }

  static List<Slip> questions(Bench bench) {
    SlipFinder finder = new SlipFinder(bench);
    List<Slip> slips = new ArrayList<>();
    for (Method method : bench.settings().methods()) {
      Records records = Records.of(bench, method, ALL, ALL.to().atStartOfDay());
      slips.addAll(finder.ask(records).questions());
    }
    return slips;
  }

  /** Rows that hold a slip, their partners, and other results of the same samples. */
  private static Set<Integer> concerned(Planting planting) {
    Set<Integer> touched = new HashSet<>(planting.planted().keySet());
    touched.addAll(planting.partners().values());
    List<Drawn> rows = planting.rows();
    Set<String> samples = new HashSet<>();
    touched.stream()
        .map(rows::get)
        .filter(r -> !r.sample().startsWith("QC"))
        .forEach(r -> samples.add(Planting.quantity(r)));
    for (int i = 0; i < rows.size(); i++) {
      if (samples.contains(Planting.quantity(rows.get(i)))) {
        touched.add(i);
      }
    }
    return touched;
  }

  @Test
  void slips_of_one_seed_are_found_and_sound_results_left_alone() {
    assertEquals(600, new PlantedBench(new SplittableRandom(1)).results().size());
    Outcome outcome = of(20260424);
    assertTrue(outcome.found() >= 27, () -> "found " + outcome);
    assertTrue(outcome.falsely() <= 0.02 * outcome.sound(), () -> "false " + outcome);
  }

  @Test
  void slips_of_twenty_seeds_are_found_and_sound_results_left_alone() {
    int seeds = 20;
    double found = 0;
    double falsely = 0;
    double sound = 0;
    Map<Kind, Integer> byKind = Planting.counts();
    for (int seed = 1; seed <= seeds; seed++) {
      Outcome outcome = of(seed);
      found += outcome.found();
      falsely += outcome.falsely();
      sound += outcome.sound();
      outcome.byKind().forEach((kind, n) -> byKind.merge(kind, n, Integer::sum));
    }
    assertTrue(found >= 0.9 * 30 * seeds, "found " + found + " of " + 30 * seeds + ": " + byKind);
    assertTrue(falsely <= 0.005 * sound, "false " + falsely + " of " + sound);
    byKind.forEach(
        (kind, n) -> assertTrue(n >= 0.75 * Planting.OF_EACH * seeds, () -> kind + " found " + n));
  }

  @Test
  void a_bench_without_slips_is_hardly_asked_anything() {
    int asked = 0;
    for (int seed = 1; seed <= 10; seed++) {
      PlantedBench bench = new PlantedBench(new SplittableRandom(seed));
      asked += asked(questions(PlantedBench.bench(bench.results()))).size();
    }
    assertTrue(asked <= 30, "asked about " + asked + " of 6000 sound results");
  }

  @Test
  void a_factor_of_two_and_the_molar_factor_are_both_named_with_the_other_method_as_evidence() {
    List<Drawn> rows = new ArrayList<>(new PlantedBench(new SplittableRandom(3)).results());
    int place = -1;
    for (int i = 0; i < rows.size(); i++) {
      Drawn row = rows.get(i);
      boolean both =
          row.method().equals(PlantedBench.ACID)
              && row.sample().startsWith("O-")
              && row.value() > 4
              && row.value() < 8;
      place = both ? i : place;
    }
    Drawn row = rows.get(place);
    rows.set(
        place,
        row.with(
            row.readings().stream()
                .map(r -> PlantedBench.rounded(r.doubleValue() / 1.9863, PlantedBench.ACID))
                .toList()));
    List<Slip> slips =
        questions(PlantedBench.bench(rows)).stream()
            .filter(s -> s.result().sample().equals(row.sample()))
            .filter(s -> s.result().method().equals("acid-number"))
            .toList();
    assertEquals(1, slips.size(), slips.toString());
    Slip slip = slips.get(0);
    assertEquals(
        Set.of(Slip.What.FATTY_ACID_FOR_ACID_NUMBER, Slip.What.HALF_VOLUME),
        slip.candidates().stream().map(Slip.Candidate::what).collect(Collectors.toSet()));
    Slip.Distance distance = (Slip.Distance) slip.evidence();
    assertEquals(Slip.Source.RELATED_METHOD, distance.source());
    assertEquals("free-fatty-acid", distance.other().orElseThrow().method());
    assertEquals(row.value(), distance.expected(), 0.1 * row.value());
  }
}
