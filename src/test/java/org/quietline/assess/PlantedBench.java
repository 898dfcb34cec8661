package org.quietline.assess;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.quietline.bench.Bench;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.Instrument;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.OutlookSettings;
import org.quietline.bench.Reading;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Settings;
import org.quietline.bench.Unit;

/**
 * Draws the records of an invented bench of 600 results over 40 days: 130 controls; 130 batches,
 * each tested for total glycerin and acid number; 120 incoming oils tested for free fatty acid, of
 * which 60 also for acid number; 30 retests.
 *
 * <p>Batches spread by 10 % (glycerin) and 14 % (acid number), incoming oils lognormally by a
 * factor of two about 3 % free fatty acid. A reading errs by a constant and a share of its level, a
 * session by as much again; one result in a hundred has a bubble, a reading that is up to 10 % off.
 */
final class PlantedBench {
  static final int DAYS = 40;
  static final Method GLYCERIN = method("total-glycerin", "% mass", 3);
  static final Method ACID = method("acid-number", "mg KOH/g", 3);
  static final Method FATTY = method("free-fatty-acid", "% mass", 2);

  private final SplittableRandom random;
  private final List<Drawn> drawn = new ArrayList<>();

  /** A result on its way, with the true deviation of one reading and of results over days. */
  record Drawn(
      LocalDateTime at,
      Method method,
      Role role,
      String sample,
      List<BigDecimal> readings,
      double reading,
      double overDays) {
    Drawn with(List<BigDecimal> other) {
      return new Drawn(at, method, role, sample, other, reading, overDays);
    }

    double value() {
      return readings.stream().mapToDouble(BigDecimal::doubleValue).average().orElseThrow();
    }
  }

  /** What a sample is, and what a method reads of it. */
  private record Oil(String sample, double fattyAcid, double mineral) {
    double acidNumber() {
      return 1.9863 * fattyAcid + mineral;
    }
  }

  PlantedBench(SplittableRandom random) {
    this.random = random;
    List<Oil> oils = new ArrayList<>();
    List<double[]> batches = new ArrayList<>();
    for (int day = 0; day < DAYS; day++) {
      session(day, GLYCERIN, 8, batches, oils);
      session(day, ACID, 10, batches, oils);
      session(day, FATTY, 12, batches, oils);
    }
  }

  List<Drawn> results() {
    return drawn;
  }

  /** Controls first, then what came in that day, then a retest on three days of four. */
  private void session(int day, Method method, int hour, List<double[]> batches, List<Oil> oils) {
    LocalDateTime start = LocalDateTime.of(2026, 3, 2, hour, 0).plusDays(day);
    boolean glycerin = method.equals(GLYCERIN);
    boolean acid = method.equals(ACID);
    Sitting sitting = new Sitting(start, method, normal());
    sitting.test(Role.CONTROL, glycerin ? "QC-TG" : acid ? "QC-AN" : "QC-FA", control(method));
    if (glycerin && day % 4 == 0) {
      sitting.test(Role.CONTROL, "QC-TG", control(method));
    }
    if (glycerin) {
      for (int i = 0; i < batchesOn(day); i++) {
        batches.add(new double[] {0.183 + 0.0185 * normal(), 0.28 * Math.exp(0.14 * normal())});
        sitting.test(Role.PRODUCT, batch(batches.size()), batches.get(batches.size() - 1)[0]);
      }
    } else if (acid) {
      for (int i = batches.size() - batchesOn(day); i < batches.size(); i++) {
        sitting.test(Role.PRODUCT, batch(i + 1), batches.get(i)[1]);
      }
      for (int i = 0; i < 3; i++) {
        double level = 3 * Math.exp(0.7 * normal());
        String name = String.format(Locale.ROOT, "O-%03d", oils.size() + 1);
        oils.add(new Oil(name, Math.min(level, 20), 0.03 * random.nextDouble()));
      }
      for (int i = 0; i < 1 + day % 2; i++) {
        Oil oil = oils.get(oils.size() - 1 - i);
        sitting.test(Role.PRODUCT, oil.sample(), oil.acidNumber());
      }
    } else {
      for (Oil oil : oils.subList(oils.size() - 3, oils.size())) {
        sitting.test(Role.PRODUCT, oil.sample(), oil.fattyAcid());
      }
    }
    if (day >= 10) {
      retest(sitting, day, batches, oils);
    }
  }

  private void retest(Sitting sitting, int day, List<double[]> batches, List<Oil> oils) {
    if (day % 3 == 0 && sitting.method.equals(GLYCERIN)) {
      int i = random.nextInt(batches.size() - 10);
      sitting.test(Role.RETEST, batch(i + 1), batches.get(i)[0]);
    } else if (day % 3 == 1 && sitting.method.equals(ACID)) {
      int i = random.nextInt(batches.size() - 10);
      sitting.test(Role.RETEST, batch(i + 1), batches.get(i)[1]);
    } else if (day % 3 == 2 && sitting.method.equals(FATTY)) {
      Oil oil = oils.get(random.nextInt(oils.size() - 10));
      sitting.test(Role.RETEST, oil.sample(), oil.fattyAcid());
    }
  }

  private static int batchesOn(int day) {
    return day % 4 == 0 ? 4 : 3;
  }

  private static String batch(int number) {
    return String.format(Locale.ROOT, "B-%04d", 1000 + number);
  }

  private static double control(Method method) {
    return method.equals(GLYCERIN) ? 0.180 : method.equals(ACID) ? 0.300 : 2.00;
  }

  private double normal() {
    double radius = Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
    return radius * Math.cos(2 * Math.PI * random.nextDouble());
  }

  /** One session of one method, with its own error. */
  private final class Sitting {
    private final Method method;
    private final double error;
    private LocalDateTime at;

    Sitting(LocalDateTime start, Method method, double error) {
      this.at = start;
      this.method = method;
      this.error = error;
    }

    void test(Role role, String sample, double truth) {
      double reading =
          method.equals(GLYCERIN)
              ? 0.002
              : method.equals(ACID)
                  ? Math.hypot(0.004, 0.012 * truth)
                  : Math.hypot(0.02, 0.012 * truth);
      double bubble = random.nextInt(100) == 0 ? random.nextDouble(0.9, 1.1) : 1;
      double level = truth + error * reading;
      drawn.add(
          new Drawn(
              at,
              method,
              role,
              sample,
              List.of(
                  rounded(bubble * (level + reading * normal()), method),
                  rounded(level + reading * normal(), method)),
              reading,
              Math.hypot(reading, reading / Math.sqrt(2))));
      at = at.plusMinutes(6 + random.nextInt(12));
    }
  }

  static BigDecimal rounded(double value, Method method) {
    return BigDecimal.valueOf(Math.max(value, Math.pow(10, -method.decimals())))
        .setScale(method.decimals(), RoundingMode.HALF_UP);
  }

  /** The bench as it would be read from sheets. */
  static Bench bench(List<Drawn> drawn) {
    List<Method> methods = List.of(GLYCERIN, ACID, FATTY);
    List<Result> results = new ArrayList<>();
    for (int i = 0; i < drawn.size(); i++) {
      results.add(result(drawn.get(i), i + 2));
    }
    Settings settings =
        new Settings(
            "Invented bench",
            ZoneId.of("UTC"),
            methods,
            List.of(new Instrument("PM-1", "Photometer 1")),
            List.of(material("QC-TG", GLYCERIN), material("QC-AN", ACID), material("QC-FA", FATTY)),
            List.of(),
            List.of(),
            ChartSettings.DEFAULTS,
            OutlookSettings.DEFAULTS,
            ReleaseSettings.DEFAULTS,
            List.of());
    return new Bench(settings, results, List.of(), List.of(), List.of(), List.of(), List.of());
  }

  private static Material material(String key, Method method) {
    return new Material(key, method.key(), Optional.empty(), Optional.empty());
  }

  private static Result result(Drawn drawn, int line) {
    List<Reading> readings = drawn.readings().stream().<Reading>map(Reading.Measured::new).toList();
    return new Result(
        drawn.at(),
        drawn.method().key(),
        "PM-1",
        drawn.role(),
        drawn.sample(),
        readings,
        readings,
        drawn.method().unit(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new Origin("readings/a.csv", line));
  }

  private static Method method(String key, String unit, int decimals) {
    return new Method(
        key,
        key,
        new Unit(unit),
        decimals,
        2,
        ReplicateKind.RE_PREPARED,
        OptionalInt.empty(),
        Optional.empty(),
        Optional.empty(),
        Method.ShelfLife.NOT_SET,
        Optional.empty());
  }
}
