package org.quietline.stats.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.quietline.stats.Interval;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.numeric.Centred;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Sum;

/**
 * Components of variance of values in groups, or in groups within groups, all groups of a stage
 * alike in size.
 *
 * <p>The stages run from the outermost to the values themselves. The mean square of a stage is
 * {@code v·Σ(mean of a unit − mean of its group)²/ν} with v values a unit; its expectation is that
 * of the next stage plus v times the component of the stage, which is therefore estimated by {@code
 * (MS − MS of the next stage)/v}. The effects of all stages are taken as random, normal and
 * independent. Means are carried in two doubles, so an offset costs no digits. Source: ISO
 * 5725-3:1994, annex B; Searle, Casella and McCulloch (1992), Variance Components, chapters 3–4;
 * NIST/SEMATECH e-Handbook 2.4.4.
 *
 * @param mean the mean of all values
 * @param stages the stages, outermost first, at least two, the last being the values
 */
public record NestedAnova(double mean, List<Stage> stages) {

  /**
   * One stage.
   *
   * @param squares the sum of squares, zero or more
   * @param degreesOfFreedom of the squares, at least 1
   * @param valuesPerUnit how many values a unit of the stage holds, at least 1
   */
  public record Stage(double squares, int degreesOfFreedom, int valuesPerUnit) {
    /**
     * Checks the ranges.
     *
     * @param squares the sum of squares
     * @param degreesOfFreedom of the squares
     * @param valuesPerUnit how many values a unit holds
     * @throws IllegalArgumentException if a number is outside its range or NaN
     */
    public Stage {
      Require.notNegative(squares, "squares");
      Require.atLeast(degreesOfFreedom, 1, "degrees of freedom");
      Require.atLeast(valuesPerUnit, 1, "values per unit");
    }

    /**
     * The mean square.
     *
     * @return the squares by their degrees of freedom
     */
    public double meanSquare() {
      return squares / degreesOfFreedom;
    }
  }

  /**
   * Checks and copies the stages.
   *
   * @param mean the mean of all values
   * @param stages the stages, outermost first
   * @throws IllegalArgumentException if the mean is not finite, there are fewer than two stages, or
   *     the values per unit do not fall to 1
   */
  public NestedAnova {
    stages = List.copyOf(stages);
    Require.finite(mean, "mean");
    Require.atLeast(stages.size(), 2, "number of stages");
    for (int k = 1; k < stages.size(); k++) {
      int outer = stages.get(k - 1).valuesPerUnit();
      int inner = stages.get(k).valuesPerUnit();
      if (inner >= outer || outer % inner != 0) {
        throw new IllegalArgumentException("units of " + outer + " values made of " + inner);
      }
    }
    int last = stages.get(stages.size() - 1).valuesPerUnit();
    if (last != 1) {
      throw new IllegalArgumentException("the last stage is not the values but units of " + last);
    }
  }

  /**
   * Values in groups.
   *
   * @param groups at least two groups of the same size, at least two finite numbers each
   * @return two stages: between groups, within groups
   * @throws IllegalArgumentException if there are too few groups or values, sizes differ, or a
   *     number is NaN or infinite
   */
  public static NestedAnova twoStage(double[][] groups) {
    Require.atLeast(groups.length, 2, "number of groups");
    int n = sameSize(Arrays.stream(groups).mapToInt(g -> g.length).toArray());
    return of(Arrays.stream(groups).flatMapToDouble(Arrays::stream).toArray(), groups.length, n);
  }

  /**
   * Values in groups within groups.
   *
   * @param groups at least two outer groups of the same number of inner groups, at least two, of
   *     the same size, at least two finite numbers each
   * @return three stages: between outer groups, between inner groups, within inner groups
   * @throws IllegalArgumentException if there are too few groups or values, sizes differ, or a
   *     number is NaN or infinite
   */
  public static NestedAnova threeStage(double[][][] groups) {
    Require.atLeast(groups.length, 2, "number of groups");
    int b = sameSize(Arrays.stream(groups).mapToInt(g -> g.length).toArray());
    double[][] inner = Arrays.stream(groups).flatMap(Arrays::stream).toArray(double[][]::new);
    int n = sameSize(Arrays.stream(inner).mapToInt(g -> g.length).toArray());
    return of(Arrays.stream(inner).flatMapToDouble(Arrays::stream).toArray(), groups.length, b, n);
  }

  private static int sameSize(int[] sizes) {
    for (int i = 0; i < sizes.length; i++) {
      if (sizes[i] != sizes[0]) {
        throw new IllegalArgumentException(
            "not balanced: group " + (i + 1) + " holds " + sizes[i] + ", group 1 " + sizes[0]);
      }
    }
    Require.atLeast(sizes[0], 2, "size of each group");
    return sizes[0];
  }

  private static NestedAnova of(double[] values, int... sizes) {
    Require.values(values, 4);
    List<Stage> stages = new ArrayList<>();
    List<Centred> outer = List.of(Centred.of(values));
    double mean = outer.get(0).mean();
    for (int size : sizes) {
      int units = outer.size() * size;
      int each = values.length / units;
      List<Centred> inner = new ArrayList<>();
      Sum squares = new Sum();
      for (int u = 0; u < units; u++) {
        Centred unit = Centred.of(Arrays.copyOfRange(values, u * each, (u + 1) * each));
        Centred group = outer.get(u / size);
        double off =
            new Sum()
                .add(unit.mean())
                .add(-group.mean())
                .add(unit.meanRest())
                .add(-group.meanRest())
                .value();
        squares.addProduct(each * off, off);
        inner.add(unit);
      }
      stages.add(new Stage(squares.value(), units - outer.size(), each));
      outer = inner;
    }
    return new NestedAnova(mean, stages);
  }

  /**
   * The component of variance of a stage.
   *
   * @param stage its place, 0 for the outermost
   * @return the component: for the last stage the variance of a value within its group
   * @throws IllegalArgumentException if there is no such stage
   */
  public VarianceCombination component(int stage) {
    Stage own = stage(stage);
    double share = 1.0 / own.valuesPerUnit();
    List<VarianceCombination.Part> parts = new ArrayList<>(List.of(part(share, own)));
    if (stage + 1 < stages.size()) {
      parts.add(part(-share, stages.get(stage + 1)));
    }
    return new VarianceCombination(parts);
  }

  /**
   * The variance of a single value, all components together: the intermediate precision, if the
   * outermost groups differ in all that is to vary.
   *
   * @return the sum of all components
   */
  public VarianceCombination singleValue() {
    return meanOf(1);
  }

  /**
   * The variance of the mean of values of one innermost group: all components together, the last
   * one divided by the number of values.
   *
   * @param values how many values are averaged, at least 1
   * @return the variance of their mean
   * @throws IllegalArgumentException if there is no value
   */
  public VarianceCombination meanOf(int values) {
    Require.atLeast(values, 1, "values");
    List<VarianceCombination.Part> parts = new ArrayList<>();
    double outer = 0;
    for (int k = 0; k < stages.size(); k++) {
      boolean last = k + 1 == stages.size();
      double share = 1.0 / (last ? values : stages.get(k).valuesPerUnit());
      if (share != outer) {
        parts.add(part(share - outer, stages.get(k)));
      }
      outer = share;
    }
    return new VarianceCombination(parts);
  }

  /**
   * The F test of a stage against the next.
   *
   * @param stage its place, 0 for the outermost; not the last
   * @return the ratio of the mean squares and its upper tail, or empty where all squares of the
   *     next stage are zero
   * @throws IllegalArgumentException if there is no such stage or it is the last
   */
  public Optional<VarianceRatio> ratio(int stage) {
    Stage own = stage(stage);
    Stage next = stage(stage + 1);
    return next.squares() == 0
        ? Optional.empty()
        : Optional.of(
            VarianceRatio.of(
                Math.sqrt(own.meanSquare()),
                own.degreesOfFreedom(),
                Math.sqrt(next.meanSquare()),
                next.degreesOfFreedom()));
  }

  /**
   * The confidence interval of the mean over all outermost groups that there could be, by Student's
   * t with the degrees of freedom of the outermost stage: {@code mean ± t·√(MS/N)}; exact.
   *
   * @param level the confidence level, between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException if the level is not between 0 and 1
   */
  public Interval meanInterval(double level) {
    Require.share(level, "level");
    Stage outer = stages.get(0);
    double all = (outer.degreesOfFreedom() + 1.0) * outer.valuesPerUnit();
    double half =
        Student.exceededWith((1 - level) / 2, outer.degreesOfFreedom())
            * Math.sqrt(outer.meanSquare() / all);
    return new Interval(mean - half, mean + half);
  }

  private static VarianceCombination.Part part(double factor, Stage stage) {
    return new VarianceCombination.Part(factor, stage.meanSquare(), stage.degreesOfFreedom());
  }

  private Stage stage(int k) {
    if (k < 0 || k >= stages.size()) {
      throw new IllegalArgumentException(
          "no stage " + k + " among " + stages.size() + ", counted from 0");
    }
    return stages.get(k);
  }
}
