package org.quietline.assess;

import org.quietline.bench.DriftForm;

/**
 * How results of another level are brought to the level that a line speaks of.
 *
 * @param drift how the error of the calibration acts on them
 * @param scatter how results scatter about their line
 */
record LevelForm(DriftForm drift, DriftForm scatter) {
  /** The same everywhere. */
  static final LevelForm ALIKE = new LevelForm(DriftForm.ADDITIVE, DriftForm.ADDITIVE);

  /** The error of the calibration at the result's level over that at the line's. */
  double scale(WindowPoint point, MaterialReference level) {
    return factor(drift, point, level);
  }

  /** The deviation that the result would have at the line's level. */
  double deviation(WindowPoint point, MaterialReference level) {
    return point.deviation() / scale(point, level);
  }

  /** The residual variance at the line's level over that of the deviation brought there. */
  double weight(WindowPoint point, MaterialReference level) {
    double root = scale(point, level) / scatter(point, level);
    return root * root;
  }

  /** The scatter of a result over that at the line's level. */
  double scatter(WindowPoint point, MaterialReference level) {
    return factor(scatter, point, level);
  }

  private static double factor(DriftForm form, WindowPoint point, MaterialReference level) {
    return form == DriftForm.ADDITIVE ? 1 : point.reference().value() / level.value();
  }
}
