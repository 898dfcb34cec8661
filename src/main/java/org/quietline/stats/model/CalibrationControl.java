package org.quietline.stats.model;

import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Require;

/**
 * Control of an instrument that reads through a straight calibration line: check standards are read
 * back through the line and held against what they are.
 *
 * <p>A control value is {@code W = (y − a)/b − x}, in the unit of x. The limits are {@code
 * ±f·s/|b|} with {@code f = t(1 − α′/2, ν)} and {@code α′ = 1 − (1 − α)^(1/m)}, so that all m check
 * standards of one occasion together give a false signal with chance α at most, and nearly α
 * (Šidák, J. Am. Statist. Assoc. 62 (1967) 626–633). The error of the line itself is not in the
 * limits: with few calibration points the chance is larger. Source: NIST/SEMATECH e-Handbook
 * 2.3.6.7 and 2.3.7; Croarkin and Varner (1982), NBS Technical Note 1164.
 *
 * @param intercept the height a of the line at x = 0
 * @param slope its slope b, not zero
 * @param deviation the deviation s of one reading about the line, above zero
 * @param degreesOfFreedom of s, above zero
 * @param checks how many check standards m are read at one occasion, at least 1
 * @param falseAlarm the chance α of a false signal at one occasion, between 0 and 1
 */
public record CalibrationControl(
    double intercept,
    double slope,
    double deviation,
    double degreesOfFreedom,
    int checks,
    double falseAlarm) {

  /**
   * Checks the ranges.
   *
   * @param intercept the height of the line at x = 0
   * @param slope its slope
   * @param deviation the deviation of one reading about the line
   * @param degreesOfFreedom of the deviation
   * @param checks how many check standards are read at one occasion
   * @param falseAlarm the chance of a false signal at one occasion
   * @throws IllegalArgumentException if a number is outside its range or NaN
   */
  public CalibrationControl {
    Require.finite(intercept, "intercept");
    Require.positive(Math.abs(slope), "size of the slope");
    Require.positive(deviation, "deviation");
    Require.positive(degreesOfFreedom, "degrees of freedom");
    Require.atLeast(checks, 1, "checks");
    Require.share(falseAlarm, "false alarm");
  }

  /**
   * Control with the deviation of the calibration itself.
   *
   * @param line the calibration line, not flat and not a perfect fit
   * @param checks how many check standards are read at one occasion, at least 1
   * @param falseAlarm the chance of a false signal at one occasion, between 0 and 1
   * @return the control
   * @throws IllegalArgumentException if the line is flat or perfect, or a number is outside its
   *     range
   */
  public static CalibrationControl of(StraightLine line, int checks, double falseAlarm) {
    return new CalibrationControl(
        line.intercept(),
        line.slope(),
        line.residualDeviation(),
        line.degreesOfFreedom(),
        checks,
        falseAlarm);
  }

  /**
   * The control value of one reading.
   *
   * @param reading the reading y of a check standard, finite
   * @param reference what the check standard is, x, finite
   * @return the value read back through the line less the reference
   * @throws IllegalArgumentException if a number is not finite
   */
  public double value(double reading, double reference) {
    Require.finite(reading, "reading");
    Require.finite(reference, "reference");
    return (reading - intercept) / slope - reference;
  }

  /**
   * The factor of the limits.
   *
   * @return f, the t star of the handbook
   */
  public double factor() {
    double each = -Math.expm1(Math.log1p(-falseAlarm) / checks);
    return Student.exceededWith(each / 2, degreesOfFreedom);
  }

  /**
   * The upper limit of a control value; the lower one is its negative.
   *
   * @return the limit, in the unit of x
   */
  public double limit() {
    return factor() * deviation / Math.abs(slope);
  }

  /**
   * Whether a control value is beyond the limits.
   *
   * @param value a control value, finite
   * @return true beyond, false on the limit
   * @throws IllegalArgumentException if the value is not finite
   */
  public boolean isBeyond(double value) {
    Require.finite(value, "control value");
    return Math.abs(value) > limit();
  }
}
