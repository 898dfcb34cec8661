package org.quietline.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.distribution.StudentMixture;

class LineOutlookTest {
  private static final Class<LineOutlook> SUBJECT = LineOutlook.class;
  private static final double[] TAILS = {0.975, 0.9, 0.75, 0.5, 0.25, 0.1, 0.025};

  /** A chance; the summed grid of the program and that of the reference differ by 2e-8 and less. */
  private static final double CHANCE = 1e-6;

  private static final Reference SET = Reference.read("line-outlook");

  private static double width(Interval interval) {
    return interval.upper() - interval.lower();
  }

  private static GroupedPoints points(String at) {
    double[][] regressors =
        IntStream.range(0, SET.at(at + "/regressors").size())
            .mapToObj(i -> Cases.numbers(SET, at + "/regressors/" + i))
            .toArray(double[][]::new);
    return GroupedPoints.ofOneOrMore(
        Cases.numbers(SET, at + "/times"),
        Cases.numbers(SET, at + "/values"),
        Cases.labels(SET, at + "/groups"),
        regressors);
  }

  private static StudentMixture look(LineOutlook outlook, JsonNode row, int current, int more) {
    double[] where = new double[more];
    double day = row.get(2).asDouble();
    LineOutlook shared = outlook.withSharedUncertainty(row.get(1).asDouble());
    return switch (row.get(0).asText()) {
      case "line" -> shared.groupLineAt(current, day, where);
      case "average" -> shared.averageAt(day, where);
      case "new" -> shared.newLineAt(day, where);
      default -> throw new AssertionError(row.toString());
    };
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6})
  void quantilesAndChancesOfLines(int index) {
    String at = "/data/cases/" + index;
    LineOutlook outlook = LineOutlook.of(points(at), SET.number(at + "/span"), 0);
    int current = SET.at(at + "/current").asInt();
    int more = SET.at(at + "/regressors").size();
    String name = SET.at(at + "/name").asText();
    assertEquals(SET.at(at + "/degreesOfFreedom").asInt(), outlook.degreesOfFreedom());
    JsonNode rows = SET.at("/expected/rows/" + index);
    assertTrue(rows.size() >= 8, name);
    for (int i = 0; i < rows.size(); i++) {
      JsonNode row = rows.get(i);
      String what = name + ", " + row.get(0).asText() + " on day " + row.get(2).asInt();
      String pointer = "/expected/rows/" + index + "/" + i + "/";
      StudentMixture got = look(outlook, row, current, more);
      double width = row.get(10).asDouble() - row.get(4).asDouble();
      SET.check(SUBJECT, what + ": mean", pointer + 3, got.mean(), 1e-6 * width);
      for (int k = 0; k < TAILS.length; k++) {
        assertEquals(TAILS[k], got.above(row.get(4 + k).asDouble()), CHANCE, what);
        SET.check(
            SUBJECT,
            what + ": exceeded with " + TAILS[k],
            pointer + (4 + k),
            got.exceededWith(TAILS[k]),
            1e-5 * width);
      }
      double allowance = SET.number(at + "/allowance");
      SET.check(SUBJECT, what + ": beyond", pointer + 11, got.chanceBeyond(allowance), CHANCE);
    }
    slope(outlook.groupSlope(current), index, name);
  }

  private static void slope(StudentMixture slope, int index, String name) {
    String pointer = "/expected/slopes/" + index + "/";
    double width = SET.number(pointer + 3) - SET.number(pointer + 1);
    SET.check(SUBJECT, name + ": slope", pointer + 0, slope.mean(), 1e-6 * width);
    assertEquals(0.975, slope.above(SET.number(pointer + 1)), CHANCE, name);
    assertEquals(0.5, slope.above(SET.number(pointer + 2)), CHANCE, name);
    assertEquals(0.025, slope.above(SET.number(pointer + 3)), CHANCE, name);
    SET.check(SUBJECT, name + ": slope above zero", pointer + 4, slope.above(0), CHANCE);
  }

  /** Four readings of each data set: amounts or shares of the level, alike or unlike scatter. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void evidenceAndQuantilesOfUnequalScatter(int index) {
    Reference set = Reference.read("line-outlook-weighted");
    String at = "/data/cases/" + index;
    double[] levels = Cases.numbers(set, at + "/levels");
    double[] regressor = Cases.numbers(set, at + "/regressor");
    int current = set.at(at + "/current").asInt();
    JsonNode rows = set.at("/expected/rows/" + index);
    assertEquals(4, rows.size());
    for (int i = 0; i < rows.size(); i++) {
      int scale = rows.get(i).get(0).asInt();
      int power = rows.get(i).get(1).asInt();
      double[] values = Cases.numbers(set, at + "/values");
      double[] weights = new double[values.length];
      for (int k = 0; k < values.length; k++) {
        values[k] /= Math.pow(levels[k], scale);
        weights[k] = Math.pow(levels[k], power);
      }
      GroupedPoints points =
          GroupedPoints.weighted(
              weights,
              Cases.numbers(set, at + "/times"),
              values,
              Cases.labels(set, at + "/groups"),
              regressor);
      LineOutlook outlook = LineOutlook.of(points, 30, 0);
      StudentMixture line = outlook.line(current).at(30);
      String what = set.at(at + "/name").asText() + " " + scale + " " + power;
      String pointer = "/expected/rows/" + index + "/" + i + "/";
      double width = rows.get(i).get(6).asDouble() - rows.get(i).get(4).asDouble();
      set.check(SUBJECT, what + ": evidence", pointer + 2, outlook.logEvidence(), 1e-5);
      set.check(SUBJECT, what + ": mean", pointer + 3, line.mean(), 1e-6 * width);
      double[] tails = {0.975, 0.5, 0.025};
      for (int k = 0; k < 3; k++) {
        double expected = rows.get(i).get(4 + k).asDouble();
        assertEquals(expected, line.exceededWith(tails[k]), 1e-5 * width, what);
      }
    }
  }

  @Test
  void weightsMustBeAsManyAsValuesAndAboveZero() {
    double[] three = {1, 2, 4};
    assertThrows(
        IllegalArgumentException.class,
        () -> GroupedPoints.weighted(new double[] {1, 1}, three, three, new int[3]));
    assertThrows(
        IllegalArgumentException.class,
        () -> GroupedPoints.weighted(new double[] {1, 0, 1}, three, three, new int[3]));
  }

  @Test
  void aPreparedLineSaysTheSame() {
    LineOutlook outlook = LineOutlook.of(points("/data/cases/4"), 30, 0).withSharedUncertainty(0.4);
    LineOutlook.GroupLine line = outlook.line(3);
    for (double day : new double[] {-3, 0, 12, 30, 100}) {
      StudentMixture direct = outlook.groupLineAt(3, day);
      assertEquals(direct.mean(), line.at(day).mean(), 1e-10);
      assertEquals(direct.chanceBeyond(3), line.at(day).chanceBeyond(3), 1e-10);
    }
  }

  /** A further value where it is expected adds nothing to the middle and takes from the spread. */
  @Test
  void furtherValuesLeaveTheMiddleOfEachNodeAndNarrowIt() {
    GroupedPoints points =
        GroupedPoints.ofOneOrMore(
            new double[] {1, 8, 15}, new double[] {0.3, 0.9, 0.7}, new int[] {0, 0, 0});
    LineOutlook outlook = LineOutlook.of(points, 30, 0);
    LineOutlook.GroupLine line = outlook.line(0);
    double slope = outlook.groupSlope(0).mean();
    double height = line.at(22).mean();
    GroupedPoints longer =
        GroupedPoints.ofOneOrMore(
            new double[] {1, 8, 15, 22}, new double[] {0.3, 0.9, 0.7, height}, new int[4]);
    LineOutlook then = LineOutlook.of(longer, 30, 0);
    assertEquals(slope, then.groupSlope(0).mean(), 1e-12);
    assertEquals(line.after(30, 22).mean(), then.line(0).at(30).mean(), 1e-12);
    // the same sum of squares over one more degree of freedom
    double ratio = Math.sqrt(2.0 / 1.0);
    double planned = line.after(30, 22).interval(0.5).upper() - line.after(30, 22).mean();
    double made = then.line(0).at(30).interval(0.5).upper() - then.line(0).at(30).mean();
    assertEquals(planned, made * ratio, 1e-9 * planned);
    assertTrue(line.varianceAfter(30, 22) < line.varianceAfter(30));
    assertTrue(
        width(line.slopeAfter(22).interval(0.95)) < width(outlook.groupSlope(0).interval(0.95)));
  }

  @Test
  void offsetScaleAndLabelsChangeNothingElse() {
    String at = "/data/cases/4";
    double[] values = Cases.numbers(SET, at + "/values");
    double[] moved = Arrays.stream(values).map(v -> 1000 * v + 500).toArray();
    int[] groups = Arrays.stream(Cases.labels(SET, at + "/groups")).map(g -> 9 - g).toArray();
    LineOutlook first = LineOutlook.of(points(at), 30, 0);
    LineOutlook second =
        LineOutlook.of(
            GroupedPoints.ofOneOrMore(Cases.numbers(SET, at + "/times"), moved, groups), 30, 0);
    for (double chance : TAILS) {
      double before = first.groupLineAt(3, 25).exceededWith(chance);
      assertEquals(1000 * before + 500, second.groupLineAt(6, 25).exceededWith(chance), 1e-6);
    }
  }

  /** Values that agree to the last digit are taken for no better than their rounding. */
  @Test
  void valuesWithoutScatterScatterByTheirRounding() {
    double[] days = {1, 8, 15};
    double[] values = {0.2, 0.2, 0.2};
    GroupedPoints points = GroupedPoints.ofOneOrMore(days, values, new int[3]);
    LineOutlook outlook = LineOutlook.of(points, 30, 0.0003);
    assertEquals(0.0003, outlook.residualDeviation(), 1e-15);
    assertTrue(width(outlook.groupLineAt(0, 30).interval(0.95)) > 0.0003);
  }

  @Test
  void wrongWordsOfACallerAreNamed() {
    GroupedPoints points = points("/data/cases/2");
    LineOutlook outlook = LineOutlook.of(points, 30, 0);
    assertThrows(IllegalArgumentException.class, () -> LineOutlook.of(points, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> LineOutlook.of(points, 30, -1));
    assertThrows(IllegalArgumentException.class, () -> outlook.withSharedUncertainty(-1));
    assertThrows(IllegalArgumentException.class, () -> outlook.groupLineAt(7, 1));
    assertThrows(IllegalArgumentException.class, () -> outlook.groupLineAt(0, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> outlook.newLineAt(30));
    assertThrows(IllegalArgumentException.class, () -> outlook.regressor(0));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            LineOutlook.of(
                GroupedPoints.ofOneOrMore(new double[] {1, 2}, new double[] {1, 2}, new int[2]),
                30,
                0));
  }
}
