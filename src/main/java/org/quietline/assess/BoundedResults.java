package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;

/**
 * Product results of which a reading is only a bound.
 *
 * @param beyond those whose bound proves them beyond a limit
 * @param towardsLimit those whose bound leaves open how far they reach towards or past a limit
 * @param below what others are known to lie below, away from the one limit, an upper one: the mean
 *     of their readings and bounds
 * @param aside all others, of which nothing can be used
 */
record BoundedResults(int beyond, int towardsLimit, List<Double> below, int aside) {
  BoundedResults {
    below = List.copyOf(below);
  }

  static BoundedResults of(List<Result> products, ProductLimits limits) {
    int beyond = 0;
    int towards = 0;
    int aside = 0;
    List<Double> below = new ArrayList<>();
    for (Result product : products) {
      Way way = way(product, limits);
      Optional<Double> bound = limits.lower().isEmpty() ? bound(product) : Optional.empty();
      if (way != Way.AWAY) {
        beyond += way == Way.PROVEN ? 1 : 0;
        towards++;
      } else if (bound.isPresent()) {
        below.add(bound.get());
      } else if (product.readings().stream().anyMatch(BoundedResults::isBound)) {
        aside++;
      }
    }
    return new BoundedResults(beyond, towards, below, aside);
  }

  /** What the bounds of a result leave open. */
  private enum Way {
    /** It is beyond a limit. */
    PROVEN,
    /** How far it reaches towards a limit. */
    OPEN,
    /** Nothing that matters to a limit. */
    AWAY
  }

  private static Way way(Result product, ProductLimits limits) {
    Way way = Way.AWAY;
    for (Reading reading : product.readings()) {
      boolean high = reading instanceof Reading.Above && limits.upper().isPresent();
      boolean low = reading instanceof Reading.Below && limits.lower().isPresent();
      if (reading instanceof Reading.Above above
          && high
          && above.bound().compareTo(limits.upper().orElseThrow()) >= 0) {
        return Way.PROVEN;
      }
      if (reading instanceof Reading.Below below
          && low
          && below.bound().compareTo(limits.lower().orElseThrow()) <= 0) {
        return Way.PROVEN;
      }
      way = high || low ? Way.OPEN : way;
    }
    return way;
  }

  private static boolean isBound(Reading reading) {
    return reading instanceof Reading.Above || reading instanceof Reading.Below;
  }

  /** What a result lies below, if readings of it are bounds from above and no other ones. */
  private static Optional<Double> bound(Result result) {
    double sum = 0;
    int readings = 0;
    int bounds = 0;
    for (Reading reading : result.readings()) {
      if (reading instanceof Reading.Above) {
        return Optional.empty();
      }
      if (reading instanceof Reading.Below below) {
        bounds++;
        sum += below.bound().doubleValue();
      } else if (reading instanceof Reading.Measured measured) {
        sum += measured.value().doubleValue();
      }
      readings += reading instanceof Reading.Missing ? 0 : 1;
    }
    return bounds == 0 ? Optional.empty() : Optional.of(sum / readings);
  }
}
