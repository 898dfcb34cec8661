package org.quietline.assess;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntFunction;
import org.quietline.assess.Drift.Decision;
import org.quietline.stats.distribution.StudentMixture;

/**
 * Keep a calibration, or recalibrate, and by when? From the chance that its line is beyond the
 * allowance on each day that is left.
 *
 * <p>Not knowing makes a large chance, too. So recalibration is asked for only where the direction
 * is known: the side on which the line stands at expiry, or the outward slope, with 95 %, or the
 * side on which it stands now with 97.5 %.
 *
 * @param decision what to do; never {@code EXPIRED}
 * @param lastSafeDay the last day to which the chance stays at or below the safe one, in days since
 *     the calibration; from today on if today is safe, else the latest day before today that was;
 *     empty if there is none
 * @param why what stands in the way, where the decision cannot be taken
 */
record CalibrationDecision(Decision decision, OptionalInt lastSafeDay, Optional<String> why) {
  private static final double OTHER_SIDE = 0.05;
  private static final double OTHER_SIDE_NOW = 0.025;

  /**
   * How far beyond the longest window seen a line may be extended and still be trusted to keep a
   * calibration, as a share of the validity: ten days in a month.
   */
  private static final double EXTENSION = 1.0 / 3;

  /**
   * What is asked about.
   *
   * @param line the line on each day
   * @param slope its slope
   * @param allowance how far it may stand from zero, above zero
   * @param safeChance the chance of being beyond the allowance that a safe day may carry
   * @param today days since the calibration
   * @param expiry the last day of validity, in days since the calibration, not before today
   * @param followedTo the longest that any window was followed, in days
   */
  record Question(
      IntFunction<StudentMixture> line,
      StudentMixture slope,
      double allowance,
      double safeChance,
      int today,
      int expiry,
      double followedTo) {

    double chanceOn(int day) {
      return line.apply(day).chanceBeyond(allowance);
    }

    boolean isSafe(int day) {
      return chanceOn(day) <= safeChance;
    }

    /** Whether the data show in which direction the line goes. */
    boolean isDirectionKnown() {
      StudentMixture end = line.apply(expiry);
      StudentMixture now = line.apply(today);
      boolean outward = Math.abs(end.mean()) >= Math.abs(now.mean());
      return otherSide(end) < OTHER_SIDE
          || (outward && otherSide(slope) < OTHER_SIDE)
          || otherSide(now) < OTHER_SIDE_NOW;
    }

    private static double otherSide(StudentMixture height) {
      double above = height.above(0);
      return Math.min(above, 1 - above);
    }

    boolean reachesTooFar() {
      return expiry > followedTo + EXTENSION * expiry;
    }
  }

  static CalibrationDecision of(Question q) {
    boolean safeNow = q.isSafe(q.today());
    OptionalInt last = safeNow ? forward(q) : backward(q);
    if (safeNow && last.getAsInt() == q.expiry()) {
      return q.reachesTooFar()
          ? new CalibrationDecision(
              Decision.CANNOT_SAY,
              last,
              Optional.of(
                  "no window was followed beyond day "
                      + (int) Math.floor(q.followedTo())
                      + ", and the line alone does not carry to day "
                      + q.expiry()))
          : new CalibrationDecision(Decision.KEEP, last, Optional.empty());
    }
    if (!q.isDirectionKnown()) {
      return new CalibrationDecision(
          Decision.CANNOT_SAY,
          last,
          Optional.of("the control results do not show in which direction it goes"));
    }
    return new CalibrationDecision(
        safeNow ? Decision.RECALIBRATE_BY : Decision.RECALIBRATE_NOW, last, Optional.empty());
  }

  private static OptionalInt forward(Question q) {
    int day = q.today();
    while (day < q.expiry() && q.isSafe(day + 1)) {
      day++;
    }
    return OptionalInt.of(day);
  }

  private static OptionalInt backward(Question q) {
    int day = q.today() - 1;
    while (day >= 0 && !q.isSafe(day)) {
      day--;
    }
    return day < 0 ? OptionalInt.empty() : OptionalInt.of(day);
  }
}
