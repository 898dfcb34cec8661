package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.quietline.assess.Drift.Decision;
import org.quietline.stats.Coverage;
import org.quietline.stats.mixed.GroupedPoints;
import org.quietline.stats.mixed.LineOutlook;

/**
 * What outlooks state against what becomes of simulated windows whose lines are known. Earlier
 * windows have five weekly results, the one in use has its own over the first 15 of 30 days; the
 * allowance is four deviations of a result. Offsets and slopes differ from window to window by
 * nothing, half, or one and a half deviations of a result (slopes: over half the validity); the
 * average window stays, or drifts by five deviations in 30 days. Where chance could decide whether
 * intervals hold often enough, four times as many benches are made, once. Beside each outlook
 * stands that of the window's own results alone, an ordinary straight line judged by the same rule.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class OutlookStudyCoverageTest {
  private static final int SLICE = 3;
  private static final int WHOLE = 1000;

  /** With fewer drifts in a kind, a share of them says nothing. */
  private static final int ENOUGH_DRIFTS = 100;

  private static final int MORE = 4;

  /** A kind of which fewer intervals hold the line than this is looked at {@link #MORE} as long. */
  private static final double CLOSE = 0.935;

  private static final double ALLOWANCE = 4;
  private static final int TODAY = 15;
  private static final int EXPIRY = 30;
  private static final int EARLIER = 5;
  private static final int[] DAYS = {15, 25, 30};

  private final List<Cell> cells = new ArrayList<>();

  /** How the lines of a bench differ. */
  private record Truth(double offsets, double slopes, double drift) {}

  /** What the benches of one kind gave. */
  private static final class Cell {
    private final Truth truth;
    private final int windows;
    private final int current;
    private final int[] held = new int[DAYS.length];
    private int benches;
    private int kept;
    private int keptWrongly;
    private int beyond;
    private int inTime;
    private int inTimeAlone;
    private int asked;
    private int askedAlone;
    private int likely;
    private int likelyAndBeyond;

    /** Benches called in time by one of the two alone. */
    private int pooledOnly;

    private int aloneOnly;

    Cell(Truth truth, int windows, int current) {
      this.truth = truth;
      this.windows = windows;
      this.current = current;
    }

    void run(int many) {
      Random random = new Random(truth.hashCode() + 1000L * windows + current);
      benches(many, random);
      if (Arrays.stream(held).min().getAsInt() < CLOSE * benches) {
        benches((MORE - 1) * many, random);
      }
    }

    private void benches(int many, Random random) {
      for (int i = 0; i < many; i++) {
        bench(random);
      }
    }

    private void bench(Random random) {
      int n = EARLIER * (windows - 1) + current;
      double[] days = new double[n];
      double[] values = new double[n];
      int[] groups = new int[n];
      double[] line = new double[2];
      int at = 0;
      for (int w = 0; w < windows; w++) {
        boolean last = w == windows - 1;
        line[0] = truth.offsets() * random.nextGaussian();
        line[1] = truth.drift() / EXPIRY + truth.slopes() / TODAY * random.nextGaussian();
        int many = last ? current : EARLIER;
        for (int i = 0; i < many; i++) {
          days[at] = 1 + (last ? 14.0 * i / (many - 1) : 7 * i);
          values[at] = line[0] + line[1] * days[at] + random.nextGaussian();
          groups[at] = w;
          at++;
        }
      }
      int from = n - current;
      LineOutlook pooled =
          LineOutlook.of(GroupedPoints.ofOneOrMore(days, values, groups), EXPIRY, 0);
      LineOutlook alone =
          LineOutlook.of(
              GroupedPoints.ofOneOrMore(
                  Arrays.copyOfRange(days, from, n),
                  Arrays.copyOfRange(values, from, n),
                  new int[current]),
              EXPIRY,
              0);
      count(pooled, alone, line);
    }

    private void count(LineOutlook pooled, LineOutlook alone, double... line) {
      benches++;
      LineOutlook.GroupLine own = pooled.line(windows - 1);
      for (int i = 0; i < DAYS.length; i++) {
        held[i] += own.at(DAYS[i]).interval(0.95).contains(line[0] + line[1] * DAYS[i]) ? 1 : 0;
      }
      int crossing = crossing(line);
      double chance = own.at(EXPIRY).chanceBeyond(ALLOWANCE);
      if (chance >= 0.2 && chance <= 0.4) {
        likely++;
        likelyAndBeyond += Math.abs(line[0] + EXPIRY * line[1]) > ALLOWANCE ? 1 : 0;
      }
      CalibrationDecision decision = decide(pooled, windows - 1, windows == 1 ? TODAY : 29);
      CalibrationDecision byItself = decide(alone, 0, TODAY);
      kept += decision.decision() == Decision.KEEP ? 1 : 0;
      boolean goes = crossing <= EXPIRY;
      beyond += goes ? 1 : 0;
      keptWrongly += goes && decision.decision() == Decision.KEEP ? 1 : 0;
      boolean called = goes && isInTime(decision, crossing);
      boolean calledAlone = goes && isInTime(byItself, crossing);
      inTime += called ? 1 : 0;
      inTimeAlone += calledAlone ? 1 : 0;
      pooledOnly += called && !calledAlone ? 1 : 0;
      aloneOnly += calledAlone && !called ? 1 : 0;
      asked += !goes && asks(decision) ? 1 : 0;
      askedAlone += !goes && asks(byItself) ? 1 : 0;
    }

    private static int crossing(double... line) {
      int day = TODAY;
      while (day <= EXPIRY && Math.abs(line[0] + line[1] * day) <= ALLOWANCE) {
        day++;
      }
      return day;
    }

    private static CalibrationDecision decide(LineOutlook outlook, int group, double followedTo) {
      LineOutlook.GroupLine line = outlook.line(group);
      return CalibrationDecision.of(
          new CalibrationDecision.Question(
              line::at, outlook.groupSlope(group), ALLOWANCE, 0.05, TODAY, EXPIRY, followedTo));
    }

    private static boolean asks(CalibrationDecision decision) {
      return decision.decision() == Decision.RECALIBRATE_BY
          || decision.decision() == Decision.RECALIBRATE_NOW;
    }

    private static boolean isInTime(CalibrationDecision decision, int crossing) {
      return decision.decision() == Decision.RECALIBRATE_NOW
          || (decision.decision() == Decision.RECALIBRATE_BY
              && decision.lastSafeDay().getAsInt() < crossing);
    }

    String row() {
      return String.format(
          Locale.ROOT,
          "%d,%d,%.1f,%.1f,%.0f,%d,%.3f,%.3f,%.3f,%.3f,%.3f,%d,%.3f,%.3f,%.3f,%.3f,%d,%.3f",
          windows,
          current,
          truth.offsets(),
          truth.slopes(),
          truth.drift(),
          benches,
          held[0] / (double) benches,
          held[1] / (double) benches,
          held[2] / (double) benches,
          kept / (double) benches,
          keptWrongly / (double) benches,
          beyond,
          inTime / Math.max(1.0, beyond),
          inTimeAlone / Math.max(1.0, beyond),
          asked / Math.max(1.0, benches - beyond),
          askedAlone / Math.max(1.0, benches - beyond),
          likely,
          likelyAndBeyond / Math.max(1.0, likely));
    }
  }

  @BeforeAll
  void simulate() throws IOException {
    double[] spreads = {0, 0.5, 1.5};
    for (double drift : new double[] {0, 5}) {
      for (double offsets : spreads) {
        for (double slopes : spreads) {
          for (int windows : new int[] {1, 2, 4, 12}) {
            for (int current : new int[] {3, 5, 8}) {
              cells.add(new Cell(new Truth(offsets, slopes, drift), windows, current));
            }
          }
        }
      }
    }
    cells.parallelStream().forEach(c -> c.run(Coverage.trials(SLICE, WHOLE)));
    write();
  }

  private void write() throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add(
        "windows,currentResults,offsetSpread,slopeSpread,averageDrift,benches,held95onDay15,"
            + "held95onDay25,held95onDay30,kept,keptThoughBeyond,benchesBeyond,calledInTime,"
            + "calledInTimeByOwnLineAlone,askedThoughInside,askedThoughInsideByOwnLineAlone,"
            + "saidChance20to40,ofTheseBeyond");
    cells.forEach(c -> lines.add(c.row()));
    Path folder = Path.of(System.getProperty("tables", "target/tables"));
    Files.createDirectories(folder);
    Files.write(folder.resolve("simulated-outlooks.csv"), lines);
  }

  private static boolean isWhole() {
    return Coverage.trials(0, 1) == 1;
  }

  private int total(java.util.function.ToIntFunction<Cell> of) {
    return cells.stream().mapToInt(of).sum();
  }

  @Test
  void intervals_of_95_percent_hold_the_line() {
    for (int i = 0; i < DAYS.length; i++) {
      int day = i;
      double held = total(c -> c.held[day]) / (double) total(c -> c.benches);
      assertEquals(0.9575, held, isWhole() ? 0.0125 : 0.035, "day " + DAYS[i]);
      if (isWhole()) {
        for (Cell cell : cells) {
          double share = cell.held[day] / (double) cell.benches;
          assertTrue(share >= 0.92 && share <= 0.9995, cell.row());
        }
      }
    }
  }

  @Test
  void a_calibration_that_is_kept_stays_inside_its_allowance() {
    assertTrue(total(c -> c.keptWrongly) <= 0.05 * total(c -> c.benches));
    if (isWhole()) {
      cells.forEach(c -> assertTrue(c.keptWrongly <= 0.05 * c.benches, c.row()));
    }
  }

  @Test
  void chances_of_20_to_40_percent_come_true_about_as_often() {
    double share = total(c -> c.likelyAndBeyond) / (double) total(c -> c.likely);
    assertEquals(0.30, share, isWhole() ? 0.15 : 0.25);
  }

  /**
   * A line drawn to its allowance by what other windows do calls a little later where those say
   * little: 5 percent of the drifts at most, in any kind.
   */
  @Test
  void earlier_windows_call_a_drift_in_time_more_often_than_the_window_alone() {
    assertTrue(total(c -> c.inTime) > total(c -> c.inTimeAlone));
    if (isWhole()) {
      for (Cell cell : cells) {
        if (cell.beyond >= ENOUGH_DRIFTS) {
          assertTrue(cell.aloneOnly - cell.pooledOnly <= 0.05 * cell.beyond, cell.row());
        }
      }
    }
  }
}
