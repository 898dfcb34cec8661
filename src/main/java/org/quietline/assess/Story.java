package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.quietline.bench.SignalId;
import org.quietline.stats.Interval;

/**
 * Signals of a method that most likely have one origin, told as one story.
 *
 * <p>Signals are told together when they are on one result, or on one instrument and to the same
 * side, and the results from likely onset to signal overlap or fewer than four results lie between
 * them, with no calibration between them after which the move was less than half as large.
 *
 * @param id the id of its first signal
 * @param instrument the instrument
 * @param signals its signals, in time order, at least one
 * @param onset when it most likely began
 * @param lastSignal when the result of its latest signal was taken
 * @param resetBy the calibration that ended it: the first one after its signals after which the
 *     first results, at most four, were less than half as far off; absent while none did
 * @param sizes how far each control material on the instrument was off from the onset to the latest
 *     signal
 * @param open whether any of its signals is open; a later good result never closes it
 * @param stops whether an open signal of it stops the method
 * @param hints what it is consistent with
 * @param lookBack the results it puts in doubt, for a story that stops the method
 */
public record Story(
    SignalId id,
    String instrument,
    List<Signal> signals,
    Onset onset,
    LocalDateTime lastSignal,
    Optional<String> resetBy,
    List<Size> sizes,
    boolean open,
    boolean stops,
    Answer<Hints> hints,
    Optional<LookBack> lookBack) {
  /** Copies the lists. */
  public Story {
    signals = List.copyOf(signals);
    sizes = List.copyOf(sizes);
  }

  /** How an onset was found. */
  public enum OnsetFrom {
    /** The likeliest beginning of a step. */
    STEP,
    /** The first result after the cumulative sum was last zero. */
    LAST_ZERO,
    /** The signal is about one result. */
    THE_RESULT_ALONE
  }

  /**
   * When a story most likely began: the earliest of its signals' onsets.
   *
   * @param first when the first result after it was taken
   * @param lastBefore when the last control result of the instrument before it was taken, so that
   *     it began between the two; absent when there is none
   * @param from how it was found
   */
  public record Onset(LocalDateTime first, Optional<LocalDateTime> lastBefore, OnsetFrom from) {}

  /**
   * How far a control material was off: the mean of its n results from the onset to the latest
   * signal less its centre. The interval is {@code mean − centre ± t·√(v·(Σ(n(c)/n)² + Σ(m(c)/m)²)
   * + s²·(1/n + 1/m))}: v is the variance between calibrations c and s² that within them, at least
   * the baseline's, by restricted likelihood beside a step during the story; m are the baseline's
   * results, t has m − 1 degrees of freedom. It is conditional on the onset: it takes the onset as
   * known and does not count how much the size owes to having been noticed. Of lasting steps of 3.5
   * deviations it held 96 % in a seeded simulation.
   *
   * @param material the material
   * @param results how many results n
   * @param size in the method's unit, with its sign
   * @param interval95 the 95 % interval of the size
   */
  public record Size(String material, int results, double size, Interval interval95) {}
}
