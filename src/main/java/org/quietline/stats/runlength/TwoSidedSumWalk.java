package org.quietline.stats.runlength;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An upper and a lower cumulative sum side by side, alone or with single values watched beside
 * them.
 *
 * <p>Either or both sums can be above zero. Where both are, their total falls by {@code 2k} with
 * each value as long as both stay above zero, whatever the value is. So the chart stands at zero,
 * on the line of one sum, or on a line of one of the totals that can follow; panels begin and end
 * at the multiples of {@code 2k} counted from both ends of the decision interval and from each
 * bend, so that points fall on points.
 */
final class TwoSidedSumWalk {
  private static final double SAME = 1e-9;

  private final double reference;
  private final double interval;
  private final double width;
  private final Line axis;
  private final List<Total> totals = new ArrayList<>();
  private final List<Place> places = new ArrayList<>();

  private TwoSidedSumWalk(double reference, double interval, double start, double width) {
    this.reference = reference;
    this.interval = interval;
    this.width = width;
    this.axis = new Line(1, axisEdges());
    places.add(new Place(0, 0));
    for (int i = 0; i < axis.size(); i++) {
      places.add(new Place(axis.node(i), 0));
    }
    for (int i = 0; i < axis.size(); i++) {
      places.add(new Place(0, axis.node(i)));
    }
    for (int i = 0; i < axis.size(); i++) {
      if (axis.node(i) < interval - 2 * reference) {
        addTotal(axis.node(i));
      }
    }
    for (double total = 2 * (start - reference); total > SAME; total -= 2 * reference) {
      if (find(total) == null) {
        addTotal(total);
      }
    }
  }

  /** The walk of the sums from their start. */
  static Walk of(double reference, double interval, double start, double width) {
    TwoSidedSumWalk sums = new TwoSidedSumWalk(reference, interval, start, width);
    return new SumWalk(sums.ways(List.of(new Place(start, start))), sums.ways(sums.places));
  }

  private double[] axisEdges() {
    double[] marks = {
      0, interval, interval - width + reference, width + reference, width - reference
    };
    List<Double> edges = new ArrayList<>();
    for (double mark : marks) {
      if (mark >= 0 && mark <= interval) {
        int down = (int) Math.floor(mark / (2 * reference));
        int up = (int) Math.floor((interval - mark) / (2 * reference));
        for (int i = -down; i <= up; i++) {
          edges.add(mark + i * 2 * reference);
        }
      }
    }
    return Line.edges(0, interval, edges.stream().mapToDouble(e -> e).toArray());
  }

  private void addTotal(double total) {
    double bend = interval - width + reference;
    double far = width + reference;
    Line line = new Line(1, Line.edges(0, total, bend, total - bend, far, total - far));
    totals.add(new Total(total, line, places.size()));
    for (int i = 0; i < line.size(); i++) {
      places.add(new Place(line.node(i), total - line.node(i)));
    }
  }

  /** The line of a total, or null for a total of zero or less. */
  private @Nullable Total find(double value) {
    for (Total total : totals) {
      if (Math.abs(total.value - value) < SAME) {
        return total;
      }
    }
    return null;
  }

  private Ways ways(List<Place> from) {
    Ways ways = new Ways(places.size());
    double total = Double.NaN;
    @Nullable Total next = null;
    for (Place place : from) {
      double after = place.upper + place.lower - 2 * reference;
      if (after != total) {
        total = after;
        next = find(after);
      }
      fill(ways, place, next);
    }
    return ways;
  }

  private void fill(Ways ways, Place place, @Nullable Total next) {
    double up = place.upper - reference;
    double down = place.lower - reference;
    ways.source(
        -Math.min(width, interval - down),
        Math.min(width, interval - up),
        Math.max(-width, down),
        Math.min(width, -up));
    double least = next == null ? 0 : next.value;
    ways.go(axis, 1, Math.max(least, up - width), Math.min(interval, up + width), up, 1);
    ways.go(
        axis,
        1 + axis.size(),
        Math.max(least, down - width),
        Math.min(interval, down + width),
        down,
        -1);
    if (next != null) {
      ways.go(
          next.line, next.offset, Math.max(0, up - width), Math.min(next.value, up + width), up, 1);
    }
  }

  /** Where both sums stand. */
  private static final class Place {
    private final double upper;
    private final double lower;

    Place(double upper, double lower) {
      this.upper = upper;
      this.lower = lower;
    }
  }

  /** The line of all places with one total, upper sum ascending. */
  private static final class Total {
    private final double value;
    private final Line line;
    private final int offset;

    Total(double value, Line line, int offset) {
      this.value = value;
      this.line = line;
      this.offset = offset;
    }
  }
}
