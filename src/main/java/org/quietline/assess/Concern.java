package org.quietline.assess;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Check;

/** One thing that stands against calling a method steady. */
public sealed interface Concern {

  /**
   * How grave it is.
   *
   * @return watch or hold
   */
  Verdict.Level level();

  /**
   * Stop signals without a recorded cause.
   *
   * @param stream the stream they are on
   * @param open the open stop signals, oldest first, at least one
   */
  record OpenStopSignals(StreamFindings stream, List<Signal> open) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.HOLD;
    }
  }

  /**
   * Notices without a recorded cause.
   *
   * @param stream the stream they are on
   * @param open the open notices, oldest first, at least one
   */
  record OpenNotices(StreamFindings stream, List<Signal> open) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * The calibration in use is past its validity.
   *
   * @param drift the window
   */
  record CalibrationExpired(Drift drift) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.HOLD;
    }
  }

  /**
   * The last safe day of the calibration is past.
   *
   * @param drift the window
   */
  record RecalibrateNow(Drift drift) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.HOLD;
    }
  }

  /**
   * The calibration will not last to its date.
   *
   * @param drift the window
   * @param lastSafeDay the last day it may be used
   */
  record RecalibrateEarly(Drift drift, LocalDate lastSafeDay) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * It cannot be said whether the calibration lasts.
   *
   * @param drift the window
   */
  record DriftUnknown(Drift drift) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * Results of the period were made past a date.
   *
   * @param results those results, oldest first, at least one
   */
  record UsedPastDate(List<OutOfDate> results) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.HOLD;
    }
  }

  /**
   * Records of the period contradict each other, and nobody has answered why.
   *
   * @param check the check that found it
   * @param open what it found, oldest first, at least one
   */
  record RecordsContradict(Check check, List<Contradiction> open) implements Concern {
    /** Copies the list. */
    public RecordsContradict {
      open = List.copyOf(open);
    }

    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * Rows of the period claim to be the same result with different content.
   *
   * @param open the conflicts nobody has settled, at least one
   */
  record RowsInConflict(List<ConflictFinding> open) implements Concern {
    /** Copies the list. */
    public RowsInConflict {
      open = List.copyOf(open);
    }

    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * The pairs of a person are further apart than the others'.
   *
   * @param person the comparison
   */
  record PersonDiffers(PersonPairs person) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * More pairs of the period are apart than chance explains.
   *
   * @param pairs the pairs
   */
  record PairsDisagree(PairsOfPeriod pairs) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * The stream has too few results for limits that can be relied on.
   *
   * @param stream the stream
   */
  record TooFewResults(StreamFindings stream) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * Open signals of what costs no control test: calibrations, blanks, a related method.
   *
   * @param weight what they ask for
   * @param open the open signals, at least one
   */
  record OpenFreeSignals(Weight weight, List<Signal> open) implements Concern {
    @Override
    public Verdict.Level level() {
      return weight == Weight.STOP ? Verdict.Level.HOLD : Verdict.Level.WATCH;
    }
  }

  /**
   * A question put to all records of what costs no control test came out beyond chance.
   *
   * @param notice the question, and of what it was asked
   */
  record FreeNotice(NoticeRate notice) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * The limits of a stream do not fit the results they come from.
   *
   * @param stream the stream
   */
  record LimitsDoNotFit(StreamFindings stream) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /** No rule stops the method, so no result can hold it. */
  record NoStopRules() implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * All pairs are the same two numbers: copied, or read too coarsely to show how they agree.
   *
   * @param replicates the pairs
   */
  record PairsIdentical(Replicates replicates) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * There is no control result, so nothing can be said about results.
   *
   * @param instrument the instrument without one; absent when no instrument has any
   */
  record NoControls(Optional<String> instrument) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * No control result in the period, and none for two weeks.
   *
   * @param instrument the instrument
   * @param last the day of its latest control result
   */
  record NoRecentControls(String instrument, LocalDate last) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * The control material reads off its assigned value by more than chance explains, beyond the
   * allowance or, where none is set, at all.
   *
   * @param stream the stream
   */
  record Biased(StreamFindings stream) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }

  /**
   * Numbers of the period that look like a slip of the pen, and nobody has answered.
   *
   * @param open the questions, oldest first, at least one
   */
  record LooksLikeSlips(List<Slip> open) implements Concern {
    @Override
    public Verdict.Level level() {
      return Verdict.Level.WATCH;
    }
  }
}
