package org.quietline.assess;

import java.util.List;
import org.quietline.stats.compare.FailureRate;
import org.quietline.stats.compare.ObservedShare;

/** Is the validity right, by counting windows? */
final class WindowCounts {
  /** A window is known to have lasted if a control result fell into its last third. */
  private static final double LATE = 2.0 / 3;

  private static final double LEVEL = 0.95;

  private WindowCounts() {}

  static Answer<WindowCount> of(
      DriftPoints points, LevelForm form, double allowance, int validDays, double reliability) {
    int checked = 0;
    int outside = 0;
    int unchecked = 0;
    double days = 0;
    for (int window = 0; window < points.currentWindow(); window++) {
      List<WindowPoint> own = points.of(window);
      if (own.isEmpty() || own.get(own.size() - 1).day() < LATE * validDays) {
        unchecked++;
        continue;
      }
      WindowPoint last = own.get(own.size() - 1);
      MaterialReference level = points.reference().orElse(last.reference());
      checked++;
      days += last.day();
      outside += isBeyond(form.deviation(last, level), allowance) ? 1 : 0;
    }
    if (checked == 0) {
      return Answer.cannotSay(
          "no earlier window has a control result in the last third of its validity");
    }
    FailureRate rate = new FailureRate(outside, days);
    return Answer.of(
        new WindowCount(
            checked,
            outside,
            unchecked,
            days,
            validDays,
            reliability,
            rate.reliability(validDays, LEVEL),
            new ObservedShare(checked - outside, checked).lowerBound(LEVEL),
            rate.longest(reliability, LEVEL),
            FailureRate.cleanTries(reliability, LEVEL)));
  }

  /** Read to the last digit on the allowance is inside. */
  private static boolean isBeyond(double deviation, double allowance) {
    return Math.abs(deviation) > allowance * (1 + 1e-9);
  }
}
