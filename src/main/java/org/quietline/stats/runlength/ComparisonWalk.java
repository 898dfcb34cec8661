package org.quietline.stats.runlength;

import java.util.Arrays;

/**
 * Run rules of which some compare values with each other: a chain that also knows the density of
 * the latest value within its zone.
 *
 * <p>Zones are integrated over at Gauss–Legendre points; outer zones end where the chance of lying
 * beyond is below 1e-18.
 */
final class ComparisonWalk implements Walk {
  private static final double FAR = 9;
  private static final double[] NOTHING = {};

  private final ZoneChain chain;
  private final double[] chances;
  private final Zone[] zones;
  private double[][] standing;
  private double lastMean = Double.NaN;
  private double mean = Double.NaN;
  private long place;

  ComparisonWalk(ZoneChain chain) {
    this.chain = chain;
    this.chances = new double[chain.zones()];
    this.zones = new Zone[chain.zones()];
    for (int a = 0; a < zones.length; a++) {
      zones[a] = new Zone(chain.low(a), chain.high(a));
    }
    this.standing = new double[chain.states()][];
    Arrays.fill(standing, NOTHING);
    this.standing[0] = new double[] {1};
  }

  @Override
  public double step(double newMean) {
    if (!(newMean == mean && mean == lastMean)) {
      for (int a = 0; a < zones.length; a++) {
        zones[a].expect(newMean);
        chances[a] = Chances.between(chain.low(a), chain.high(a), newMean);
      }
    }
    lastMean = mean;
    mean = newMean;
    int kind = chain.places().kind(place++);
    double signal = 0;
    double[] entering = new double[chain.states()];
    double[][] staying = new double[chain.states()][];
    for (int s = 0; s < standing.length; s++) {
      if (standing[s].length > 0) {
        signal += leave(s, kind, entering) + stay(s, kind, staying);
      }
    }
    for (int to = 0; to < standing.length; to++) {
      standing[to] = arrived(to, entering[to], staying[to]);
    }
    normalize();
    return Math.min(1, Math.max(0, signal));
  }

  @Override
  public double[] standing() {
    return Arrays.stream(standing).flatMapToDouble(Arrays::stream).toArray();
  }

  @Override
  public int cycle() {
    return chain.places().cycle();
  }

  /** Values in other zones than the one before. */
  private double leave(int from, int kind, double[] entering) {
    double share = Arrays.stream(standing[from]).sum();
    double signal = 0;
    for (int a = 0; a < zones.length; a++) {
      if (a != chain.zone(from)) {
        int to = chain.next(from, a, kind);
        if (to == ZoneChain.SIGNAL) {
          signal += share * chances[a];
        } else {
          entering[to] += share;
        }
      }
    }
    return signal;
  }

  /** Values in the zone of the one before, above it and below it. */
  private double stay(int from, int kind, double[][] staying) {
    int a = chain.zone(from);
    if (a < 0) {
      return 0;
    }
    int above = chain.next(from, a, kind);
    int below = chain.next(from, zones.length, kind);
    return stay(from, above, zones[a].above, zones[a].chanceAbove, staying)
        + stay(from, below, zones[a].below, zones[a].chanceBelow, staying);
  }

  private double stay(int from, int to, double[][] ways, double[] chance, double[][] staying) {
    double[] share = standing[from];
    double signal = 0;
    if (to == ZoneChain.SIGNAL) {
      for (int i = 0; i < share.length; i++) {
        signal += share[i] * chance[i];
      }
      return signal;
    }
    if (staying[to] == null) {
      staying[to] = new double[zones[chain.zone(to)].size()];
    }
    for (int i = 0; i < share.length; i++) {
      for (int j = 0; j < staying[to].length; j++) {
        staying[to][j] += share[i] * ways[i][j];
      }
    }
    return signal;
  }

  private double[] arrived(int to, double entering, double[] stayed) {
    if (chain.zone(to) < 0 || (entering == 0 && stayed == null)) {
      return NOTHING;
    }
    Zone zone = zones[chain.zone(to)];
    double[] all = stayed == null ? new double[zone.size()] : stayed;
    for (int j = 0; j < all.length; j++) {
      all[j] += entering * zone.whole[j];
    }
    return all;
  }

  private void normalize() {
    double total = Arrays.stream(standing).flatMapToDouble(Arrays::stream).sum();
    if (total > 0) {
      for (double[] part : standing) {
        for (int i = 0; i < part.length; i++) {
          part[i] /= total;
        }
      }
    }
  }

  /** A zone at the points where the latest value can be, and the ways of the next value in it. */
  private static final class Zone {
    private final double low;
    private final double high;
    private double[] points = NOTHING;
    private double[] whole = NOTHING;
    private double[][] above = {};
    private double[][] below = {};
    private double[] chanceAbove = NOTHING;
    private double[] chanceBelow = NOTHING;

    Zone(double low, double high) {
      this.low = low;
      this.high = high;
    }

    int size() {
      return points.length;
    }

    /** Takes the points of the value before as they were and lays out those of the next. */
    void expect(double mean) {
      double from = Math.max(low, mean - FAR);
      double to = Math.min(high, mean + FAR);
      Line line = from < to ? new Line(1, from, to) : null;
      int size = line == null ? 0 : line.size();
      int before = points.length;
      above = new double[before][size];
      below = new double[before][size];
      chanceAbove = new double[before];
      chanceBelow = new double[before];
      for (int i = 0; i < before; i++) {
        chanceAbove[i] = Chances.between(points[i], high, mean);
        chanceBelow[i] = Chances.between(low, points[i], mean);
        if (line != null) {
          line.add(above[i], 0, points[i], high, mean);
          line.add(below[i], 0, low, points[i], mean);
        }
      }
      whole = new double[size];
      points = new double[size];
      for (int j = 0; j < size; j++) {
        points[j] = line == null ? 0 : line.node(j);
      }
      if (line != null) {
        line.add(whole, 0, low, high, mean);
      }
    }
  }
}
