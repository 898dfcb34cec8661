package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The uncertainty of a reported result of one method on one instrument, from the bench's own
 * control results: intermediate precision and bias, combined. Source: NT TR 537 and ISO 11352 for
 * the parts; JCGM 100:2008, 5.1 and G.4 for combining them and their degrees of freedom.
 *
 * @param instrument the instrument's key
 * @param budget the parts, or why they cannot be given
 */
public record Uncertainty(String instrument, Answer<Budget> budget) {

  /**
   * The parts and what they come to.
   *
   * @param material the control material it rests on, the one nearest to the product limit
   * @param level the mean of that material, in the method's unit
   * @param limit the product limit it is given for, if the method has one
   * @param calibrations how many calibrations
   * @param results how many control results
   * @param replicates how many readings make a reported result
   * @param from the first control result's time
   * @param to the last one's
   * @param parts the parts
   * @param standard the combined standard uncertainty
   * @param degreesOfFreedom of it, by Welch and Satterthwaite
   * @param coverageFactor for 95 %, from Student's t with those degrees of freedom
   */
  public record Budget(
      String material,
      double level,
      OptionalDouble limit,
      int calibrations,
      int results,
      int replicates,
      LocalDateTime from,
      LocalDateTime to,
      List<Part> parts,
      double standard,
      double degreesOfFreedom,
      double coverageFactor) {
    /** Copies the list. */
    public Budget {
      parts = List.copyOf(parts);
    }

    /**
     * The expanded uncertainty.
     *
     * @return standard uncertainty times the coverage factor, in the method's unit
     */
    public double expanded() {
      return standard * coverageFactor;
    }
  }

  /** What a part comes from. */
  public enum Kind {
    /** Scatter between calibrations: shared by everything measured with one. */
    CALIBRATIONS("calibrations"),
    /** Scatter between results and sessions of one calibration. */
    RESULTS("results"),
    /** Scatter of readings, as the mean of the readings of a result has it. */
    READINGS("readings"),
    /** What readings of product samples scatter more than those of the control. */
    PRODUCT_READINGS("product-readings"),
    /** The difference of the control's mean from its assigned value; it is not corrected for. */
    BIAS("bias"),
    /** The standard error of the control's mean. */
    BIAS_ERROR("error-of-bias"),
    /** The standard uncertainty of the assigned value. */
    REFERENCE("reference"),
    /** The root mean square of the differences from outside laboratories. */
    OUTSIDE("outside-differences"),
    /** The mean standard uncertainty of the outside laboratories, where they state one. */
    OUTSIDE_STATED("outside-laboratories"),
    /** The allowance, taken as the ends of a rectangle, where nothing tells the bias. */
    ALLOWANCE("allowance");

    private final String key;

    Kind(String key) {
      this.key = key;
    }

    /**
     * The word used in findings.
     *
     * @return the word
     */
    public String key() {
      return key;
    }
  }

  /**
   * One part.
   *
   * @param kind what it comes from
   * @param uncertainty its standard uncertainty, zero or more
   * @param degreesOfFreedom of it; infinite where it is taken as known
   */
  public record Part(Kind kind, double uncertainty, double degreesOfFreedom) {}
}
