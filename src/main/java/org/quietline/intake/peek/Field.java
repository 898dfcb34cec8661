package org.quietline.intake.peek;

import java.util.Locale;

/** What a column may hold, by the names of the plain sheet, and two kinds that are not read. */
enum Field {
  /** When the sample was tested; the day and the time of day may stand apart. */
  TAKEN_AT,
  /** The test method. */
  METHOD,
  /** The instrument. */
  INSTRUMENT,
  /** What the sample was. */
  ROLE,
  /** The sample. */
  SAMPLE,
  /** A reading. */
  READINGS,
  /** The unit. */
  UNIT,
  /** The calibration. */
  CALIBRATION,
  /** The reagent lot. */
  REAGENT_LOT,
  /** The person. */
  OPERATOR,
  /** A remark. */
  REMARK,
  /** The sitting. */
  SESSION,
  /** The temperature. */
  TEMPERATURE_C,
  /** A running number. */
  SEQUENCE,
  /** The result a reading belongs to, where each row is one reading. */
  RESULT,
  /** Which reading of its result a row is. */
  READING_NUMBER,
  /** A mean of readings in the same row. */
  AVERAGE,
  /** A spread of readings in the same row. */
  SPREAD;

  String key() {
    return name().toLowerCase(Locale.ROOT);
  }
}
