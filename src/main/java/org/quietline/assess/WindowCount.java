package org.quietline.assess;

/**
 * How many windows ended inside the allowance, and what that shows of the validity.
 *
 * @param checked windows whose last control result fell into their last third, or later
 * @param outside how many of those results were beyond the allowance
 * @param unchecked windows that are over and have no such result; they count for neither
 * @param days how long the checked windows were, to those results, in all
 * @param validDays the validity that is set
 * @param reliability the reliability that is asked for
 * @param byRate the 95 % lower bound of the chance that a window stays inside over the validity, if
 *     windows fail at a constant rate
 * @param byShare the same by the share of windows alone
 * @param daysShown the longest validity for which the reliability is shown
 * @param cleanNeeded how many clean windows would show it for the validity that is set
 */
public record WindowCount(
    int checked,
    int outside,
    int unchecked,
    double days,
    int validDays,
    double reliability,
    double byRate,
    double byShare,
    double daysShown,
    int cleanNeeded) {
  /**
   * Whether the reliability is shown for the validity that is set, by the more careful of the two.
   *
   * @return true if both bounds reach it
   */
  public boolean isShown() {
    return Math.min(byRate, byShare) >= reliability;
  }
}
