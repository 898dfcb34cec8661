package org.quietline.assess;

/**
 * How often a question may be expected to give notice by chance alone, beside how often it did: the
 * points judged in the period times the chance that each has while nothing is wrong.
 *
 * <p>Expected numbers of several questions add up whether or not the questions depend on each
 * other. A question put once a review over all records, such as whether first and second readings
 * differ, is one point; as it is put on nearly the same records again next month, its notices come
 * in rows.
 *
 * @param question what was asked
 * @param where of what: the instrument, or the instrument and what it was held against
 * @param judged how many points were judged in the period, zero or more
 * @param chance the chance of each to give notice if nothing is wrong, from 0 to 1
 * @param observed how many gave notice
 */
public record NoticeRate(Question question, String where, int judged, double chance, int observed) {
  /** Checks the ranges. */
  public NoticeRate {
    if (!(judged >= 0 && observed >= 0 && observed <= judged)) {
      throw new IllegalArgumentException(observed + " notices of " + judged + " points");
    }
    if (!(chance >= 0 && chance <= 1)) {
      throw new IllegalArgumentException("chance must be from 0 to 1, is " + chance);
    }
  }

  /** What is asked of records that cost no reagent. */
  public enum Question {
    /** Did the calibration move at the limit? */
    CALIBRATION_STEP,
    /** Does the blank drift? */
    BLANK_DRIFTING,
    /** Do acid number and free fatty acid agree? */
    METHODS_DISAGREE,
    /** Did a sample measured again in another session move? */
    RETESTS_MOVED,
    /** Is a product pair too far apart? */
    PAIR_BEYOND,
    /** Do first and second readings differ? */
    ORDER_OF_READINGS,
    /** Do product pairs disagree while control pairs agree? */
    SAMPLES_UNEVEN
  }

  /**
   * The notices to expect by chance alone.
   *
   * @return {@code judged · chance}
   */
  public double expected() {
    return judged * chance;
  }
}
