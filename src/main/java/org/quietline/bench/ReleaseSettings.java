package org.quietline.bench;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * How a bench decides whether a batch may go.
 *
 * @param confidence the chance of conforming that a batch must have to be within its limits, and of
 *     not conforming to be beyond them, from 0.8 to 0.999
 * @param costs what wrong decisions cost, if the bench says so
 */
public record ReleaseSettings(double confidence, Optional<Costs> costs) {
  /** The settings of a bench that sets none. */
  public static final ReleaseSettings DEFAULTS = new ReleaseSettings(0.95, Optional.empty());

  /** Checks the range; NaN fails. */
  public ReleaseSettings {
    Checks.within("confidence", 0.8, 0.999, confidence);
  }

  /**
   * Costs in any one currency.
   *
   * @param badRelease of releasing a batch that does not conform, more than 0
   * @param rework of reworking or holding back one that does, more than 0
   */
  public record Costs(BigDecimal badRelease, BigDecimal rework) {
    /** Checks the amounts. */
    public Costs {
      Checks.positive("cost-of-bad-release", badRelease);
      Checks.positive("cost-of-rework", rework);
    }

    /**
     * The chance of conforming above which releasing costs less than holding back.
     *
     * @return bad release over the sum of both
     */
    public double breakEven() {
      double bad = badRelease.doubleValue();
      return bad / (bad + rework.doubleValue());
    }
  }
}
