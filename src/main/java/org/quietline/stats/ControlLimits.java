package org.quietline.stats;

/**
 * Centre, warning and action limits of an individuals chart.
 *
 * @param basis how they were computed
 * @param centre the centre line
 * @param deviation the deviation behind the limits
 * @param lowerAction the lower action limit
 * @param lowerWarning the lower warning limit
 * @param upperWarning the upper warning limit
 * @param upperAction the upper action limit
 * @param meanMovingRange the mean moving range of the values
 * @param movingRangeUpper the upper limit of the moving range
 */
public record ControlLimits(
    Basis basis,
    double centre,
    double deviation,
    double lowerAction,
    double lowerWarning,
    double upperWarning,
    double upperAction,
    double meanMovingRange,
    double movingRangeUpper) {

  /** How limits are computed from values. */
  public enum Basis {
    /** Centre and three times the mean moving range over d2. */
    MOVING_RANGE,
    /** Centre and three sample deviations. */
    SAMPLE_DEVIATION,
    /** Prediction limits of Student's t. */
    PREDICTION,
    /** Tolerance-interval form. */
    GUARANTEED
  }
}
