package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.quietline.bench.Action;
import org.quietline.bench.Calibration;
import org.quietline.bench.Check;
import org.quietline.bench.Origin;
import org.quietline.bench.Person;
import org.quietline.bench.QuestionId;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.Result;

/**
 * Records that cannot all be right. Nothing is corrected: each is a question with an id, and an
 * action that names the id and a cause answers it. Where one question is about a growing number of
 * results, an action answers for those taken before it was recorded; later ones ask again.
 */
public sealed interface Contradiction permits Contradiction.Found, OutOfDate {

  /**
   * What is common to all of them.
   *
   * @return the question
   */
  Asked asked();

  /**
   * The id an action names.
   *
   * @return the id
   */
  default QuestionId id() {
    return asked().id();
  }

  /**
   * The check that asks.
   *
   * @return the check
   */
  default Check check() {
    return id().check();
  }

  /**
   * Whether nobody has answered yet.
   *
   * @return true without an action that names a cause
   */
  default boolean open() {
    return asked().answer().isEmpty();
  }

  /**
   * The question that a contradiction puts.
   *
   * @param id the id an action names
   * @param method the key of the method it concerns; empty where it concerns the whole bench
   * @param when the moment it is about, the first one where there are several
   * @param origins where the records stand, the one most in doubt first, at least one
   * @param inPeriod whether it falls in the period under review
   * @param answer the action that answers it, if any
   */
  record Asked(
      QuestionId id,
      Optional<String> method,
      LocalDateTime when,
      List<Origin> origins,
      boolean inPeriod,
      Optional<Action> answer) {
    /** Copies the list. */
    public Asked {
      origins = List.copyOf(origins);
      if (origins.isEmpty()) {
        throw new IllegalArgumentException(id + " names no record");
      }
    }
  }

  /** A contradiction other than a date that had passed. */
  sealed interface Found extends Contradiction {}

  /**
   * A result names a calibration that was made after it.
   *
   * @param asked the question
   * @param result the result
   * @param calibration the calibration it names
   */
  record CalibratedLater(Asked asked, Result result, Calibration calibration) implements Found {}

  /**
   * Results older than the first calibration of their method and instrument.
   *
   * @param asked the question
   * @param results the results, oldest first
   * @param first that calibration
   */
  record BeforeFirstCalibration(Asked asked, List<Result> results, Calibration first)
      implements Found {
    /** Copies the list. */
    public BeforeFirstCalibration {
      results = List.copyOf(results);
    }
  }

  /**
   * A lot was opened before it was received, or after the date printed on it.
   *
   * @param asked the question
   * @param lot the lot
   */
  record LotOpened(Asked asked, ReagentLot lot) implements Found {}

  /**
   * A lot was used before it was received, or before it was opened.
   *
   * @param asked the question
   * @param lot the lot
   * @param results the results made with it too early, oldest first
   */
  record LotUsedEarly(Asked asked, ReagentLot lot, List<Result> results) implements Found {
    /** Copies the list. */
    public LotUsedEarly {
      results = List.copyOf(results);
    }
  }

  /**
   * Results name a lot that the bench did not record for their method.
   *
   * @param asked the question
   * @param lot the lot as the rows name it
   * @param results the results, oldest first
   * @param recordedFor the methods it is recorded for, if for others
   */
  record LotUnknown(Asked asked, String lot, List<Result> results, List<String> recordedFor)
      implements Found {
    /** Copies the lists. */
    public LotUnknown {
      results = List.copyOf(results);
      recordedFor = List.copyOf(recordedFor);
    }
  }

  /**
   * One calibration id stands for several calibrations.
   *
   * @param asked the question
   * @param calibrations those, in time order, at least two
   */
  record CalibrationIdTwice(Asked asked, List<Calibration> calibrations) implements Found {
    /** Copies the list. */
    public CalibrationIdTwice {
      calibrations = List.copyOf(calibrations);
    }
  }

  /**
   * Sequence numbers of an instrument are missing.
   *
   * @param asked the question
   * @param instrument the instrument's key
   * @param from the first missing number
   * @param to the last missing number
   * @param before the result with the nearest number below
   * @param after the result with the nearest number above
   */
  record SequenceGap(
      Asked asked, String instrument, long from, long to, Result before, Result after)
      implements Found {}

  /**
   * A sequence number of an instrument stands on several results.
   *
   * @param asked the question
   * @param number the number
   * @param results the results that bear it, oldest first
   */
  record SequenceRepeated(Asked asked, long number, List<Result> results) implements Found {
    /** Copies the list. */
    public SequenceRepeated {
      results = List.copyOf(results);
    }
  }

  /**
   * A time lies far from those of the rows around it in its file.
   *
   * @param asked the question
   * @param result the result
   * @param before the result in the row before it
   * @param after the result in the row after it
   * @param used whether the review uses the result; not where its time lies behind the review's now
   */
  record TimeOutOfStep(Asked asked, Result result, Result before, Result after, boolean used)
      implements Found {}

  /**
   * A time lies far after everything else the bench recorded; the review does not use the result.
   *
   * @param asked the question
   * @param result the result
   * @param latestElse the moment of the latest row beside such ones
   */
  record TimeInFuture(Asked asked, Result result, LocalDateTime latestElse) implements Found {}

  /**
   * A local time that the clocks left out.
   *
   * @param asked the question
   * @param what the sample or the calibration it stands on
   * @param from the moment at which the clocks were put forward
   * @param to what they showed then
   */
  record TimeSkipped(Asked asked, String what, LocalDateTime from, LocalDateTime to)
      implements Found {}

  /**
   * A part of a sample was found larger than the whole. Both values in the unit of the whole.
   *
   * @param asked the question
   * @param part the result of the part
   * @param partValue its value
   * @param whole the result of the whole, nearest in time
   * @param wholeValue its value
   */
  record PartExceedsWhole(
      Asked asked, Result part, double partValue, Result whole, double wholeValue)
      implements Found {}

  /**
   * Results were made by somebody who is not listed, or who may not test, or not yet.
   *
   * @param asked the question
   * @param operator the sign in the rows
   * @param person the person, where listed
   * @param results the results, oldest first
   */
  record PersonDoubted(Asked asked, String operator, Optional<Person> person, List<Result> results)
      implements Found {
    /** Copies the list. */
    public PersonDoubted {
      results = List.copyOf(results);
    }
  }

  /**
   * An action was recorded before the result it is about.
   *
   * @param asked the question
   * @param action the action
   * @param resultAt when the result was taken
   */
  record ActionBeforeResult(Asked asked, Action action, LocalDateTime resultAt) implements Found {}
}
