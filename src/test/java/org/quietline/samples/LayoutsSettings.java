package org.quietline.samples;

/** What people typed for {@code sample-runs/layouts}: the settings, and the pad. */
final class LayoutsSettings {
  static final String BENCH =
      """
      # An invented bench. No such plant, person, instrument or result exists; see ABOUT.md.
      name = "Marl Lane, bench with three layouts (invented)"
      timezone = "Europe/Vienna"

      [[method]]
      key = "total-glycerin"
      title = "Total glycerin"
      unit = "% mass"
      decimals = 3
      replicates = 2
      replicate-kind = "re-read"
      calibration-valid-days = 60
      allowable-bias = 0.012
      product-upper-limit = 0.240
      limit-source = "ASTM D6751"

      [[method]]
      key = "acid-number"
      title = "Acid number"
      unit = "mg KOH/g"
      decimals = 3
      replicates = 2
      replicate-kind = "re-prepared"
      calibration-valid-days = 60
      allowable-bias = 0.025
      product-upper-limit = 0.50
      limit-source = "ASTM D6751"

      [[instrument]]
      key = "PM-1"
      title = "Photometer 1"

      [[instrument]]
      key = "TI-2"
      title = "Titrator 2"

      [[material]]
      key = "QC-TG-A"
      method = "total-glycerin"
      assigned-value = 0.180
      standard-uncertainty = 0.003

      [[material]]
      key = "QC-AN-A"
      method = "acid-number"
      assigned-value = 0.350
      standard-uncertainty = 0.008
      """;

  /** What was written on the pad and typed in by two people. */
  static final String PAD =
      """
      date;time;test;what;sample;r1;r2;by;note
      13.04.2026;07:50;TG;control;QC-TG-A;0,181;0,179;MK;
      13.04.2026;08:40;TG;batch;B-2330;0,214;0,211;MK;
      13.04.2026;09:15;TG;batch;B-2331;0.208;0.206;JV;
      14.04.2026;07:45;TG;control;QC-TG-A;0.183;0.182;JV;
      14.04.2026;08:30;TG;batch;B-2332;<0.05;<0.05;JV;first cut of the new column
      14.04.2026;09:05;TG;batch;B-2333;over;over;JV;off scale, thinned 1 to 4 and run again below
      14.04.2026;10:20;TG;batch;B-2333;0,236;---;MK;one vial broke
      15/04/2026;07:55;TG;control;QC-TG-A;0,178;0,180;MK;
      15/04/2026;08:35;TG;batch;B-2334;0,221;0,224;MK;
      date;time;test;what;sample;r1;r2;by;note
      4/16/2026;07:40;TG;control;QC-TG-A;0.180;0.181;JV;
      4/16/2026;08:25;TG;batch;B-2335;0.217;0.218;JV;"kit stood out overnight; 31 °C at 7, results since then may be high"
      4/17/2026;07:50;TG;control;QC-TG-A;0.188;0.187;JV;
      4/17/2026;08:40;TG;batch;B-2336;0.229;0.231;JV;
      20/04/2026;08:00;TG;control;QC-TG-A;0,181;0,180;MK;new kit from today
      20/04/2026;08:45;TG;batch;B-2337;0,209;O,211;MK;
      21/04/2026;07:52;TG;control;QC-TG-A;0,179;0,181;MK;
      5/4/2026;08:30;TG;batch;B-2338;0.213;0.215;JV;
      22.04.2026;07:48;TG;control;QC-TG-A;0,182;0,180;MK;
      22.04.2026;08:33;TG;batch;B-2339;0,205;0,204;MK;
      """;

  /** As a look at the stick proposes it, its codes answered. */
  static final String STICK_SHEET =
      """
      [[sheet]]
      match = "readings/stick-0412.csv"
      delimiter = ";"
      encoding = "windows-1252"
      decimal = ","
      time-format = "dd.MM.yyyy HH:mm"
      columns.taken_at = ["Datum", "Uhrzeit"]
      columns.method = "Methode"
      columns.instrument = "Gerät"
      columns.role = "Art"
      columns.sample = "Probe"
      columns.readings = ["Messwert 1", "Messwert 2"]
      columns.unit = "Einheit"
      columns.operator = "Kürzel"
      columns.remark = "Bemerkung"
      ignore = ["Mittelwert"]
      values.method."TGLY" = "total-glycerin"
      values.method."ANZ" = "acid-number"
      values.role."QC" = "control"
      values.role."Charge" = "product"
      values.readings."----" = ""
      """;

  /** As a look at the titrator's export proposes it; it leaves nothing open. */
  static final String TITRATOR_SHEET =
      """
      [[sheet]]
      match = "readings/titrator-week-16.txt"
      delimiter = "\\t"
      skip-lines = 2
      time-format = "dd/MM/yyyy h:mm a"
      layout = "row-per-reading"
      columns.taken_at = ["Date", "Time"]
      columns.method = "Assay"
      columns.role = "Type"
      columns.sample = "Vial"
      columns.readings = "Result"
      columns.result = "Run"
      columns.reading_number = "Rep"
      values.method."Acid number" = "acid-number"
      defaults.instrument = "TI-2"
      """;

  /** As a look at the pad proposes it, answered; the photometer reads up to 0.300 % mass. */
  static final String PAD_SHEET =
      """
      [[sheet]]
      match = "readings/pad.csv"
      delimiter = ";"
      decimal = "either"
      time-format = ["dd.MM.yyyy HH:mm", "d/M/yyyy HH:mm", "M/d/yyyy HH:mm"]
      columns.taken_at = ["date", "time"]
      columns.method = "test"
      columns.role = "what"
      columns.readings = ["r1", "r2"]
      columns.operator = "by"
      columns.remark = "note"
      values.method."TG" = "total-glycerin"
      values.role."batch" = "product"
      values.readings."over" = ">0.300"
      values.readings."---" = ""
      defaults.instrument = "PM-1"
      """;

  private LayoutsSettings() {}
}
