package org.quietline.bench;

/**
 * What a bench asks of its calibrations.
 *
 * @param safeChance the chance of being beyond the allowance that a safe day may carry, from 0.001
 *     to 0.25
 * @param reliability the share of calibrations that shall stay inside the allowance to their last
 *     day, from 0.5 to 0.999
 */
public record OutlookSettings(double safeChance, double reliability) {
  /** The settings of a bench that sets none: one in twenty either way. */
  public static final OutlookSettings DEFAULTS = new OutlookSettings(0.05, 0.95);

  /** Checks ranges; NaN fails. */
  public OutlookSettings {
    Checks.within("safe-chance", 0.001, 0.25, safeChance);
    Checks.within("reliability", 0.5, 0.999, reliability);
  }
}
