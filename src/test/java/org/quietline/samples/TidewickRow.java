package org.quietline.samples;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;

/**
 * One row of a reading sheet as text, so that it can be spoilt.
 *
 * @param takenAt when, as written
 * @param month the file it stands in
 * @param method the method as written
 * @param instrument the instrument
 * @param role the role
 * @param sample the sample
 * @param readings one to three readings as written
 * @param unit the unit as written
 * @param calibration the calibration
 * @param lot the reagent lot
 * @param operator the sign
 * @param remark a remark or nothing
 */
record TidewickRow(
    String takenAt,
    YearMonth month,
    String method,
    String instrument,
    String role,
    String sample,
    List<String> readings,
    String unit,
    String calibration,
    String lot,
    String operator,
    String remark) {

  boolean is(String wantedMethod, String wantedRole) {
    return method.equals(wantedMethod) && role.equals(wantedRole);
  }

  TidewickRow withTakenAt(String text) {
    return new TidewickRow(
        text,
        month,
        method,
        instrument,
        role,
        sample,
        readings,
        unit,
        calibration,
        lot,
        operator,
        remark);
  }

  TidewickRow withMethod(String text) {
    return new TidewickRow(
        takenAt,
        month,
        text,
        instrument,
        role,
        sample,
        readings,
        unit,
        calibration,
        lot,
        operator,
        remark);
  }

  TidewickRow withSample(String text, String why) {
    return new TidewickRow(
        takenAt,
        month,
        method,
        instrument,
        role,
        text,
        readings,
        unit,
        calibration,
        lot,
        operator,
        why);
  }

  TidewickRow withReadings(List<String> texts, String in, String why) {
    return new TidewickRow(
        takenAt,
        month,
        method,
        instrument,
        role,
        sample,
        List.copyOf(texts),
        in,
        calibration,
        lot,
        operator,
        why);
  }

  /** The fields of the row for a sheet with the given number of reading columns. */
  List<String> fields(int readingColumns) {
    List<String> fields = new ArrayList<>(List.of(takenAt, method, instrument, role, sample));
    for (int i = 0; i < readingColumns; i++) {
      fields.add(i < readings.size() ? readings.get(i) : "");
    }
    fields.addAll(List.of(unit, calibration, lot, operator, remark));
    return fields;
  }
}
