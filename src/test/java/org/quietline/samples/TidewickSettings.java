package org.quietline.samples;

/** The settings of the invented bench. */
final class TidewickSettings {
  static final String TOML =
      """
      # An invented bench. No such plant, person, photometer or result exists; see ABOUT.md.
      name = "Tidewick Oil & Fuel, bench 1 (invented)"
      timezone = "Europe/Dublin"

      [[method]]
      key = "total-glycerin"
      title = "Total glycerin, photometric"
      unit = "% mass"
      decimals = 3
      replicates = 2
      replicate-kind = "re-read"
      calibration-valid-days = 30
      allowable-bias = 0.012
      product-upper-limit = 0.240
      limit-source = "ASTM D6751"
      shelf-life-days = { refrigerated = 60, ambient = 18 }

      [[method]]
      key = "acid-number"
      title = "Acid number, photometric"
      unit = "mg KOH/g"
      decimals = 3
      replicates = 2
      replicate-kind = "re-prepared"
      calibration-valid-days = 30
      allowable-bias = 0.025
      product-upper-limit = 0.50
      limit-source = "ASTM D6751"
      shelf-life-days = { refrigerated = 90, ambient = 30 }

      [[method]]
      key = "free-fatty-acid"
      title = "Free fatty acid, incoming oil"
      unit = "% mass"
      decimals = 2
      replicates = 2
      replicate-kind = "re-prepared"
      calibration-valid-days = 30
      allowable-bias-percent = 8
      product-upper-limit = 5.00
      limit-source = "supply contract (invented)"
      shelf-life-days = { refrigerated = 60, ambient = 18 }

      [[instrument]]
      key = "PM-1"
      title = "Photometer 1"

      [[instrument]]
      key = "PM-2"
      title = "Photometer 2"

      [[material]]
      key = "QC-TG-A"
      method = "total-glycerin"
      assigned-value = 0.180
      standard-uncertainty = 0.003

      [[material]]
      key = "QC-AN-A"
      method = "acid-number"
      assigned-value = 0.300
      standard-uncertainty = 0.004

      [[material]]
      key = "QC-FA-A"
      method = "free-fatty-acid"
      assigned-value = 2.00
      standard-uncertainty = 0.03

      [[person]]
      key = "RO"
      name = "R. Okafor"
      may = ["test", "review", "release"]
      from = 2025-09-01

      [[person]]
      key = "ML"
      name = "M. Lindqvist"
      may = ["test", "review"]
      from = 2025-09-01

      [[person]]
      key = "TB"
      name = "T. Brannagh"
      may = ["test"]
      from = 2026-02-02
      """;

  private TidewickSettings() {}
}
