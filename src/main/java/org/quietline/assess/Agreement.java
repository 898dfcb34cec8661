package org.quietline.assess;

import java.util.List;
import java.util.Optional;
import org.quietline.stats.sample.RobustSummary;

/** Whether readings of one result agree, by what sound readings near their level do. */
final class Agreement {
  private final MethodLog log;

  Agreement(MethodLog log) {
    this.log = log;
  }

  /** What readings about a level may differ by; empty when too few pairs show it. */
  Optional<Witness> about(double level, double digit, double expected) {
    Optional<RobustSummary> spread = log.pairsAt(level);
    return spread.map(
        s ->
            Witness.of(
                Slip.Source.OTHER_READING,
                expected,
                new RobustSummary(s.n(), 0, s.deviation()),
                digit * Math.sqrt(2),
                Optional.empty()));
  }

  /** Whether readings differ by more than sound ones at the level of any of them. */
  boolean isBroken(Logged logged) {
    double range = Logged.range(logged.readings());
    return logged.readings().stream()
        .allMatch(
            level -> about(level, logged.digit(), 0).filter(w -> w.accuses(range)).isPresent());
  }

  /** Whether readings differ by so much that two such results of a session are odd. */
  boolean isDoubtful(Logged logged) {
    double range = Logged.range(logged.readings());
    return logged.readings().stream()
        .allMatch(
            level -> about(level, logged.digit(), 0).filter(w -> w.doubts(range)).isPresent());
  }

  /** Whether readings agree as well as sound ones of their level. */
  boolean isSound(List<Double> readings, double digit) {
    return about(Logged.mean(readings), digit, 0)
        .filter(w -> w.fits(Logged.range(readings)))
        .isPresent();
  }
}
