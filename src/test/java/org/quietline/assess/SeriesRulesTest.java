package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.bench.BaselineChoice;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.LimitsFrom;
import org.quietline.bench.ChartSettings.RestartAt;
import org.quietline.bench.Role;
import org.quietline.bench.Rule;

/**
 * The rules about several results. The baseline goes from 0.199 to 0.201 and back, so that the mean
 * moving range is 0.002, a deviation 0.002·√π/2 = 0.0017725, and the action limits are 0.0053174
 * from 0.2.
 */
class SeriesRulesTest {
  private static final double DEVIATION = 0.001 * Math.sqrt(Math.PI);
  private static final int FIRST = 20;

  private static ChartSettings settings(Rule rule, RestartAt... restarts) {
    Set<RestartAt> at = EnumSet.noneOf(RestartAt.class);
    at.addAll(Arrays.asList(restarts));
    return new ChartSettings(20, LimitsFrom.MOVING_RANGE, 0.4, List.of(), List.of(rule), at);
  }

  private static LocalDateTime day(int result) {
    return TestBench.START.plusDays(result);
  }

  private static TestBench bench(Rule rule, String... later) {
    TestBench bench = new TestBench();
    bench.chart = settings(rule, RestartAt.CALIBRATION, RestartAt.CLOSED_SIGNAL);
    for (int i = 0; i < FIRST; i++) {
      bench.daily(i % 2 == 0 ? "0.199" : "0.201");
    }
    return bench.daily(later);
  }

  private static List<LocalDateTime> fired(TestBench bench) {
    return bench.streamOf("QC").signals().stream().map(s -> s.id().at()).toList();
  }

  private static Signal only(TestBench bench) {
    List<Signal> signals = bench.streamOf("QC").signals();
    assertEquals(1, signals.size(), signals.toString());
    return signals.get(0);
  }

  private static List<LocalDateTime> days(int... results) {
    return IntStream.of(results).mapToObj(SeriesRulesTest::day).toList();
  }

  /** A pattern, the result it ends at, and the results that make it. */
  @ParameterizedTest
  @CsvSource({
    "TWO_OF_THREE_BEYOND_WARNING, 0.204 0.2 0.204, 20 22",
    "TWO_OF_THREE_BEYOND_WARNING, 0.196 0.196, 20 21",
    "FOUR_OF_FIVE_BEYOND_ONE_DEVIATION, 0.202 0.202 0.2 0.202 0.202, 20 21 23 24",
    "EIGHT_ON_ONE_SIDE, 0.1995 0.1995 0.1995 0.1995 0.1995 0.1995 0.1995 0.1995,"
        + " 20 21 22 23 24 25 26 27",
    "SIX_RISING_OR_FALLING, 0.1991 0.1993 0.1995 0.1997 0.1999 0.2001, 20 21 22 23 24 25",
    "MOVING_RANGE_BEYOND_LIMIT, 0.197 0.2036, 20 21"
  })
  void a_rule_fires_where_its_pattern_ends(Rule rule, String values, String places) {
    String[] later = values.split(" ");
    int[] pattern = Arrays.stream(places.split(" ")).mapToInt(Integer::parseInt).toArray();
    int last = pattern[pattern.length - 1];
    Signal signal = only(bench(rule, later));
    assertEquals(rule, signal.id().rule());
    assertEquals(day(last), signal.id().at());
    assertEquals(days(pattern), signal.points());
    String[] shorter = Arrays.copyOf(later, later.length - 1);
    assertEquals(List.of(), fired(bench(rule, shorter)), "one result fewer");

    TestBench calibrated = bench(rule, later);
    calibrated.calibrated("C-1", TestBench.START.minusDays(3));
    calibrated.calibrated("C-2", day(last).minusHours(2));
    assertEquals(List.of(), fired(calibrated), "across a calibration");
    calibrated.chart = settings(rule);
    assertEquals(days(last), fired(calibrated), "restarts are not set");

    TestBench closed = bench(rule, later);
    closed.action(day(last - 1), Rule.BEYOND_ACTION_LIMIT, false);
    assertEquals(List.of(), fired(closed), "across a closed signal");
    closed.chart = settings(rule, RestartAt.CALIBRATION);
    assertEquals(days(last), fired(closed), "closed signals are not set");

    TestBench wild = bench(rule, shorter);
    wild.control(day(last).minusHours(12), "0.9", "0.9");
    wild.action(day(last).minusHours(12), Rule.READINGS_DISAGREE, true);
    wild.control(day(last), later[later.length - 1], later[later.length - 1]);
    wild.chart = settings(rule, RestartAt.CALIBRATION);
    assertEquals(days(last), fired(wild), "an excluded result is not there");
  }

  @Test
  void what_a_signal_says() {
    Signal two = only(bench(Rule.TWO_OF_THREE_BEYOND_WARNING, "0.204", "0.2", "0.204"));
    assertEquals(0.204, two.value(), 1e-12);
    assertEquals(0.2 + 2 * DEVIATION, two.limit(), 1e-12);
    assertEquals(0.004, two.size().getAsDouble(), 1e-12);
    Signal low = only(bench(Rule.TWO_OF_THREE_BEYOND_WARNING, "0.196", "0.196"));
    assertEquals(0.2 - 2 * DEVIATION, low.limit(), 1e-12);
    assertEquals(-0.004, low.size().getAsDouble(), 1e-12);
    String[] run = new String[8];
    Arrays.fill(run, "0.1995");
    Signal eight = only(bench(Rule.EIGHT_ON_ONE_SIDE, run));
    assertEquals(0.2, eight.limit(), 1e-12);
    assertEquals(-0.0005, eight.size().getAsDouble(), 1e-12);
    Signal rise =
        only(
            bench(
                Rule.SIX_RISING_OR_FALLING,
                "0.1991",
                "0.1993",
                "0.1995",
                "0.1997",
                "0.1999",
                "0.2001"));
    assertEquals(0.1999, rise.limit(), 1e-12);
    assertEquals(0.2001, rise.value(), 1e-12);
    Signal range = only(bench(Rule.MOVING_RANGE_BEYOND_LIMIT, "0.197", "0.2036"));
    assertEquals(0.0066, range.value(), 1e-12);
    // D4 = 1 + 3·√(π/2 − 1) = 3.2665321 times the mean moving range
    assertEquals(0.002 * 3.2665321, range.limit(), 1e-9);
    assertTrue(range.size().isEmpty());
  }

  /** Four deviations of 0.004/0.0017725 = 2.2568, less 0.5 each, pass 5 at the third. */
  @Test
  void cumulative_sums_start_anew_at_a_restart_and_after_a_signal() {
    Rule rule = Rule.CUMULATIVE_SUM_BEYOND_LIMIT;
    TestBench bench = bench(rule, "0.196", "0.196", "0.196", "0.196", "0.196", "0.196");
    List<Signal> signals = bench.streamOf("QC").signals();
    assertEquals(days(22, 25), fired(bench));
    assertEquals(-3 * (0.004 / DEVIATION - 0.5), signals.get(0).value(), 1e-9);
    assertEquals(-5, signals.get(0).limit(), 0.0);
    assertEquals(days(20, 21, 22), signals.get(0).points());
    assertEquals(-0.004, signals.get(0).size().getAsDouble(), 1e-12);
    bench.calibrated("C-1", TestBench.START.minusDays(3));
    bench.calibrated("C-2", day(22).minusHours(1));
    assertEquals(days(24), fired(bench));
    bench.chart = settings(rule);
    assertEquals(days(22, 25), fired(bench));
  }

  @Test
  void reagent_lots_restart_only_where_that_is_set() {
    TestBench bench = bench(Rule.TWO_OF_THREE_BEYOND_WARNING);
    List<Optional<String>> lots =
        List.of(Optional.of("A"), Optional.of("A"), Optional.empty(), Optional.of("B"));
    String[] values = {"0.2", "0.204", "0.2", "0.204"};
    for (int i = 0; i < 4; i++) {
      bench.result(day(FIRST + i), Role.CONTROL, "QC", "RO", lots.get(i), values[i], values[i]);
    }
    assertEquals(days(23), fired(bench));
    StreamFindings.Point last = bench.streamOf("QC").points().get(23);
    // a result that names no lot hides no change
    assertEquals(Set.of(RestartAt.REAGENT_LOT), last.since());
    assertEquals(false, last.restarted());
    bench.chart = settings(Rule.TWO_OF_THREE_BEYOND_WARNING, RestartAt.REAGENT_LOT);
    assertEquals(List.of(), fired(bench));
    assertTrue(bench.streamOf("QC").points().get(23).restarted());
  }

  @Test
  void a_change_of_limits_restarts() {
    TestBench bench = bench(Rule.EIGHT_ON_ONE_SIDE);
    List<String> later = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      later.add(i < 4 ? "0.1995" : i % 2 == 0 ? "0.199" : "0.1991");
    }
    bench.daily(later.toArray(new String[0]));
    assertEquals(day(27), fired(bench).get(0));
    LocalDate from = day(24).toLocalDate();
    bench.baselines.add(
        new BaselineChoice(
            "tg", "PM-1", "QC", from, from.plusDays(11), Optional.empty(), Optional.empty()));
    assertEquals(List.of(), fired(bench));
    assertTrue(bench.streamOf("QC").points().get(24).restarted());
    assertEquals(Set.of(), bench.streamOf("QC").points().get(24).since());
  }

  @Test
  void first_results_are_in_no_pattern() {
    TestBench bench = new TestBench();
    bench.chart = settings(Rule.EIGHT_ON_ONE_SIDE);
    for (int i = 0; i < 22; i++) {
      bench.daily(i < 11 ? "0.2015" : i % 2 == 0 ? "0.1985" : "0.1986");
    }
    // results 12 to 22 lie below; limits settle with the 15th, the eighth of those is the 22nd
    assertEquals(days(21), fired(bench));
  }

  /** What happened between results, whether or not it restarts anything. */
  @Test
  void events_between_results() {
    TestBench bench = bench(Rule.EIGHT_ON_ONE_SIDE, "0.2", "0.2");
    bench.calibrated("C-1", TestBench.START.minusDays(3));
    bench.calibrated("C-2", day(20));
    bench.action(day(20), Rule.WEIGHTED_MEAN_BEYOND_LIMIT, false);
    bench.chart = settings(Rule.EIGHT_ON_ONE_SIDE, RestartAt.CALIBRATION);
    List<StreamFindings.Point> points = bench.streamOf("QC").points();
    assertEquals(Set.of(), points.get(0).since());
    assertEquals(false, points.get(0).restarted());
    assertEquals(Set.of(RestartAt.CALIBRATION), points.get(20).since());
    assertTrue(points.get(20).restarted());
    assertEquals(Optional.of("C-2"), points.get(20).calibration());
    assertEquals(Optional.of("C-1"), points.get(19).calibration());
    assertEquals(Set.of(RestartAt.CLOSED_SIGNAL), points.get(21).since());
    assertEquals(false, points.get(21).restarted());
  }
}
