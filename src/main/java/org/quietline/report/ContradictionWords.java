package org.quietline.report;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.quietline.assess.Concern;
import org.quietline.assess.Contradiction;
import org.quietline.assess.Contradiction.ActionBeforeResult;
import org.quietline.assess.Contradiction.BeforeFirstCalibration;
import org.quietline.assess.Contradiction.CalibratedLater;
import org.quietline.assess.Contradiction.CalibrationIdTwice;
import org.quietline.assess.Contradiction.LotOpened;
import org.quietline.assess.Contradiction.LotUnknown;
import org.quietline.assess.Contradiction.LotUsedEarly;
import org.quietline.assess.Contradiction.PartExceedsWhole;
import org.quietline.assess.Contradiction.PersonDoubted;
import org.quietline.assess.Contradiction.SequenceGap;
import org.quietline.assess.Contradiction.SequenceRepeated;
import org.quietline.assess.Contradiction.TimeInFuture;
import org.quietline.assess.Contradiction.TimeOutOfStep;
import org.quietline.assess.Contradiction.TimeSkipped;
import org.quietline.assess.Findings;
import org.quietline.assess.OutOfDate;
import org.quietline.bench.Calibration;
import org.quietline.bench.Check;
import org.quietline.bench.Person;
import org.quietline.bench.Result;

/** Contradictions as sentences: what, where with file and line, and what would mend it. */
final class ContradictionWords {
  /** How many ids a step names. */
  private static final int MOST_IDS = 3;

  private static final int DIGITS = 4;

  private ContradictionWords() {}

  /** The reason of a verdict for all open questions of one check. */
  static String reason(Concern.RecordsContradict concern) {
    String first = sentence(concern.open().get(0));
    return concern.open().size() == 1
        ? first
        : concern.open().size()
            + " questions of the check "
            + concern.check().key()
            + " are open; the first: "
            + first;
  }

  /** What to do about the open questions of one check. */
  static String step(Check check) {
    return whatToDo(check) + " Or answer in actions.csv.";
  }

  /** The ids of the first questions, one a line. */
  static String ids(List<Contradiction> open) {
    return firstOf(open.stream().map(c -> c.id().toString()).distinct().toList());
  }

  /** The first ids, one a line. */
  static String firstOf(List<String> ids) {
    int more = ids.size() - MOST_IDS;
    return ids.stream().limit(MOST_IDS).collect(Collectors.joining("\n"))
        + (more > 0 ? "\nand " + more + " more on the last pages" : "");
  }

  /** What must be known of questions about the whole bench; empty when none is open. */
  static Optional<String> alarm(Findings findings) {
    List<Contradiction> open = findings.across().openOfBench();
    if (open.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        Numbers.count(open.size(), "question", "questions")
            + " about the records of the whole bench "
            + (open.size() == 1 ? "is" : "are")
            + " open, see the last pages.");
  }

  /** What two records say, with the place of the one most in doubt in front. */
  static String sentence(Contradiction found) {
    return found.asked().origins().get(0) + ": " + said(found);
  }

  private static String said(Contradiction found) {
    if (found instanceof OutOfDate c) {
      return pastDate(c);
    } else if (found instanceof CalibratedLater c) {
      return name(c.result())
          + " names calibration "
          + c.calibration().key()
          + ", which was made later, on "
          + moment(c.calibration())
          + ".";
    } else if (found instanceof BeforeFirstCalibration c) {
      return many(c.results(), "is", "are")
          + " older than the first calibration recorded, "
          + c.first().key()
          + " of "
          + moment(c.first())
          + ".";
    } else if (found instanceof LotOpened c) {
      return opened(c);
    } else if (found instanceof LotUsedEarly c) {
      return usedEarly(c);
    } else if (found instanceof LotUnknown c) {
      return many(c.results(), "names", "name")
          + " reagent lot "
          + c.lot()
          + ", which reagents.csv does not hold"
          + (c.recordedFor().isEmpty()
              ? "."
              : " for this method, only for " + String.join(", ", c.recordedFor()) + ".");
    } else if (found instanceof PartExceedsWhole c) {
      return part(c);
    } else if (found instanceof PersonDoubted c) {
      return many(c.results(), "was", "were") + " made by " + person(c) + ".";
    } else if (found instanceof ActionBeforeResult c) {
      return "the action on "
          + c.action().matter()
          + " was recorded on "
          + Dates.minute(c.action().recordedAt())
          + ", before its result was taken on "
          + Dates.minute(c.resultAt())
          + " ("
          + c.asked().origins().get(1)
          + ").";
    }
    return ofBench(found);
  }

  private static String ofBench(Contradiction found) {
    if (found instanceof CalibrationIdTwice c) {
      return "the id "
          + c.calibrations().get(0).key()
          + " stands for "
          + c.calibrations().size()
          + " calibrations: "
          + c.calibrations().stream()
              .map(k -> k.method() + " on " + k.instrument() + " of " + moment(k))
              .collect(Collectors.joining(", "))
          + ".";
    } else if (found instanceof SequenceGap c) {
      boolean one = c.from() == c.to();
      return "before number "
          + (c.to() + 1)
          + " of "
          + c.instrument()
          + (one
              ? ", number " + c.from() + " is missing"
              : ", numbers " + c.from() + " to " + c.to() + " are missing")
          + "; the row before is of "
          + Dates.minute(c.before().takenAt())
          + " ("
          + c.before().origin()
          + ").";
    } else if (found instanceof SequenceRepeated c) {
      return "number "
          + c.number()
          + " of "
          + c.results().get(0).instrument()
          + " stands on "
          + c.results().size()
          + " results: "
          + c.results().stream()
              .map(r -> r.sample() + " of " + Dates.minute(r.takenAt()) + " (" + r.origin() + ")")
              .collect(Collectors.joining(", "))
          + ".";
    } else if (found instanceof TimeOutOfStep c) {
      return name(c.result())
          + " stands between rows of "
          + Dates.minute(c.before().takenAt())
          + " and "
          + Dates.minute(c.after().takenAt())
          + (c.used() ? "." : "; this review does not use it.");
    } else if (found instanceof TimeInFuture c) {
      return name(c.result())
          + " lies "
          + Dates.days(c.latestElse().toLocalDate(), c.result().takenAt().toLocalDate())
          + " days after everything else, which ends on "
          + Dates.full(c.latestElse())
          + "; this review does not use it.";
    } else if (found instanceof TimeSkipped c) {
      return "the time "
          + c.asked().when()
          + " of "
          + c.what()
          + " does not exist: the clocks were put forward from "
          + c.from().toLocalTime()
          + " to "
          + c.to().toLocalTime()
          + " on that day.";
    }
    throw new IllegalArgumentException("no words for " + found.check());
  }

  /** What would mend it. */
  static String whatToDo(Check check) {
    return switch (check) {
      case RESULT_BEFORE_CALIBRATION ->
          "Correct the time or the calibration; until then the result counts as one without"
              + " calibration.";
      case BEFORE_FIRST_CALIBRATION -> "Write the calibration in force then into calibrations.csv.";
      case RESULT_AFTER_VALIDITY, REAGENT_PAST_DATE ->
          "Decide on the result; retest what was or will be released on it.";
      case LOT_OPENED_BEFORE_RECEIVED -> "Correct the day that is wrong in reagents.csv.";
      case LOT_OPENED_AFTER_EXPIRY ->
          "Put the lot out of use, or correct the day that is wrong in reagents.csv.";
      case LOT_USED_BEFORE_RECEIVED, LOT_USED_BEFORE_OPENED ->
          "Correct the lot in the row, or its days in reagents.csv.";
      case LOT_NOT_RECORDED -> "Write the lot into reagents.csv, or correct it in the row.";
      case CALIBRATION_ID_TWICE ->
          "Give each calibration an id of its own, also in the rows that name it.";
      case SEQUENCE_GAP -> "Find the missing rows, or say why there are none.";
      case SEQUENCE_REPEATED -> "Correct the number that is wrong, or take out the row too many.";
      case TIME_OUT_OF_STEP, TIME_IN_FUTURE, TIME_DOES_NOT_EXIST ->
          "Correct the time, and see that the clock of the instrument is right.";
      case PART_EXCEEDS_WHOLE ->
          "Look at both results for a slip or a swapped sample, and test again where none is"
              + " found.";
      case PERSON_NOT_LISTED -> "Correct the sign in the row, or write the person into bench.toml.";
      case PERSON_NOT_ENTITLED ->
          "Correct the sign in the row or the person in bench.toml; else look again at what was"
              + " tested.";
      case ACTION_BEFORE_RESULT -> "Correct recorded_at, or the id, in actions.csv.";
      case ROWS_IN_CONFLICT, SLIP_IN_VALUE, SWAPPED_READINGS, SWAPPED_SAMPLES, COPIED_DOWN ->
          throw new IllegalArgumentException(check + " finds no contradiction");
    };
  }

  private static String pastDate(OutOfDate past) {
    String other =
        past.otherDay()
            .map(
                day ->
                    switch (past.kind()) {
                      case REAGENT_EXPIRY ->
                          "; the printed date governs, the shelf life would end later, on "
                              + Dates.full(day);
                      case REAGENT_WARMTH, REAGENT_FROZEN ->
                          "; without the temperatures in cold-chain.csv its last day is "
                              + Dates.full(day);
                      case REAGENT_SHELF_LIFE, CALIBRATION_VALIDITY ->
                          "; the shelf life governs, the printed date is later, " + Dates.full(day);
                    })
            .orElse("");
    return name(past.result())
        + " was made "
        + Numbers.count(past.daysPast(), "day", "days")
        + " after "
        + Reasons.what(past)
        + " on "
        + Dates.full(past.lastDay())
        + other
        + ".";
  }

  private static String opened(LotOpened found) {
    boolean early = found.check() == Check.LOT_OPENED_BEFORE_RECEIVED;
    return "reagent lot "
        + found.lot().key()
        + " of "
        + found.lot().method()
        + " was opened on "
        + found.lot().openedOn().map(Dates::full).orElse("")
        + (early ? ", before it was received on " : ", after the date printed on it, ")
        + (early ? found.lot().receivedOn() : found.lot().expiresOn()).map(Dates::full).orElse("")
        + ".";
  }

  private static String usedEarly(LotUsedEarly found) {
    boolean received = found.check() == Check.LOT_USED_BEFORE_RECEIVED;
    return many(found.results(), "was", "were")
        + " made with reagent lot "
        + found.lot().key()
        + " before it was "
        + (received ? "received on " : "opened on ")
        + (received ? found.lot().receivedOn() : found.lot().openedOn()).map(Dates::full).orElse("")
        + " ("
        + found.lot().origin()
        + ").";
  }

  private static String part(PartExceedsWhole found) {
    String part = Numbers.figures(found.partValue(), DIGITS);
    String whole = Numbers.figures(found.wholeValue(), DIGITS);
    boolean alike = part.equals(whole);
    return name(found.part())
        + " is "
        + (alike ? Double.toString(found.partValue()) : part)
        + " in the unit of "
        + found.whole().method()
        + ", more than the whole it is a part of, "
        + (alike ? Double.toString(found.wholeValue()) : whole)
        + " ("
        + found.whole().origin()
        + ").";
  }

  private static String person(PersonDoubted found) {
    if (found.person().isEmpty()) {
      return found.operator() + ", who is not among the people in bench.toml";
    }
    Person person = found.person().get();
    if (!person.may().isEmpty() && !person.may().contains("test")) {
      return found.operator()
          + ", who may "
          + String.join(" and ", person.may())
          + ", but not test";
    }
    return found.operator()
        + ", who may test from "
        + person.from().map(Dates::full).orElse("")
        + " on";
  }

  private static String moment(Calibration calibration) {
    return Dates.minute(calibration.calibratedAt()) + " (" + calibration.origin() + ")";
  }

  private static String many(List<Result> results, String one, String many) {
    return results.size() == 1
        ? name(results.get(0)) + " " + one
        : results.size() + " results, the first " + name(results.get(0)) + ", " + many;
  }

  /** "B-1041 of 14 Oct 2026, 09:12 (total-glycerin on PM-1)". */
  static String name(Result result) {
    return result.sample()
        + " of "
        + Dates.minute(result.takenAt())
        + " ("
        + result.method()
        + " on "
        + result.instrument()
        + ")";
  }
}
