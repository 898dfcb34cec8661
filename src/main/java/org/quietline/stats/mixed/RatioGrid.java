package org.quietline.stats.mixed;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Pairs of ratios at which lines of groups are solved, laid where the points leave them likely, on
 * the unit square of {@code (2/π)·arctan ρ}. There the prior of the heights' ratio, a half-Cauchy,
 * is flat; that of the slopes' grows from nothing in proportion.
 */
final class RatioGrid {
  private static final int POINTS = 20;
  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(POINTS);

  /** Pairs less likely than this beside the likeliest are left out: {@code ln} of 1e-7. */
  private static final double NEGLIGIBLE = -16;

  /** A pair that counts for less than this is not kept. */
  private static final double LEAST_WEIGHT = 1e-9;

  /** Looks along each side of a square while the likely part is searched. */
  private static final int LOOKS = 7;

  private static final int MOST_ROUNDS = 6;

  /** A square is searched again while it shrinks below this share of its side. */
  private static final double STILL_SHRINKS = 0.7;

  private final GroupedPoints points;
  private final double half;
  private final double leastVariance;

  /**
   * Prepares.
   *
   * @param half the time by which the spread of slopes is turned into one of heights
   * @param leastVariance what the residual variance is at least taken for
   */
  RatioGrid(GroupedPoints points, double half, double leastVariance) {
    this.points = points;
    this.half = half;
    this.leastVariance = leastVariance;
  }

  /** The logarithm of likelihood and prior at a place of the unit square. */
  private double log(LinesGivenRatios lines, double second) {
    double log = lines.logMarginal(leastVariance);
    if (log == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException("the values do not scatter about lines of their groups");
    }
    return log + Math.log(2 * second);
  }

  /**
   * The pairs.
   *
   * @param nodes each with its chance
   * @param logEvidence the logarithm of the density of the values, averaged over the prior
   */
  record Averaged(List<RatioNode> nodes, double logEvidence) {}

  /** The one pair that stands for all where only one group tells of them. */
  static Averaged ofOneGroup(GroupedPoints points, double leastVariance) {
    LinesGivenRatios lines = LinesGivenRatios.of(points, 0, 0, 0);
    return new Averaged(List.of(new RatioNode(1, lines)), lines.logMarginal(leastVariance));
  }

  /** The pairs and their chances. */
  Averaged averaged() {
    Side[] box = likelyPart();
    List<LinesGivenRatios> lines = new ArrayList<>();
    List<Double> logs = new ArrayList<>();
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < POINTS; i++) {
      for (int j = 0; j < POINTS; j++) {
        double second = box[1].at(RULE.getPoint(j));
        LinesGivenRatios solved = at(box[0].at(RULE.getPoint(i)), second);
        double log = log(solved, second) + Math.log(RULE.getWeight(i) * RULE.getWeight(j));
        highest = Math.max(highest, log);
        lines.add(solved);
        logs.add(log);
      }
    }
    double area = box[0].length() * box[1].length() / 4;
    return weighted(lines, logs, highest, Math.log(area));
  }

  private static Averaged weighted(
      List<LinesGivenRatios> lines, List<Double> logs, double highest, double logArea) {
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - highest);
    }
    List<RatioNode> nodes = new ArrayList<>();
    for (int k = 0; k < lines.size(); k++) {
      double weight = Math.exp(logs.get(k) - highest) / sum;
      if (weight > LEAST_WEIGHT) {
        nodes.add(new RatioNode(weight, lines.get(k)));
      }
    }
    return new Averaged(List.copyOf(nodes), highest + Math.log(sum) + logArea);
  }

  /** One side of the part of the unit square that is looked at. */
  private record Side(double from, double to) {
    /** From −1 to 1. */
    double at(double place) {
      return from + (to - from) * (1 + place) / 2;
    }

    double look(int i) {
      return from + (to - from) * (i + 0.5) / LOOKS;
    }

    /** From one look before the first to one behind the last that is likely. */
    Side around(boolean[] likely) {
      int first = 0;
      while (!likely[first]) {
        first++;
      }
      int last = LOOKS - 1;
      while (!likely[last]) {
        last--;
      }
      return new Side(first == 0 ? from : look(first - 1), last == LOOKS - 1 ? to : look(last + 1));
    }

    double length() {
      return to - from;
    }
  }

  /** Narrows the unit square to where the pairs are likely. */
  private Side[] likelyPart() {
    Side[] box = {new Side(0, 1), new Side(0, 1)};
    for (int round = 0; round < MOST_ROUNDS; round++) {
      Side[] smaller = narrowed(box);
      double shrinks =
          Math.min(smaller[0].length() / box[0].length(), smaller[1].length() / box[1].length());
      box = smaller;
      if (shrinks > STILL_SHRINKS) {
        break;
      }
    }
    return box;
  }

  private Side[] narrowed(Side[] box) {
    double[][] logs = new double[LOOKS][LOOKS];
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < LOOKS; i++) {
      for (int j = 0; j < LOOKS; j++) {
        logs[i][j] = log(at(box[0].look(i), box[1].look(j)), box[1].look(j));
        highest = Math.max(highest, logs[i][j]);
      }
    }
    boolean[] first = new boolean[LOOKS];
    boolean[] second = new boolean[LOOKS];
    for (int i = 0; i < LOOKS; i++) {
      for (int j = 0; j < LOOKS; j++) {
        if (logs[i][j] - highest > NEGLIGIBLE) {
          first[i] = true;
          second[j] = true;
        }
      }
    }
    return new Side[] {box[0].around(first), box[1].around(second)};
  }

  private LinesGivenRatios at(double first, double second) {
    double ofHeights = Math.tan(Math.PI / 2 * first);
    double ofSlopes = Math.tan(Math.PI / 2 * second) / half;
    return LinesGivenRatios.of(points, ofHeights * ofHeights, ofSlopes * ofSlopes, 0);
  }
}
