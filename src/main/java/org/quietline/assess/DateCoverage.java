package org.quietline.assess;

import java.util.List;

/**
 * For how many results of the period it could be asked whether a date was past, and what is in use.
 *
 * @param results how many results the period has
 * @param withoutCalibration those that no recorded calibration stands behind
 * @param withoutReagentDate those that name no reagent lot, or one without any date
 * @param lots the reagent lots in use, with their last days
 */
public record DateCoverage(
    int results, int withoutCalibration, int withoutReagentDate, List<LotLife> lots) {
  /** Copies the list. */
  public DateCoverage {
    lots = List.copyOf(lots);
  }
}
