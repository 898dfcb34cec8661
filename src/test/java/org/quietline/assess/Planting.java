package org.quietline.assess;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.quietline.assess.PlantedBench.Drawn;
import org.quietline.bench.Role;

/**
 * Plants 30 slips in an invented bench, five of each kind, at places that chance chooses among
 * those where the slip can happen at all. No result holds two, and no sample that is not a control.
 *
 * <ul>
 *   <li>Power of ten: any result; by 10 in eight of ten cases, else by 100 to 10 000, up or down;
 *       in one reading or, as often, in all.
 *   <li>The other acidity: any result of a sample that was tested for both, so that both numbers
 *       are at hand; all readings become those of the other quantity, rounded to the method's
 *       decimals.
 *   <li>Swapped readings: a reading of one result and a reading of another of its session, of
 *       samples that differ by more than two repeatability limits.
 *   <li>Swapped samples: two results of a session that differ by more than two reproducibility
 *       limits, one of them of a sample that is known from elsewhere: a control, a sample tested
 *       twice, or one tested by the related method. Two fresh batches that change places leave no
 *       trace in the records.
 *   <li>Copied down: any result whose row before is of another sample.
 *   <li>Volume: any result; all readings twice or half as large.
 * </ul>
 */
final class Planting {
  /** The kinds of slip. */
  enum Kind {
    POWER_OF_TEN,
    OTHER_ACIDITY,
    SWAPPED_READINGS,
    SWAPPED_SAMPLES,
    COPIED_DOWN,
    VOLUME
  }

  static final int OF_EACH = 5;
  private static final double LIMIT = 2.77;

  private final SplittableRandom random;
  private final List<Drawn> rows;
  private final Map<Integer, Kind> planted = new HashMap<>();
  private final Map<Integer, Integer> partners = new HashMap<>();
  private final Set<Integer> taken = new HashSet<>();
  private final Set<String> samples = new HashSet<>();

  Planting(List<Drawn> rows, SplittableRandom random) {
    this.rows = new ArrayList<>(rows);
    this.random = random;
    for (Kind kind : Kind.values()) {
      int count = 0;
      while (count < OF_EACH) {
        int place = random.nextInt(rows.size());
        if (isFree(place) && plant(kind, place)) {
          planted.put(place, kind);
          take(place);
          count++;
        }
      }
    }
  }

  List<Drawn> rows() {
    return rows;
  }

  /** What was planted at which row. */
  Map<Integer, Kind> planted() {
    return planted;
  }

  /** The other row of a slip that concerns two. */
  Map<Integer, Integer> partners() {
    return partners;
  }

  private boolean plant(Kind kind, int place) {
    Drawn row = rows.get(place);
    return switch (kind) {
      case POWER_OF_TEN -> powerOfTen(place, row);
      case OTHER_ACIDITY -> otherAcidity(place, row);
      case SWAPPED_READINGS -> swappedReadings(place, row);
      case SWAPPED_SAMPLES -> swappedSamples(place, row);
      case COPIED_DOWN -> copiedDown(place, row);
      case VOLUME -> volume(place, row);
    };
  }

  private boolean powerOfTen(int place, Drawn row) {
    int places = random.nextInt(10) < 8 ? 1 : 2 + random.nextInt(3);
    int signed = random.nextBoolean() ? places : -places;
    boolean all = random.nextBoolean();
    int one = random.nextInt(2);
    List<BigDecimal> readings = new ArrayList<>(row.readings());
    for (int i = 0; i < 2; i++) {
      if (all || i == one) {
        readings.set(i, readings.get(i).scaleByPowerOfTen(signed));
      }
    }
    rows.set(place, row.with(readings));
    return true;
  }

  private boolean otherAcidity(int place, Drawn row) {
    boolean both =
        rows.stream()
            .anyMatch(
                r ->
                    isAcidity(r)
                        && r.sample().equals(row.sample())
                        && !r.method().equals(row.method()));
    if (!both || !isAcidity(row)) {
      return false;
    }
    double factor = row.method().equals(PlantedBench.ACID) ? 1 / 1.9863 : 1.9863;
    rows.set(place, row.with(times(row, factor)));
    return true;
  }

  private boolean volume(int place, Drawn row) {
    rows.set(place, row.with(times(row, random.nextBoolean() ? 2 : 0.5)));
    return true;
  }

  private static List<BigDecimal> times(Drawn row, double factor) {
    return row.readings().stream()
        .map(r -> r.multiply(BigDecimal.valueOf(factor)))
        .map(r -> r.setScale(row.method().decimals(), RoundingMode.HALF_UP))
        .toList();
  }

  private boolean swappedReadings(int place, Drawn row) {
    int other = sessionMate(place, 2 * LIMIT * row.reading());
    if (other < 0) {
      return false;
    }
    int mine = random.nextInt(2);
    int theirs = random.nextInt(2);
    List<BigDecimal> one = new ArrayList<>(row.readings());
    List<BigDecimal> two = new ArrayList<>(rows.get(other).readings());
    BigDecimal kept = one.set(mine, two.get(theirs));
    two.set(theirs, kept);
    exchange(place, one, other, two);
    return true;
  }

  private boolean swappedSamples(int place, Drawn row) {
    int other = isKnown(row) ? sessionMate(place, 2 * LIMIT * row.overDays()) : -1;
    if (other < 0) {
      return false;
    }
    exchange(place, rows.get(other).readings(), other, row.readings());
    return true;
  }

  private void exchange(int one, List<BigDecimal> first, int two, List<BigDecimal> second) {
    rows.set(one, rows.get(one).with(first));
    rows.set(two, rows.get(two).with(second));
    partners.put(one, two);
    take(two);
  }

  private boolean isFree(int place) {
    return !taken.contains(place) && !samples.contains(quantity(rows.get(place)));
  }

  private void take(int place) {
    taken.add(place);
    if (rows.get(place).role() != Role.CONTROL) {
      samples.add(quantity(rows.get(place)));
    }
  }

  /** What a result is about; acid number and free fatty acid are one quantity of a sample. */
  static String quantity(Drawn row) {
    return (isAcidity(row) ? "acidity " : "glycerin ") + row.sample();
  }

  /** A row of the same session that no slip has touched, and that differs by more than this. */
  private int sessionMate(int place, double difference) {
    Drawn row = rows.get(place);
    List<Integer> mates = new ArrayList<>();
    for (int i = Math.max(0, place - 12); i < Math.min(rows.size(), place + 13); i++) {
      Drawn mate = rows.get(i);
      if (isFree(i)
          && mate.method().equals(row.method())
          && mate.at().toLocalDate().equals(row.at().toLocalDate())
          && !mate.sample().equals(row.sample())
          && Math.abs(mate.value() - row.value())
              > difference * Math.max(1, mate.reading() / row.reading())) {
        mates.add(i);
      }
    }
    return mates.isEmpty() ? -1 : mates.get(random.nextInt(mates.size()));
  }

  private boolean isKnown(Drawn row) {
    return row.role() == Role.CONTROL
        || rows.stream()
            .anyMatch(
                r ->
                    !r.equals(row)
                        && r.sample().equals(row.sample())
                        && (r.method().equals(row.method()) || (isAcidity(r) && isAcidity(row))));
  }

  private static boolean isAcidity(Drawn row) {
    return !row.method().equals(PlantedBench.GLYCERIN);
  }

  private boolean copiedDown(int place, Drawn row) {
    for (int i = place - 1; i >= Math.max(0, place - 40); i--) {
      Drawn before = rows.get(i);
      if (before.method().equals(row.method())) {
        if (before.sample().equals(row.sample()) || taken.contains(i)) {
          return false;
        }
        rows.set(place, row.with(before.readings()));
        partners.put(place, i);
        taken.add(i);
        return true;
      }
    }
    return false;
  }

  /** An empty count of each kind. */
  static Map<Kind, Integer> counts() {
    Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
    for (Kind kind : Kind.values()) {
      counts.put(kind, 0);
    }
    return counts;
  }
}
