package org.quietline.assess;

import java.util.List;
import org.quietline.assess.Hint.Pattern;

/**
 * What a story is consistent with, by models.
 *
 * <p>Each pattern is one predictor, beside a mean for each stream: the deviations of all control
 * results of the method from their streams' centres, in their streams' deviations, on a predictor
 * that is zero where the pattern says nothing, and elsewhere one, the level, or days since
 * something, over the stream's deviation. The streams' means are fitted because a baseline of few
 * results puts the centre a little off, which would look like a lasting step. Patterns are compared
 * by Schwarz's criterion, in which the error's deviation, the means, the estimate and each place
 * that was searched for (a beginning, a person, a lot) count as parameters; on seeded benches it
 * named the planted pattern more often than Akaike's corrected one. The shares are about these
 * patterns only, and two can be at work at once. Results of one session and one calibration err
 * together, which the models do not know, so that a share says more than it should. Compared are at
 * most 300 results before the onset, those of the story, and 300 after it; hints are told of open
 * stories and of the latest twelve.
 *
 * @param results how many control results were compared
 * @param ranked the patterns with a share of 0.1 % or more, likeliest first
 * @param inseparable pairs of patterns that these results cannot tell apart: those of which one has
 *     a share of 10 % or more; and whatever their shares, amount and share of the level, and
 *     calibration drift and reagent age
 */
public record Hints(int results, List<Hint> ranked, List<Inseparable> inseparable) {
  /** Copies the lists. */
  public Hints {
    ranked = List.copyOf(ranked);
    inseparable = List.copyOf(inseparable);
  }

  /**
   * The likeliest pattern.
   *
   * @return the first of the list
   */
  public Hint leading() {
    return ranked.get(0);
  }

  /**
   * Whether these results cannot tell two patterns apart.
   *
   * @param one a pattern
   * @param other another pattern
   * @return true when they are a pair of the list, in either order
   */
  public boolean cannotTell(Pattern one, Pattern other) {
    return inseparable.stream()
        .anyMatch(
            p ->
                (p.likelier() == one && p.other() == other)
                    || (p.likelier() == other && p.other() == one));
  }

  /**
   * Two patterns that say nearly the same about these results: their predictors correlate above
   * 0.95 within streams, and neither fits so much better that it is twenty times likelier.
   *
   * @param likelier the likelier one
   * @param other the other one
   * @param correlation how the predictors correlate, from 0.95 to 1
   * @param nextTime what would let the next story be told apart
   */
  public record Inseparable(
      Pattern likelier, Pattern other, double correlation, NextTime nextTime) {}

  /** What to do, so that two patterns can be told apart next time. */
  public enum NextTime {
    /** Run two control materials at levels that differ by a factor of two or more. */
    RUN_TWO_MATERIALS_AT_DIFFERENT_LEVELS,
    /** Open reagent in the middle of a calibration's window. */
    OPEN_REAGENT_BETWEEN_CALIBRATIONS,
    /** Let more than one person run controls. */
    LET_ANOTHER_PERSON_RUN_CONTROLS,
    /** Run more than one control in a sitting. */
    RUN_MORE_THAN_ONE_CONTROL_A_SESSION,
    /** Before a lot is changed, run the control with both lots in one sitting. */
    RUN_OLD_AND_NEW_LOT_SIDE_BY_SIDE,
    /** Take more control results; too few lie after the beginning. */
    TAKE_MORE_CONTROL_RESULTS
  }
}
