package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.ReportedValue.Basis;
import org.quietline.assess.ReportedValue.Repeatability;
import org.quietline.bench.Result.Pair;
import org.quietline.stats.model.PrecisionChoice;
import org.quietline.stats.model.PrecisionProfile;

/**
 * The pairs of one method, instrument and role as they come in time: what they say about the next
 * result, and never anything that the next result says.
 *
 * <p>One deviation for all levels is {@code √(Σd²/2m)}, brought up to date with each pair. Whether
 * the deviation depends on the level is asked at 25 pairs and then each time there are 25 more, or
 * a tenth more where that is more; what is found then holds until the next time. So a value rests
 * on the pairs before it alone, and the work stays in proportion to the pairs: refitting at each
 * result would cost their square.
 */
final class PriorPairs {
  /** The fewest pairs that give a limit. */
  static final int FEWEST = 8;

  private static final int REFIT = PrecisionChoice.LEAST_PAIRS;

  private final List<Pair> pairs = new ArrayList<>();
  private final List<Pair> sameTime = new ArrayList<>();
  private LocalDateTime lastTime = LocalDateTime.MIN;
  private double squares;
  private int nextFit = REFIT;
  private Optional<PrecisionProfile> profile = Optional.empty();

  /** A deviation and the degrees of freedom behind it. */
  record Deviation(double size, double degreesOfFreedom) {}

  /** Moves on to a result's time: pairs of an earlier time count from now on. */
  void moveTo(LocalDateTime time) {
    if (time.isAfter(lastTime)) {
      sameTime.forEach(this::count);
      sameTime.clear();
      lastTime = time;
    }
  }

  /** Takes in a pair of this time, for results of a later time. */
  void add(Pair pair) {
    sameTime.add(pair);
  }

  private void count(Pair pair) {
    pairs.add(pair);
    squares += pair.range() * pair.range();
    if (pairs.size() == nextFit) {
      profile = fitted();
      nextFit += Math.max(REFIT, nextFit / 10);
    }
  }

  /** Empty where one deviation holds for all levels, or levels cannot tell. */
  private Optional<PrecisionProfile> fitted() {
    double[] levels = pairs.stream().mapToDouble(Pair::mean).toArray();
    for (double level : levels) {
      if (!(level > 0)) {
        return Optional.empty();
      }
    }
    return PrecisionChoice.of(levels, pairs.stream().mapToDouble(Pair::range).toArray())
            instanceof PrecisionChoice.Chosen chosen
        ? Optional.of(chosen.profile()).filter(p -> p.form() != PrecisionProfile.Form.CONSTANT)
        : Optional.empty();
  }

  int size() {
    return pairs.size();
  }

  /** What there is to go by at a level, or why nothing. */
  Answer<Repeatability> basis(double level) {
    if (pairs.size() < FEWEST) {
      return Answer.cannotSay("needs " + FEWEST + " pairs before it, has " + pairs.size());
    }
    if (squares == 0) {
      return Answer.cannotSay("all " + pairs.size() + " pairs before it are twice the same number");
    }
    if (!(at(level).size() > 0)) {
      return Answer.cannotSay(
          "the deviation of the "
              + pairs.size()
              + " pairs before it is in proportion to the level");
    }
    return Answer.of(
        profile
            .map(p -> new Repeatability(Basis.PAIRS_BY_LEVEL, p.pairs()))
            .orElse(new Repeatability(Basis.PAIRS, pairs.size())));
  }

  /** The deviation at a level. */
  Deviation at(double level) {
    double place = Math.max(0, level);
    return profile
        .map(p -> new Deviation(p.deviationAt(place), p.degreesOfFreedomAt(place)))
        .orElseGet(() -> new Deviation(Math.sqrt(squares / (2 * pairs.size())), pairs.size()));
  }
}
