package org.quietline.assess;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Contradiction.LotOpened;
import org.quietline.assess.Contradiction.LotUnknown;
import org.quietline.assess.Contradiction.LotUsedEarly;
import org.quietline.bench.Check;
import org.quietline.bench.QuestionId;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.Result;

/** Do the days of a reagent lot and the results made with it fit each other? */
final class LotContradictions {
  private LotContradictions() {}

  static List<Contradiction> ask(Asking asking) {
    List<Contradiction> found = new ArrayList<>();
    for (ReagentLot lot : asking.bench().reagentLots()) {
      found.addAll(ownDays(asking, lot));
      found.addAll(usedEarly(asking, lot));
    }
    found.addAll(unknown(asking));
    return found;
  }

  /** A lot opened after the review's now is no news yet. */
  private static List<Contradiction> ownDays(Asking asking, ReagentLot lot) {
    Optional<LocalDate> opened =
        lot.openedOn().filter(day -> !day.isAfter(asking.now().toLocalDate()));
    List<Contradiction> found = new ArrayList<>();
    if (opened.isPresent() && lot.receivedOn().filter(opened.get()::isBefore).isPresent()) {
      opened(asking, lot, opened.get(), Check.LOT_OPENED_BEFORE_RECEIVED).ifPresent(found::add);
    }
    if (opened.isPresent() && lot.expiresOn().filter(opened.get()::isAfter).isPresent()) {
      opened(asking, lot, opened.get(), Check.LOT_OPENED_AFTER_EXPIRY).ifPresent(found::add);
    }
    return found;
  }

  private static Optional<Contradiction> opened(
      Asking asking, ReagentLot lot, LocalDate day, Check check) {
    return asking.isOn(check, lot.method())
        ? Optional.of(
            new LotOpened(
                asking.about(
                    idOf(lot, check),
                    Optional.of(lot.method()),
                    day.atStartOfDay(),
                    List.of(lot.origin())),
                lot))
        : Optional.empty();
  }

  /** A result made before the lot came is asked about once, not again because it was not open. */
  private static List<Contradiction> usedEarly(Asking asking, ReagentLot lot) {
    List<Result> made =
        asking.bench().results().stream()
            .filter(r -> r.method().equals(lot.method()))
            .filter(r -> r.reagentLot().filter(lot.key()::equals).isPresent())
            .toList();
    List<Result> beforeReceived = made.stream().filter(r -> before(r, lot.receivedOn())).toList();
    List<Result> beforeOpened =
        made.stream()
            .filter(r -> before(r, lot.openedOn()) && !before(r, lot.receivedOn()))
            .toList();
    List<Contradiction> found = new ArrayList<>();
    found.addAll(used(asking, lot, beforeReceived, Check.LOT_USED_BEFORE_RECEIVED));
    found.addAll(used(asking, lot, beforeOpened, Check.LOT_USED_BEFORE_OPENED));
    return found;
  }

  private static boolean before(Result result, Optional<LocalDate> day) {
    return day.filter(result.takenAt().toLocalDate()::isBefore).isPresent();
  }

  private static List<Contradiction> used(
      Asking asking, ReagentLot lot, List<Result> results, Check check) {
    return asking.isOn(check, lot.method())
        ? asking.aboutMany(
            idOf(lot, check), results, (asked, some) -> new LotUsedEarly(asked, lot, some))
        : List.of();
  }

  /**
   * Only where the bench records lots of the method: else there is nothing to hold rows against.
   */
  private static List<Contradiction> unknown(Asking asking) {
    List<ReagentLot> lots = asking.bench().reagentLots();
    List<Result> results =
        asking.bench().results().stream()
            .filter(r -> r.reagentLot().isPresent())
            .filter(r -> asking.isOn(Check.LOT_NOT_RECORDED, r.method()))
            .filter(r -> lots.stream().anyMatch(lot -> lot.method().equals(r.method())))
            .filter(r -> asking.bench().reagentLotOf(r).isEmpty())
            .toList();
    List<Contradiction> found = new ArrayList<>();
    Asking.by(r -> r.method() + "/" + r.reagentLot().orElseThrow(), results)
        .forEach(
            (name, some) -> {
              String lot = some.get(0).reagentLot().orElseThrow();
              List<String> recordedFor =
                  lots.stream().filter(l -> l.key().equals(lot)).map(ReagentLot::method).toList();
              found.addAll(
                  asking.aboutMany(
                      new QuestionId(name, Check.LOT_NOT_RECORDED),
                      some,
                      (asked, these) -> new LotUnknown(asked, lot, these, recordedFor)));
            });
    return found;
  }

  private static QuestionId idOf(ReagentLot lot, Check check) {
    return new QuestionId(lot.method() + "/" + lot.key(), check);
  }
}
