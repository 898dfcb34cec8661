package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.Release.Way;
import org.quietline.assess.Release.WayOut;
import org.quietline.assess.SplitModel.Place;
import org.quietline.assess.UncertaintyBudget.Combined;
import org.quietline.stats.capability.StudentConformance;
import org.quietline.stats.distribution.Student;

/**
 * What more measurements would do for a batch too close to call. A further result differs from the
 * mean so far by what the two do not share; nothing is known of the batch but its results. The
 * chance is that of the new mean to fall inside, or outside, the acceptance limits with the
 * uncertainty it would have.
 */
final class WaysOut {
  private static final double EVEN = 0.5;

  private final UncertaintyBudget budget;
  private final List<Place> places;
  private final Wanted wanted;
  private final double value;

  /** Limits and the chance asked for. */
  record Wanted(OptionalDouble lower, OptionalDouble upper, double confidence) {}

  WaysOut(UncertaintyBudget budget, List<Place> places, Wanted wanted, double value) {
    this.budget = budget;
    this.places = places;
    this.wanted = wanted;
    this.value = value;
  }

  /** All ways, the cheapest first; an outside laboratory only where its uncertainty is known. */
  List<WayOut> all(OptionalDouble outside) {
    Place last = places.get(places.size() - 1);
    List<WayOut> ways = new ArrayList<>();
    ways.add(reading(last));
    ways.add(further(Way.SESSION, new Place(last.calibration(), -1, last.readings())));
    ways.add(further(Way.CALIBRATION, new Place("", -1, last.readings())));
    outside.ifPresent(u -> ways.add(outside(u)));
    return ways;
  }

  /** The cheapest that has an even chance to settle the question; else the likeliest. */
  static Optional<Way> worth(List<WayOut> ways) {
    return ways.stream()
        .filter(w -> w.settled() >= EVEN)
        .findFirst()
        .or(() -> ways.stream().max((a, b) -> Double.compare(a.settled(), b.settled())))
        .map(WayOut::way);
  }

  private WayOut reading(Place last) {
    List<Place> then = new ArrayList<>(places.subList(0, places.size() - 1));
    then.add(new Place(last.calibration(), last.session(), last.readings() + 1));
    Combined move = budget.ofReading(last.readings());
    double share = 1.0 / ((last.readings() + 1) * (double) places.size());
    return way(Way.READING, budget.ofMean(then), move, share);
  }

  private WayOut further(Way way, Place more) {
    List<Place> then = new ArrayList<>(places);
    then.add(more);
    return way(
        way, budget.ofMean(then), budget.ofDifference(places, more), 1.0 / (places.size() + 1));
  }

  /** The laboratory's value decides alone. */
  private WayOut outside(double uncertainty) {
    Combined own = budget.ofMean(places);
    double both = Math.hypot(own.uncertainty(), uncertainty);
    double freedom = own.degreesOfFreedom() * Math.pow(both / own.uncertainty(), 4);
    return way(
        Way.OUTSIDE,
        new Combined(uncertainty, Double.POSITIVE_INFINITY),
        new Combined(both, freedom),
        1);
  }

  /** The new value differs from the present one by a share of the move. */
  private WayOut way(Way way, Combined then, Combined move, double share) {
    double guard =
        new StudentConformance(
                wanted.lower, wanted.upper, then.uncertainty(), then.degreesOfFreedom())
            .guardBand(wanted.confidence);
    double scale = move.uncertainty() * share;
    double below = wanted.lower.orElse(Double.NEGATIVE_INFINITY);
    double above = wanted.upper.orElse(Double.POSITIVE_INFINITY);
    double within =
        Math.max(
            0, chanceAbove(below + guard, scale, move) - chanceAbove(above - guard, scale, move));
    double beyond =
        chanceAbove(above + guard, scale, move) + 1 - chanceAbove(below - guard, scale, move);
    return new WayOut(way, then.uncertainty(), within, beyond);
  }

  private double chanceAbove(double place, double scale, Combined move) {
    if (scale == 0 || Double.isInfinite(place)) {
      return place < value ? 1 : 0;
    }
    return Student.above((place - value) / scale, move.degreesOfFreedom());
  }
}
