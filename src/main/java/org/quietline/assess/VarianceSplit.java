package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import org.quietline.stats.Interval;

/**
 * Where the scatter of a control material's results comes from: components of variance between
 * calibrations, between results (sessions) and between readings, by restricted maximum likelihood
 * of all readings that count. Source: ISO 5725-3 (nested designs); Searle, Casella and McCulloch,
 * Variance Components (1992), chapter 6.
 *
 * @param instrument the instrument's key
 * @param material the material's key
 * @param level the mean of the control, in the method's unit
 * @param errorOfLevel its standard error, with calibrations counted as what they are
 * @param freedomOfLevel the degrees of freedom of that error
 * @param readings how many readings it rests on
 * @param results how many results
 * @param sessions how many sessions
 * @param calibrations how many calibrations
 * @param from the first result's time
 * @param to the last one's
 * @param parts the components, the outermost first and readings last
 * @param replicates how many readings make a reported result
 * @param reported a reported result in a new calibration: the intermediate precision
 * @param averaging what a mean would scatter by, from one reading to several calibrations
 */
public record VarianceSplit(
    String instrument,
    String material,
    double level,
    double errorOfLevel,
    double freedomOfLevel,
    int readings,
    int results,
    int sessions,
    int calibrations,
    LocalDateTime from,
    LocalDateTime to,
    List<Part> parts,
    int replicates,
    Scatter reported,
    List<Averaged> averaging) {
  /** Copies the lists. */
  public VarianceSplit {
    parts = List.copyOf(parts);
    averaging = List.copyOf(averaging);
  }

  /** What results of one group share. */
  public enum Source {
    /** A calibration: everything measured with it errs together. */
    CALIBRATION,
    /** A session, where sessions hold several results. */
    SESSION,
    /** A result; with one result a session that is the session, too. */
    RESULT,
    /** A reading. */
    READING
  }

  /**
   * One component.
   *
   * @param source what it lies between
   * @param groups how many groups it is known from
   * @param deviation its standard deviation, in the method's unit; zero is a legal estimate
   * @param interval95 its 95 % interval, zero a legal end
   */
  public record Part(Source source, int groups, double deviation, Interval interval95) {}

  /**
   * A standard deviation that is estimated.
   *
   * @param deviation in the method's unit
   * @param interval95 its 95 % interval
   * @param degreesOfFreedom Satterthwaite's
   */
  public record Scatter(double deviation, Interval interval95, double degreesOfFreedom) {}

  /**
   * What a mean of several readings would scatter by.
   *
   * @param readings readings in each session
   * @param sessions sessions in each calibration
   * @param calibrations calibrations
   * @param deviation in the method's unit
   */
  public record Averaged(int readings, int sessions, int calibrations, double deviation) {}

  /**
   * The deviation of one source.
   *
   * @param source what it lies between
   * @return the deviation, or why it is not known
   */
  public Answer<Double> deviation(Source source) {
    return parts.stream()
        .filter(p -> p.source() == source)
        .findFirst()
        .map(p -> Answer.of(p.deviation()))
        .orElseGet(
            () ->
                Answer.cannotSay(
                    switch (source) {
                      case CALIBRATION -> "needs control results in 2 calibrations";
                      case SESSION -> "needs 3 sessions with several control results each";
                      case RESULT -> "needs several results in a calibration";
                      case READING -> "needs results of two readings that are not all alike";
                    }));
  }

  /**
   * The deviation between results of one calibration, sessions included.
   *
   * @return the deviation, or why it is not known
   */
  public Answer<Double> betweenResults() {
    Answer<Double> results = deviation(Source.RESULT);
    double sessions = deviation(Source.SESSION).value().orElse(0.0);
    return results.map(d -> Math.hypot(d, sessions));
  }
}
