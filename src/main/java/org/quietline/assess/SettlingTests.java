package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.CalibrationDecision.Question;
import org.quietline.stats.distribution.StudentMixture;
import org.quietline.stats.mixed.LineOutlook;

/**
 * How many control tests, on which days, would let a decision be taken that cannot be taken now? It
 * is supposed that their results lie where they are expected.
 */
final class SettlingTests {
  /** More tests than these are more than a kit holds beside its samples. */
  private static final int MOST = 6;

  private final Question question;
  private final LineOutlook.GroupLine line;

  SettlingTests(Question question, LineOutlook.GroupLine line) {
    this.question = question;
    this.line = line;
  }

  /**
   * Tests that settle it.
   *
   * @param days in days since the calibration
   * @param chance the chance of being beyond the allowance at expiry that would be left
   */
  record Tests(List<Long> days, double chance) {}

  Answer<Tests> find() {
    int left = inTime() - question.today();
    if (left < 1) {
      return Answer.cannotSay("no day is left before expiry");
    }
    int most = Math.min(MOST, left);
    for (int n = 1; n <= most; n++) {
      List<Long> days = spread(n, left);
      Question then = after(days);
      CalibrationDecision decision = CalibrationDecision.of(then);
      if (decision.why().isEmpty()) {
        return Answer.of(new Tests(days, then.chanceOn(question.expiry())));
      }
    }
    return Answer.cannotSay(
        "not even "
            + most
            + " further control result"
            + (most == 1 ? "" : "s")
            + " would settle it");
  }

  /** The last day on which a result still leaves a fifth of the validity to act in. */
  private int inTime() {
    int expiry = question.expiry();
    int early = expiry - Math.max(1, expiry / TestPlanner.TIME_TO_ACT);
    return early > question.today() ? early : expiry - 1;
  }

  /** Evenly over the days that are left in time. */
  private List<Long> spread(int n, int left) {
    List<Long> days = new ArrayList<>();
    for (int i = 1; i <= n; i++) {
      days.add(question.today() + Math.round((double) left * i / n));
    }
    return days;
  }

  private Question after(List<Long> days) {
    double[] further = days.stream().mapToDouble(Long::doubleValue).toArray();
    return new Question(
        day -> line.after(day, further),
        slopeAfter(further),
        question.allowance(),
        question.safeChance(),
        question.today(),
        question.expiry(),
        Math.max(question.followedTo(), further[further.length - 1]));
  }

  private StudentMixture slopeAfter(double... further) {
    return line.slopeAfter(further);
  }
}
