package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.quietline.assess.StillNeeded;
import org.quietline.bench.Material;

/** What a bench without results needs next, in words. */
final class FirstSteps {
  private FirstSteps() {}

  /** What is to be done for a method, then what it will not answer as it is set up. */
  static String of(StillNeeded needed) {
    List<String> sentences = new ArrayList<>();
    if (needed.needsCalibration()) {
      sentences.add(
          "Calibrate, and write a row into calibrations.csv; it then holds for "
              + Numbers.count(needed.method().calibrationValidDays().orElse(0), "day", "days")
              + ".");
    }
    needed
        .calibration()
        .ifPresent(
            c ->
                sentences.add(
                    "Calibrated on "
                        + Dates.full(c.calibratedAt())
                        + needed.calibratedUntil().map(d -> ", good to " + Dates.full(d)).orElse("")
                        + "."));
    sentences.add(
        needed.materials().isEmpty()
            ? "Name a control material for it with a [[material]] in bench.toml, and measure it."
            : "Measure "
                + needed.materials().stream().map(Material::key).collect(Collectors.joining(" or "))
                + ", and write each result into readings/ as a row of role control.");
    unanswered(needed).ifPresent(sentences::add);
    return String.join(" ", sentences);
  }

  private static Optional<String> unanswered(StillNeeded needed) {
    List<String> missing = new ArrayList<>();
    if (needed.method().allowance().isEmpty()) {
      missing.add("allowable-bias, without which drift is not judged");
    }
    for (Material material : needed.materials()) {
      if (material.assignedValue().isEmpty()) {
        missing.add(
            "the assigned-value of " + material.key() + ", without which no bias is claimed");
      }
    }
    return missing.isEmpty()
        ? Optional.empty()
        : Optional.of("Not set in bench.toml: " + String.join("; ", missing) + ".");
  }

  /** How many results of a control material it takes. */
  static String howMany(StillNeeded needed) {
    return "A control material has provisional limits from its result number "
        + needed.provisionalLimits()
        + " on, "
        + (needed.settledLimits().isPresent()
            ? "settled ones from number " + needed.settledLimits().getAsInt()
            : "which stay provisional with so small a baseline")
        + ", and its first "
        + needed.baseline()
        + " make the baseline.";
  }
}
