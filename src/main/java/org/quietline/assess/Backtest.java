package org.quietline.assess;

import java.util.List;

/**
 * How well the outlook would have done on the bench's own past: the last result of each earlier
 * window, forecast from the results of that window before it and from all other windows.
 *
 * @param tries one for each window that had a result to hide
 * @param held50 how many results fell into their 50 % interval
 * @param held80 how many fell into their 80 % interval
 * @param held95 how many fell into their 95 % interval
 * @param off whether so few or so many would be seen by chance in one bench of twenty or less, were
 *     the intervals right
 */
public record Backtest(List<Try> tries, int held50, int held80, int held95, boolean off) {
  /** Copies the list. */
  public Backtest {
    tries = List.copyOf(tries);
  }

  /**
   * One result and its forecast.
   *
   * @param calibration the key of the window's calibration
   * @param day days since the calibration
   * @param deviation the result less its reference
   * @param forecast what was expected of it
   * @param place the chance below it by its forecast, from 0 to 1
   */
  public record Try(
      String calibration, double day, double deviation, double forecast, double place) {}
}
