package org.quietline.assess;

import java.math.BigDecimal;
import java.util.List;
import org.quietline.bench.Calibration;
import org.quietline.stats.Interval;

/**
 * The calibrations of one method on one instrument, each held against the one before it and against
 * all before it.
 *
 * @param instrument the instrument's key
 * @param withoutLine calibrations in which fewer than two different calibrators show a response
 * @param level where steps are looked at
 * @param curves the calibrations whose responses make a line, in time order
 * @param tracks slope, offset and the response of each calibrator in time order
 * @param blanks the blanks of the calibrations, and the results of role blank, each by themselves
 * @param signals steps and drifting blanks, for rules the bench uses, in time order
 * @param steps how many steps of the period were judged, and how many were beyond their limit
 */
public record InstrumentCalibrations(
    String instrument,
    int withoutLine,
    Answer<Level> level,
    List<Curve> curves,
    List<CalibrationTrack> tracks,
    List<BlankTrack> blanks,
    List<Signal> signals,
    NoticeRate steps) {
  /** Copies the lists. */
  public InstrumentCalibrations {
    curves = List.copyOf(curves);
    tracks = List.copyOf(tracks);
    blanks = List.copyOf(blanks);
    signals = List.copyOf(signals);
  }

  /**
   * Where steps are looked at.
   *
   * @param value in the method's unit
   * @param source where it comes from
   */
  public record Level(double value, Source source) {
    /** Where the level of a step comes from. */
    public enum Source {
      /** The upper limit of the product, or the lower one where there is no upper one. */
      PRODUCT_LIMIT,
      /** The assigned value of the method's first control material that has one. */
      ASSIGNED_VALUE
    }
  }

  /**
   * One calibrator's response.
   *
   * @param assigned its assigned value in the method's unit
   * @param value the response as written
   */
  public record Response(BigDecimal assigned, BigDecimal value) {}

  /**
   * The line through the calibrators of one calibration.
   *
   * @param calibration the calibration
   * @param responses the calibrators that show a response, lowest first
   * @param slope response for one unit of the method
   * @param offset response at zero
   * @param step what changed at the level since the calibration before
   */
  public record Curve(
      Calibration calibration,
      List<Response> responses,
      double slope,
      double offset,
      Answer<Step> step) {
    /** Copies the list. */
    public Curve {
      responses = List.copyOf(responses);
    }
  }

  /**
   * What a new calibration changed at one level: the response that read {@code level} through the
   * line before reads {@code reads} through this one. With heights {@code h = offset + slope·level}
   * of both lines, {@code change = (h(before) − h(now))/slope(now)}.
   *
   * @param before the calibration before
   * @param level the level, in the method's unit
   * @param insideCalibrators whether the level lies between the calibrators of both
   * @param reads what the response reads now, in the method's unit
   * @param change {@code reads − level}
   * @param uncertainty the uncertainty that the calibrators' responses give the change
   * @param limit how large a change is before it is a step
   */
  public record Step(
      Calibration before,
      double level,
      boolean insideCalibrators,
      double reads,
      double change,
      Answer<Uncertainty> uncertainty,
      Answer<Limit> limit) {
    /**
     * Whether the change is larger than chance explains.
     *
     * @return false also where no limit can be given
     */
    public boolean isBeyond() {
      return limit.value().filter(l -> Math.abs(change) > l.value()).isPresent();
    }
  }

  /**
   * The uncertainty of a change at a level, {@code s/|slope|·√(L(before) + L(now))} with the
   * leverages {@code L = 1/n + (x − x̄)²/Sxx} of the two lines; for two calibrators {@code L = (1 −
   * w)² + w²}. It takes the errors of the calibrators as independent of each other; what moves all
   * responses of a day together is in the limit of the step and not in here.
   *
   * @param standard the standard uncertainty, in the method's unit
   * @param interval the 95 % interval of the change, by Student's t
   * @param responseDeviation s, the deviation of one response
   * @param degreesOfFreedom of that deviation
   * @param scatter where it comes from
   */
  public record Uncertainty(
      double standard,
      Interval interval,
      double responseDeviation,
      double degreesOfFreedom,
      Scatter scatter) {
    /** Where the deviation of a response comes from; never from the two calibrations compared. */
    public enum Scatter {
      /** The calibrators about the lines of earlier calibrations. */
      RESIDUALS_OF_LINES,
      /** The response of each calibrator about its mean over earlier calibrations. */
      BETWEEN_CALIBRATIONS
    }
  }

  /**
   * The limit of a change: what two calibrations like those before differ by with 99.73 % chance,
   * {@code √2·t·s/|slope|} with the deviation s of the lines' heights at the level.
   *
   * @param value the limit, on either side of zero, in the method's unit
   * @param warning the same for 95 %
   * @param degreesOfFreedom of the heights' deviation
   * @param provisional whether it rests on fewer than 15 calibrations
   */
  public record Limit(double value, double warning, int degreesOfFreedom, boolean provisional) {}
}
