package org.quietline.assess;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Material;
import org.quietline.stats.sample.Summary;

/**
 * What the results of a control material are held against: its assigned value, else the centre of
 * its baseline.
 *
 * @param value in the method's unit
 * @param uncertainty its standard uncertainty, if known
 * @param assigned whether it is the assigned value
 */
record MaterialReference(double value, Answer<Double> uncertainty, boolean assigned) {
  /** From so many calibrations on their means say how well a centre is known. */
  private static final int FEWEST_CALIBRATIONS = 3;

  static Optional<MaterialReference> of(StreamFindings stream) {
    Material material = stream.material();
    if (material.assignedValue().isPresent()) {
      return Optional.of(
          new MaterialReference(
              material.assignedValue().get().doubleValue(),
              material
                  .standardUncertainty()
                  .map(u -> Answer.of(u.doubleValue()))
                  .orElse(
                      Answer.cannotSay(
                          "needs the standard-uncertainty of the assigned value of "
                              + material.key()
                              + "; the chances leave it out")),
              true));
    }
    return stream
        .baseline()
        .value()
        .map(b -> new MaterialReference(b.centre(), Answer.of(errorOfCentre(stream, b)), false));
  }

  /**
   * The standard error of a baseline's centre. Results of one calibration err together, so that the
   * means of calibrations count where they tell more scatter than the results themselves.
   */
  private static double errorOfCentre(StreamFindings stream, Baseline baseline) {
    double plain = baseline.sampleDeviation() / Math.sqrt(baseline.results());
    Map<Optional<String>, List<Double>> byCalibration = new LinkedHashMap<>();
    for (Point point : stream.points()) {
      if (point.inBaseline() && point.counts()) {
        byCalibration
            .computeIfAbsent(point.calibration(), k -> new ArrayList<>())
            .add(point.value().getAsDouble());
      }
    }
    if (byCalibration.size() < FEWEST_CALIBRATIONS) {
      return plain;
    }
    double[] means =
        byCalibration.values().stream()
            .mapToDouble(v -> v.stream().mapToDouble(Double::doubleValue).average().orElseThrow())
            .toArray();
    return Math.max(plain, Summary.of(means).deviation() / Math.sqrt(means.length));
  }
}
