package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.Backtest.Try;
import org.quietline.stats.compare.BinomialTail;
import org.quietline.stats.distribution.StudentMixture;

/** Would the outlook have been right before? */
final class Backtests {
  /** Fewer forecasts than these say nothing about how often intervals hold. */
  private static final int FEWEST = 4;

  /** Older windows say little about the bench as it is. */
  private static final int MOST = 24;

  /** The chance, over the three intervals together, of a warning where nothing is wrong. */
  private static final double WARNING = 0.05;

  private Backtests() {}

  static Answer<Backtest> of(DriftPoints points, LevelForm form, DriftModel.Scale scale) {
    List<Try> tries = new ArrayList<>();
    int first = Math.max(0, points.currentWindow() - MOST);
    for (int window = first; window < points.currentWindow(); window++) {
      hide(points, form, scale, window).value().ifPresent(tries::add);
    }
    return tries.size() < FEWEST
        ? Answer.cannotSay(
            "needs "
                + FEWEST
                + " earlier windows with two control results or more, has "
                + tries.size())
        : Answer.of(counted(tries));
  }

  private static Answer<Try> hide(
      DriftPoints points, LevelForm form, DriftModel.Scale scale, int window) {
    DriftPoints then = points.seenFrom(window);
    List<WindowPoint> own =
        then.current().stream()
            .filter(p -> then.material().equals(java.util.Optional.of(p.material())))
            .filter(p -> p.mayBeOf(then.lot()))
            .toList();
    if (own.size() < 2) {
      return Answer.cannotSay("needs two control results");
    }
    WindowPoint last = own.get(own.size() - 1);
    return DriftModel.of(then.without(List.of(last)), form, scale)
        .map(
            m -> {
              StudentMixture forecast =
                  m.outlook().groupValueAt(then.currentWindow(), last.day(), m.here());
              double deviation = form.deviation(last, then.reference().orElseThrow());
              return new Try(
                  then.calibration().key(),
                  last.day(),
                  deviation,
                  forecast.mean(),
                  1 - forecast.above(deviation));
            });
  }

  private static Backtest counted(List<Try> tries) {
    int half = within(tries, 0.50);
    int most = within(tries, 0.80);
    int nearlyAll = within(tries, 0.95);
    boolean off =
        isOff(half, tries.size(), 0.50)
            || isOff(most, tries.size(), 0.80)
            || isOff(nearlyAll, tries.size(), 0.95);
    return new Backtest(tries, half, most, nearlyAll, off);
  }

  private static int within(List<Try> tries, double level) {
    return (int) tries.stream().filter(t -> Math.abs(t.place() - 0.5) <= level / 2).count();
  }

  private static boolean isOff(int held, int tries, double level) {
    double few = BinomialTail.atMost(held, tries, level);
    double many = BinomialTail.atLeast(held, tries, level);
    return Math.min(few, many) < WARNING / 6;
  }
}
