package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Backtest.Try;
import org.quietline.bench.DriftForm;
import org.quietline.bench.Material;
import org.quietline.bench.Role;
import org.quietline.stats.Simulation;

/** Forecasts of hidden results in windows of thirty days, in thousandths of the unit. */
class BacktestsTest {
  private static final int SPAN = 30;

  private final TestBench made = new TestBench();

  /** What was planted: window, day and deviation, in the order of the rows. */
  private final List<Planted> planted = new ArrayList<>();

  private record Planted(
      int window, String material, Optional<String> lot, double day, double deviation) {}

  private LocalDateTime start(int window) {
    return TestBench.START.plusDays((SPAN + 1L) * window);
  }

  private void window() {
    made.calibrated("C" + made.calibrations.size(), start(made.calibrations.size()));
  }

  private void result(int day, double deviation) {
    result("QC", 0.200, Optional.empty(), day, deviation);
  }

  /** A result of the window that was begun last. */
  private void result(
      String material, double level, Optional<String> lot, int day, double deviation) {
    int window = made.calibrations.size() - 1;
    String reading = String.format(Locale.ROOT, "%.9f", level + deviation / 1000);
    made.result(start(window).plusDays(day), Role.CONTROL, material, "RO", lot, reading, reading);
    planted.add(new Planted(window, material, lot, day, deviation));
  }

  private void window(double... dayAndDeviation) {
    window();
    for (int i = 0; i < dayAndDeviation.length; i += 2) {
      result((int) dayAndDeviation[i], dayAndDeviation[i + 1]);
    }
  }

  private Answer<Backtest> backtest() {
    return backtest(LevelForm.ALIKE);
  }

  private Answer<Backtest> backtest(LevelForm form) {
    Records records = made.records();
    DriftPoints points =
        DriftPoints.of(records, TestBench.streams(records), records.calibrations());
    return Backtests.of(points, form, new DriftModel.Scale(SPAN, 0));
  }

  private List<Try> tries() {
    return backtest().value().orElseThrow().tries();
  }

  /** Everything that is seen but one result, with a step for those on one side of something. */
  private SlowLines without(
      Planted hidden, Predicate<Planted> seen, Optional<Predicate<Planted>> step) {
    List<Planted> rest = planted.stream().filter(p -> !p.equals(hidden)).filter(seen).toList();
    double[][] columns =
        step.stream()
            .map(s -> rest.stream().mapToDouble(p -> s.test(p) ? 1 : 0).toArray())
            .toArray(double[][]::new);
    return new SlowLines(
        rest.stream().mapToDouble(Planted::day).toArray(),
        rest.stream().mapToDouble(p -> p.deviation() / 1000).toArray(),
        rest.stream().mapToInt(Planted::window).toArray(),
        SPAN,
        columns);
  }

  private void assertForecast(SlowLines lines, Planted hidden, Try found) {
    SlowLines.Known slow = lines.valueOf(hidden.window(), hidden.day());
    assertEquals("C" + hidden.window(), found.calibration());
    assertEquals(hidden.day(), found.day(), 1e-9);
    assertEquals(hidden.deviation() / 1000, found.deviation(), 1e-12);
    assertEquals(slow.mean(), found.forecast(), 3e-7, found.calibration());
    assertEquals(slow.chanceBelow(hidden.deviation() / 1000), found.place(), 2e-5);
  }

  private Planted lastOf(int window, String material) {
    return planted.stream()
        .filter(p -> p.window() == window && p.material().equals(material))
        .reduce((earlier, later) -> later)
        .orElseThrow();
  }

  @Test
  void each_forecast_is_that_of_dense_matrices_without_the_hidden_result() {
    window(1, 0.4, 9, 1.1, 17, -0.6, 28, 1.9);
    window(2, -1.2, 15, -0.7, 26, 0.9);
    window(3, 2.1, 12, 2.4);
    window(5, 0.3, 6, 0.8, 7, -0.9, 22, 0.1, 29, -2.0);
    window(4, 1.0, 18, 0.2, 25, 1.5);
    window(2, -0.3, 11, 0.6);
    List<Try> tries = tries();
    assertEquals(5, tries.size());
    for (int w = 0; w < 5; w++) {
      Planted hidden = lastOf(w, "QC");
      assertForecast(without(hidden, p -> true, Optional.empty()), hidden, tries.get(w));
    }
  }

  /** A second material, read so much too high, that has more results than the one spoken of. */
  private void twoLevels() {
    made.otherMaterials.add(
        new Material("LOW", "tg", Optional.of(new BigDecimal("0.060")), Optional.empty()));
    double[] wander = {0.1, -0.4, 0.6, 0.2, -0.5, 0.3, -0.1, 0.7, -0.6, 0.4};
    for (int w = 0; w < 6; w++) {
      window(2, wander[w], 24, wander[9 - w]);
      for (int day = 4; day <= 20; day += 8) {
        result("LOW", 0.060, Optional.empty(), day, 6 + 0.3 * wander[(w + day) % 10]);
      }
    }
  }

  /** In each window two results are spoken of: with one hidden the other material has more. */
  @Test
  void a_hidden_result_is_forecast_for_its_own_material() {
    twoLevels();
    List<Try> tries = tries();
    assertEquals(5, tries.size());
    for (int w = 0; w < 5; w += 4) {
      Planted hidden = lastOf(w, "QC");
      Optional<Predicate<Planted>> low = Optional.of(p -> p.material().equals("LOW"));
      assertForecast(without(hidden, p -> true, low), hidden, tries.get(w));
    }
  }

  /** Of a deviation in proportion to the level, 0.060 tells 0.200 ten thirds of what it shows. */
  @Test
  void a_share_is_brought_from_the_other_level() {
    twoLevels();
    LevelForm share = new LevelForm(DriftForm.PROPORTIONAL, DriftForm.PROPORTIONAL);
    List<Try> tries = backtest(share).value().orElseThrow().tries();
    planted.replaceAll(
        p ->
            p.material().equals("QC")
                ? p
                : new Planted(p.window(), "LOW", p.lot(), p.day(), p.deviation() * 10 / 3));
    Planted hidden = lastOf(2, "QC");
    Optional<Predicate<Planted>> low = Optional.of(p -> p.material().equals("LOW"));
    assertForecast(without(hidden, p -> true, low), hidden, tries.get(2));
  }

  private void ofLot(String lot, double... dayAndDeviation) {
    for (int i = 0; i < dayAndDeviation.length; i += 2) {
      result("QC", 0.200, Optional.of(lot), (int) dayAndDeviation[i], dayAndDeviation[i + 1]);
    }
  }

  /**
   * A lot opened in mid-window has a step where its window is forecast; elsewhere the window is
   * seen through the lot of most of its results.
   */
  @Test
  void a_window_of_two_lots_is_forecast_through_the_latest() {
    window();
    ofLot("L1", 1, 0.2, 5, -0.3, 9, 0.4);
    ofLot("L2", 12, 5.1, 17, 4.7, 21, 5.6, 28, 5.2);
    window();
    ofLot("L2", 3, -0.2, 14, 0.5, 26, 0.1);
    window();
    ofLot("L2", 1, 0.4, 11, -0.6, 19, 0.3);
    ofLot("L3", 27, -4);
    window();
    ofLot("L3", 2, 0.1, 20, 0.9);
    window();
    ofLot("L3", 4, -0.7, 15, 0.2, 25, 0.6);
    window();
    ofLot("L3", 6, 0.3);
    List<Try> tries = tries();
    assertEquals(
        List.of("C0", "C1", "C3", "C4"),
        tries.stream().map(Try::calibration).toList(),
        "of its latest lot C2 has one result");
    Predicate<Planted> mixed = p -> p.window() == 2 && p.lot().equals(Optional.of("L3"));
    Predicate<Planted> first = p -> p.lot().equals(Optional.of("L1"));
    Planted hidden = lastOf(0, "QC");
    assertForecast(without(hidden, mixed.negate(), Optional.of(first)), hidden, tries.get(0));
    Planted other = lastOf(3, "QC");
    assertForecast(without(other, mixed.or(first).negate(), Optional.empty()), other, tries.get(2));
  }

  @Test
  void a_window_of_one_result_has_none_to_hide_but_tells_the_others() {
    window(4, 1.8);
    window(1, 0.4, 9, 1.1, 17, -0.6);
    window(2, -1.2, 15, -0.7);
    window(3, 2.1, 12, 2.4);
    window(5, 0.3, 22, 0.1);
    window(2, -0.3);
    List<Try> tries = tries();
    assertEquals(List.of("C1", "C2", "C3", "C4"), tries.stream().map(Try::calibration).toList());
    Planted hidden = lastOf(3, "QC");
    assertForecast(without(hidden, p -> true, Optional.empty()), hidden, tries.get(2));
  }

  @Test
  void three_forecasts_say_nothing() {
    window(4, 1.8);
    for (int w = 0; w < 4; w++) {
      window(2, w % 3, 21, -w % 2);
    }
    assertEquals(
        Optional.of("needs 4 earlier windows with two control results or more, has 3"),
        backtest().why());
  }

  @Test
  void the_latest_twenty_four_earlier_windows_are_tried() {
    for (int w = 0; w <= 26; w++) {
      window(2, w % 3, 21, -w % 2);
    }
    List<Try> tries = tries();
    assertEquals(24, tries.size());
    assertEquals("C2", tries.get(0).calibration());
    assertEquals("C25", tries.get(23).calibration());
  }

  /** Windows that scatter by one about a level line, with a last result so far off it. */
  private Backtest scattered(int windows, double last) {
    for (int w = 0; w < windows; w++) {
      double side = w % 2 == 0 ? 1 : -1;
      double other = w / 2 % 2 == 0 ? 1 : -1;
      window(1, side, 8, -side, 14, -side, 21, side, 28, other * last);
    }
    window(1, 0.5, 10, -0.5);
    return backtest().value().orElseThrow();
  }

  private static void assertHeld(int half, int most, int nearlyAll, Backtest backtest) {
    assertEquals(half, backtest.held50(), backtest.toString());
    assertEquals(most, backtest.held80(), backtest.toString());
    assertEquals(nearlyAll, backtest.held95(), backtest.toString());
  }

  /** Three intervals, two sides each, 5 % together: 1/64 is no warning yet, but 1/128 is. */
  @Test
  void seven_of_seven_in_the_middle_half_are_too_many() {
    Backtest six = scattered(6, 0);
    assertHeld(6, 6, 6, six);
    assertFalse(six.off());
    Backtest seven = new BacktestsTest().scattered(7, 0);
    assertHeld(7, 7, 7, seven);
    assertTrue(seven.off());
  }

  @Test
  void none_of_seven_in_the_middle_half_is_too_few() {
    Backtest six = scattered(6, 1);
    assertHeld(0, 6, 6, six);
    assertFalse(six.off());
    Backtest seven = new BacktestsTest().scattered(7, 1);
    assertHeld(0, 7, 7, seven);
    assertTrue(seven.off());
  }

  /** A bench drawn from what outlooks suppose beforehand. */
  private static Backtest drawn(SplittableRandom random) {
    BacktestsTest bench = new BacktestsTest();
    double scatter = 0.05;
    double heights = scatter * Math.tan(Math.PI / 2 * random.nextDouble());
    double slopes = scatter * Math.tan(Math.PI / 2 * Math.sqrt(random.nextDouble())) / (SPAN / 2.0);
    for (int w = 0; w < 7; w++) {
      bench.window();
      double height = 0.3 + heights * Simulation.normal(random);
      double slope = -0.02 + slopes * Simulation.normal(random);
      int results = 2 + random.nextInt(3);
      for (int i = 0; i < results; i++) {
        int day = 1 + 28 * i / results + random.nextInt(6);
        bench.result(day, height + slope * day + scatter * Simulation.normal(random));
      }
    }
    return bench.backtest().value().orElseThrow();
  }

  /**
   * Where ratios are drawn from their priors and the rest is a matter of place and scale, a
   * forecast's chances are true ones, whatever the numbers and days of results.
   */
  @Test
  void intervals_hold_as_many_hidden_results_as_they_state() {
    int benches = 50;
    SplittableRandom random = new SplittableRandom(47);
    Rate half = new Rate(benches);
    Rate most = new Rate(benches);
    Rate nearlyAll = new Rate(benches);
    for (int i = 0; i < benches; i++) {
      Backtest backtest = drawn(random);
      int tries = backtest.tries().size();
      half.add(backtest.held50(), tries);
      most.add(backtest.held80(), tries);
      nearlyAll.add(backtest.held95(), tries);
    }
    half.assertIs(0.50);
    most.assertIs(0.80);
    nearlyAll.assertIs(0.95);
  }
}
