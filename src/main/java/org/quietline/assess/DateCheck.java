package org.quietline.assess;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.quietline.assess.OutOfDate.Kind;
import org.quietline.bench.Calibration;
import org.quietline.bench.Check;
import org.quietline.bench.QuestionId;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.Result;

/** Which results were made past the date of their calibration or reagent? */
final class DateCheck {
  private DateCheck() {}

  static List<OutOfDate> ask(Records records) {
    List<OutOfDate> found = new ArrayList<>();
    Map<ReagentLot, Optional<Due>> dates = new HashMap<>();
    for (Result result : records.results()) {
      records
          .bench()
          .calibrationOf(result)
          .filter(c -> isOn(records, Check.RESULT_AFTER_VALIDITY))
          .flatMap(c -> validity(records, c))
          .flatMap(d -> d.passedBy(records, result))
          .ifPresent(found::add);
      records
          .bench()
          .reagentLotOf(result)
          .filter(lot -> isOn(records, Check.REAGENT_PAST_DATE))
          .flatMap(lot -> dates.computeIfAbsent(lot, l -> reagentDate(records, l)))
          .flatMap(d -> d.passedBy(records, result))
          .ifPresent(found::add);
    }
    return found;
  }

  private static boolean isOn(Records records, Check check) {
    return records.bench().settings().isOn(check, records.method().key());
  }

  /** For how many results of the period a date could be checked at all. */
  static DateCoverage coverage(Records records) {
    List<Result> results =
        records.results().stream().filter(r -> records.period().contains(r.takenAt())).toList();
    Map<ReagentLot, Optional<Due>> dates = new HashMap<>();
    boolean calibrated = records.method().calibrationValidDays().isPresent();
    long noCalibration =
        results.stream()
            .filter(r -> calibrated && records.bench().calibrationOf(r).isEmpty())
            .count();
    long noReagentDate =
        results.stream()
            .filter(
                r ->
                    records
                        .bench()
                        .reagentLotOf(r)
                        .flatMap(lot -> dates.computeIfAbsent(lot, l -> reagentDate(records, l)))
                        .isEmpty())
            .count();
    return new DateCoverage(
        results.size(), (int) noCalibration, (int) noReagentDate, lotsInUse(records));
  }

  /** The lots that the latest result of an instrument was made with, in key order. */
  static List<LotLife> lotsInUse(Records records) {
    TreeMap<String, ReagentLot> inUse = new TreeMap<>();
    for (String instrument : records.instruments()) {
      records.results().stream()
          .filter(r -> r.instrument().equals(instrument) && r.reagentLot().isPresent())
          .reduce((earlier, later) -> later)
          .flatMap(records.bench()::reagentLotOf)
          .ifPresent(lot -> inUse.put(lot.key(), lot));
    }
    LocalDate today = records.now().toLocalDate();
    return inUse.values().stream()
        .map(lot -> new LotLife(lot.key(), reagentDate(records, lot).map(d -> d.seenOn(today))))
        .toList();
  }

  private static Optional<Due> validity(Records records, Calibration calibration) {
    OptionalInt days = records.method().calibrationValidDays();
    return days.isPresent()
        ? Optional.of(
            new Due(
                Kind.CALIBRATION_VALIDITY,
                calibration.key(),
                calibration.calibratedAt().toLocalDate().plusDays(days.getAsInt()),
                Optional.empty()))
        : Optional.empty();
  }

  /**
   * The earliest of the printed date, the shelf life under the lot's storage, what warmth left of
   * it, and freezing.
   */
  private static Optional<Due> reagentDate(Records records, ReagentLot lot) {
    Optional<LocalDate> printed = lot.expiresOn();
    Optional<LocalDate> life = lot.openedOn().flatMap(opened -> lastDayOpen(records, lot, opened));
    ReagentLife temperatures = new ReagentLife(records, lot);
    List<Due> dues = new ArrayList<>();
    printed.ifPresent(day -> dues.add(new Due(Kind.REAGENT_EXPIRY, lot.key(), day, life)));
    life.ifPresent(day -> dues.add(new Due(Kind.REAGENT_SHELF_LIFE, lot.key(), day, printed)));
    Optional<LocalDate> other =
        Stream.concat(printed.stream(), life.stream()).min(LocalDate::compareTo);
    temperatures
        .lastDayByWarmth()
        .filter(day -> life.map(day::isBefore).orElse(false))
        .ifPresent(day -> dues.add(new Due(Kind.REAGENT_WARMTH, lot.key(), day, other)));
    temperatures
        .dayBeforeFreezing()
        .ifPresent(day -> dues.add(new Due(Kind.REAGENT_FROZEN, lot.key(), day, other)));
    return dues.stream().min(Comparator.comparing(Due::lastDay));
  }

  private static Optional<LocalDate> lastDayOpen(
      Records records, ReagentLot lot, LocalDate opened) {
    OptionalInt days =
        lot.storage().map(s -> records.method().shelfLife().under(s)).orElse(OptionalInt.empty());
    return days.isPresent() ? Optional.of(opened.plusDays(days.getAsInt())) : Optional.empty();
  }

  /** A date that something may not be used beyond. */
  private record Due(Kind kind, String what, LocalDate lastDay, Optional<LocalDate> otherDay) {
    LotLife.Until seenOn(LocalDate today) {
      return new LotLife.Until(lastDay, ChronoUnit.DAYS.between(today, lastDay), kind);
    }

    Optional<OutOfDate> passedBy(Records records, Result result) {
      LocalDate day = result.takenAt().toLocalDate();
      if (!day.isAfter(lastDay)) {
        return Optional.empty();
      }
      return Optional.of(
          new OutOfDate(
              result,
              kind,
              what,
              lastDay,
              otherDay,
              ChronoUnit.DAYS.between(lastDay, day),
              records.period().contains(result.takenAt()),
              records.bench().closing(QuestionId.of(result, kind.check()))));
    }
  }
}
