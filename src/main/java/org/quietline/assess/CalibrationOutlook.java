package org.quietline.assess;

import java.util.List;
import java.util.Optional;
import org.quietline.bench.Method;

/**
 * The outlook of one calibration in use, with all that a decision note says.
 *
 * @param method the method
 * @param drift the line of the window in use, the chances and the decision
 * @param explanations what else could have moved the control, and what the records say to it; none
 *     where there is no line
 * @param backtest how the outlook would have done on the bench's own past
 * @param plans when to spend the next control tests, one entry for each number of tests asked for,
 *     from one test on
 * @param touched the results made since the last control result inside the allowance
 * @param interval whether the validity is right, by the lines of the windows so far
 * @param rechecks the control on both sides of each recalibration, in time order
 * @param lots the reagent lots in use, with their last days
 * @param signs what the calibrations and blanks of the instrument say without a control test
 */
public record CalibrationOutlook(
    Method method,
    Drift drift,
    List<Explanation> explanations,
    Answer<Backtest> backtest,
    List<Answer<TestPlan>> plans,
    Answer<Touched> touched,
    Answer<IntervalReview> interval,
    List<Recheck> rechecks,
    List<LotLife> lots,
    Optional<InstrumentCalibrations> signs) {
  /** Copies the lists. */
  public CalibrationOutlook {
    explanations = List.copyOf(explanations);
    plans = List.copyOf(plans);
    rechecks = List.copyOf(rechecks);
    lots = List.copyOf(lots);
  }
}
