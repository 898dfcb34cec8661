package org.quietline.assess;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.quietline.bench.Bench;
import org.quietline.bench.Calibration;
import org.quietline.bench.Material;
import org.quietline.bench.Method;

/**
 * What a method of a bench without results needs before it can be judged.
 *
 * @param method the method
 * @param calibration its latest calibration, if there is one
 * @param materials its control materials
 * @param provisionalLimits how many control results give provisional limits
 * @param settledLimits how many give settled ones; empty where the baseline is too small for that
 * @param baseline how many complete the baseline
 */
public record StillNeeded(
    Method method,
    Optional<Calibration> calibration,
    List<Material> materials,
    int provisionalLimits,
    OptionalInt settledLimits,
    int baseline) {

  /** Copies the list. */
  public StillNeeded {
    materials = List.copyOf(materials);
  }

  /**
   * What each method of a bench needs.
   *
   * @param bench a bench without results
   * @return one entry a method, in the order of the settings
   */
  public static List<StillNeeded> of(Bench bench) {
    int baseline = bench.settings().chart().baselineResults();
    int settled = StreamControl.FEWEST_FOR_SETTLED_LIMITS;
    return bench.settings().methods().stream()
        .map(
            method ->
                new StillNeeded(
                    method,
                    latest(bench, method),
                    bench.settings().materials().stream()
                        .filter(m -> m.method().equals(method.key()))
                        .toList(),
                    StreamControl.FEWEST_FOR_LIMITS,
                    baseline < settled ? OptionalInt.empty() : OptionalInt.of(settled),
                    baseline))
        .toList();
  }

  private static Optional<Calibration> latest(Bench bench, Method method) {
    return bench.calibrations().stream()
        .filter(c -> c.method().equals(method.key()))
        .reduce((a, b) -> b.calibratedAt().isBefore(a.calibratedAt()) ? a : b);
  }

  /**
   * The last day of the latest calibration.
   *
   * @return empty without a calibration, or where the method sets no validity
   */
  public Optional<LocalDate> calibratedUntil() {
    OptionalInt days = method.calibrationValidDays();
    return days.isEmpty()
        ? Optional.empty()
        : calibration.map(c -> c.calibratedAt().toLocalDate().plusDays(days.getAsInt()));
  }

  /**
   * Whether a calibration must come before the first result.
   *
   * @return true where the method is calibrated and no calibration is written down
   */
  public boolean needsCalibration() {
    return method.calibrationValidDays().isPresent() && calibration.isEmpty();
  }
}
