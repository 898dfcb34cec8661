package org.quietline.assess;

/**
 * For how many results of the period the dates could be checked.
 *
 * @param results results of the period
 * @param withoutCalibration those with no recorded calibration, where the method is calibrated
 * @param withoutReagentDate those that name no reagent lot, or one without any date
 */
public record DateCoverage(int results, int withoutCalibration, int withoutReagentDate) {}
