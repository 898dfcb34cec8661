package org.quietline.assess;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.quietline.bench.Method.ShelfLife;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.Result;
import org.quietline.bench.Storage;
import org.quietline.bench.Temperature;

/**
 * How long an opened reagent lasts when it stood warm: consumed life {@code L = Σ Δt/life(T)} since
 * opening, and the day on which it reaches one.
 *
 * <p>{@code life(T) = life(cold)·Q10^(−(T − Tcold)/10)}, with {@code Q10 =
 * (life(cold)/life(ambient))^ (10/(Tambient − Tcold))} from the two shelf lives of the method,
 * which are taken to hold at 5 and 25 °C (common practice, not the maker's word). A temperature
 * counts until the next one of the same place, for a day at most; the rest of the time the lot's
 * shelf life under its storage counts. No temperature lets a lot last longer than that. Below 0 °C
 * nothing is computed: a lot kept in a refrigerator is out of use from that day until somebody
 * answers for it. This is a rule for planning; blank, slope and control are the evidence of a
 * reagent's health. Source of the form: practice of stability studies after Arrhenius; ISO 23640
 * (from memory).
 */
final class ReagentLife {
  /** Where the two shelf lives hold, in °C: common practice. */
  static final double REFRIGERATED_AT = 5;

  static final double AMBIENT_AT = 25;

  /** A logger reads often and a person once a day; what is older says nothing any more. */
  private static final Duration COUNTS_FOR = Duration.ofDays(1);

  private static final double MINUTES_A_DAY = 1440;

  private final ReagentLot lot;
  private final ShelfLife shelfLife;
  private final TreeMap<LocalDateTime, Double> temperatures = new TreeMap<>();

  ReagentLife(Records records, ReagentLot lot) {
    this.lot = lot;
    this.shelfLife = records.method().shelfLife();
    records.bench().temperatures().stream()
        .filter(t -> t.isOf(lot))
        .sorted(Comparator.comparing(Temperature::takenAt))
        .forEach(t -> temperatures.put(t.takenAt(), t.celsius().doubleValue()));
    if (lot.storage().equals(Optional.of(Storage.AMBIENT))) {
      records.bench().results().stream()
          .filter(r -> r.reagentLot().equals(Optional.of(lot.key())))
          .filter(r -> r.method().equals(lot.method()))
          .flatMap(ReagentLife::atBench)
          .forEach(t -> temperatures.putIfAbsent(t.getKey(), t.getValue()));
    }
  }

  private static Stream<Map.Entry<LocalDateTime, Double>> atBench(Result result) {
    return result.temperatureC().stream().map(t -> Map.entry(result.takenAt(), t.doubleValue()));
  }

  /** Days of life at a temperature, never more than under the lot's own storage. */
  static double lifeAt(double celsius, double cold, double ambient, double atMost) {
    double tenDegrees = Math.pow(cold / ambient, 10 / (AMBIENT_AT - REFRIGERATED_AT));
    return Math.min(atMost, cold * Math.pow(tenDegrees, -(celsius - REFRIGERATED_AT) / 10));
  }

  /**
   * The day before the first freezing of a lot that is kept in a refrigerator, if there was one.
   */
  Optional<LocalDate> dayBeforeFreezing() {
    if (!lot.storage().equals(Optional.of(Storage.REFRIGERATED))) {
      return Optional.empty();
    }
    LocalDate from = lot.receivedOn().or(() -> lot.openedOn()).orElse(LocalDate.MIN);
    return temperatures.entrySet().stream()
        .filter(t -> t.getValue() < 0 && !t.getKey().toLocalDate().isBefore(from))
        .map(t -> t.getKey().toLocalDate().minusDays(1))
        .findFirst();
  }

  /** The last day by consumed life, where temperatures shorten it. */
  Optional<LocalDate> lastDayByWarmth() {
    if (lot.openedOn().isEmpty()
        || lot.storage().isEmpty()
        || shelfLife.refrigerated().isEmpty()
        || shelfLife.ambient().isEmpty()
        || shelfLife.ambient().getAsInt() >= shelfLife.refrigerated().getAsInt()) {
      return Optional.empty();
    }
    double cold = shelfLife.refrigerated().getAsInt();
    double ambient = shelfLife.ambient().getAsInt();
    double usual = shelfLife.under(lot.storage().get()).getAsInt();
    LocalDateTime at = lot.openedOn().get().atStartOfDay();
    double left = 1;
    List<LocalDateTime> moments =
        List.copyOf(temperatures.tailMap(at.minus(COUNTS_FOR), true).keySet());
    for (int i = 0; i < moments.size(); i++) {
      LocalDateTime start = latest(moments.get(i), at);
      LocalDateTime end = moments.get(i).plus(COUNTS_FOR);
      if (i + 1 < moments.size() && moments.get(i + 1).isBefore(end)) {
        end = moments.get(i + 1);
      }
      if (!end.isAfter(at)) {
        continue;
      }
      double before = days(at, start) / usual;
      double life = lifeAt(temperatures.getOrDefault(moments.get(i), 0.0), cold, ambient, usual);
      double during = days(start, end) / life;
      if (before >= left) {
        return Optional.of(dayAfter(at, left * usual));
      }
      if (before + during >= left) {
        return Optional.of(dayAfter(start, (left - before) * life));
      }
      left -= before + during;
      at = end;
    }
    return Optional.of(dayAfter(at, left * usual));
  }

  private static LocalDateTime latest(LocalDateTime one, LocalDateTime other) {
    return one.isAfter(other) ? one : other;
  }

  private static double days(LocalDateTime from, LocalDateTime to) {
    return Duration.between(from, to).toMinutes() / MINUTES_A_DAY;
  }

  /** The day in which life ends is its last, as the last day of a shelf life is. */
  private static LocalDate dayAfter(LocalDateTime from, double days) {
    return from.plusMinutes(Math.round(days * MINUTES_A_DAY)).toLocalDate();
  }

  /** The temperatures it rests on, in time order, in °C. */
  double[] celsius() {
    return temperatures.values().stream().mapToDouble(Double::doubleValue).toArray();
  }
}
