package org.quietline.stats.runlength;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Ways onto lines for values whose mean is another each time.
 *
 * <p>A normal density that moves with the mean m is the resting one times an exponential, {@code
 * φ(y − x − m) = φ(y − x)·exp((y − x)·m − m²/2)}: the table of resting densities stays, and only a
 * factor for each source x and one for each point y are new. A part of a panel has points of its
 * own, which are shared by all sources that cut the panel there.
 */
final class Tilt {
  /** Beyond the reach of densities that are up to 12 away. */
  private static final double FAR = 26;

  private final List<Row> rows = new ArrayList<>();
  private final List<Cut> cuts = new ArrayList<>();
  private final Map<List<Number>, Cut> known = new HashMap<>();
  private final double[] powers;

  Tilt(int targets) {
    this.powers = new double[targets];
  }

  void go(int source, Line line, int offset, double from, double to, double place, int sign) {
    for (int j = 0; j < line.size(); j++) {
      powers[offset + j] = sign * line.node(j);
    }
    double low = Math.max(from, line.low());
    double high = Math.min(to, line.high());
    if (!(low < high)) {
      return;
    }
    double first = Math.min(line.edgeFrom(low), high);
    double last = Math.max(line.edgeTo(high), first);
    double[] weights = new double[line.size()];
    if (first < last) {
      line.add(weights, 0, first, last, place, FAR);
    }
    Row row = new Row(source, offset, sign * place, weights);
    rows.add(row);
    if (low < first) {
      row.cut(cut(line, offset, low, first, sign), place);
    }
    if (last < high) {
      row.cut(cut(line, offset, last, high, sign), place);
    }
  }

  private Cut cut(Line line, int offset, double from, double to, int sign) {
    return known.computeIfAbsent(
        List.of(offset, from, to),
        key -> {
          Cut cut = new Cut(line.part(from, to), offset, sign);
          cuts.add(cut);
          return cut;
        });
  }

  /**
   * Adds the densities after a value.
   *
   * @param standing the chances of the sources
   * @param mean the mean of the value
   * @param next the weights of the targets; nothing else is on the lines yet
   */
  void add(double[] standing, double mean, double[] next) {
    for (Row row : rows) {
      double share = standing[row.source] * Math.exp(-mean * (row.power + mean / 2));
      for (int j = 0; j < row.weights.length; j++) {
        next[row.from + j] += share * row.weights[j];
      }
      for (int c = 0; c < row.cuts.size(); c++) {
        row.cuts.get(c).collect(share, row.masses.get(c));
      }
    }
    for (int t = 0; t < next.length; t++) {
      next[t] *= Math.exp(mean * powers[t]);
    }
    cuts.forEach(cut -> cut.spread(mean, next));
  }

  /** The resting chances of one source on whole panels, and on the cuts at their ends. */
  private static final class Row {
    private final int source;
    private final int from;
    private final double power;
    private final double[] weights;
    private final List<Cut> cuts = new ArrayList<>();
    private final List<double[]> masses = new ArrayList<>();

    Row(int source, int offset, double power, double[] all) {
      int first = 0;
      int end = all.length;
      while (first < end && all[first] == 0) {
        first++;
      }
      while (end > first && all[end - 1] == 0) {
        end--;
      }
      this.source = source;
      this.from = offset + first;
      this.power = power;
      this.weights = Arrays.copyOfRange(all, first, end);
    }

    void cut(Cut cut, double place) {
      cuts.add(cut);
      masses.add(cut.part.masses(place));
    }
  }

  /** A part of a panel: what arrives at its own points goes on to those of the panel. */
  private static final class Cut {
    private final Line.Part part;
    private final int offset;
    private final int sign;
    private final double[] arrived;

    Cut(Line.Part part, int offset, int sign) {
      this.part = part;
      this.offset = offset;
      this.sign = sign;
      this.arrived = new double[part.size()];
    }

    void collect(double share, double[] masses) {
      for (int q = 0; q < arrived.length; q++) {
        arrived[q] += share * masses[q];
      }
    }

    void spread(double mean, double[] next) {
      for (int q = 0; q < arrived.length; q++) {
        part.spread(q, arrived[q] * Math.exp(mean * sign * part.point(q)), next, offset);
        arrived[q] = 0;
      }
    }
  }
}
