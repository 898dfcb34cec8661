package org.quietline.stats;

/**
 * Average run lengths: how many values a chart takes on average until it signals.
 *
 * <p>Values are independent and normal with deviation 1 and mean {@code shift}; limits are
 * two-sided about zero and taken as exactly right, which limits estimated from a short baseline are
 * not. The weighted mean starts at the centre (zero state) and has its steady limits {@code ±
 * L·√(λ/(2 − λ))} from the first value. Its run length solves {@code ARL(z) = 1 + (1/λ)·∫
 * ARL(y)·φ((y − (1 − λ)z)/λ − shift) dy} over the limits, single values restricted to theirs where
 * both are watched. Accurate to better than 0.01 % for weights from 0.01 to 1. Source: Crowder
 * (1987), Technometrics 29, 401–407; Lucas and Saccucci (1990), Technometrics 32, 1–12; Champ and
 * Woodall (1987), Technometrics 29, 393–399.
 */
public final class RunLength {
  private static final double WIDEST = 6;
  private static final double FARTHEST = 100;

  private RunLength() {}

  /**
   * The run length of single values against their limits, {@code 1/P(|x| > width)}.
   *
   * @param width the half-width of the limits in deviations, above 0 and at most 6
   * @param shift the shift of the mean in deviations, at most 100 in size
   * @return the average run length, at least 1
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double individuals(double width, double shift) {
    checkWidth(width, "width");
    checkShift(shift);
    return 1 / (Normal.above(width - shift) + Normal.above(width + shift));
  }

  /**
   * The run length of the weighted mean against its steady limits.
   *
   * @param weight the weight λ of the newest value, from 0.01 to 1
   * @param width the half-width L of the limits in deviations of the mean, above 0 and at most 6
   * @param shift the shift of the mean in deviations of single values, at most 100 in size
   * @return the average run length, at least 1
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double weightedMean(double weight, double width, double shift) {
    checkWeight(weight);
    checkWidth(width, "width");
    checkShift(shift);
    return weight == 1
        ? individuals(width, shift)
        : new RunLengthEquation(Double.POSITIVE_INFINITY, weight, width, shift).atCentre();
  }

  /**
   * The run length of single values and their weighted mean watched together; the first signal of
   * either counts.
   *
   * @param width the half-width of the limits of single values, above 0 and at most 6
   * @param weight the weight λ of the newest value, from 0.01 to 1
   * @param weightedWidth the half-width L of the limits of the weighted mean, above 0 and at most 6
   * @param shift the shift of the mean in deviations of single values, at most 100 in size
   * @return the average run length, at least 1
   * @throws IllegalArgumentException if an argument is outside its range or NaN
   */
  public static double both(double width, double weight, double weightedWidth, double shift) {
    checkWidth(width, "width");
    checkWeight(weight);
    checkWidth(weightedWidth, "weighted width");
    checkShift(shift);
    return weight == 1
        ? individuals(Math.min(width, weightedWidth), shift)
        : new RunLengthEquation(width, weight, weightedWidth, shift).atCentre();
  }

  private static void checkWidth(double width, String name) {
    if (!(width > 0 && width <= WIDEST)) {
      throw new IllegalArgumentException(name + " must be above 0 and at most 6, is " + width);
    }
  }

  private static void checkWeight(double weight) {
    if (!(weight >= 0.01 && weight <= 1)) {
      throw new IllegalArgumentException("weight must be from 0.01 to 1, is " + weight);
    }
  }

  private static void checkShift(double shift) {
    if (!(Math.abs(shift) <= FARTHEST)) {
      throw new IllegalArgumentException("shift must be from -100 to 100, is " + shift);
    }
  }
}
