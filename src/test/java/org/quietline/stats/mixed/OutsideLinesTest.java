package org.quietline.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.Locale;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.quietline.stats.Reference;
import org.quietline.stats.model.InversePrediction;
import org.quietline.stats.model.StraightLine;

/** Lines of groups as a general-purpose mixed-model routine fits them, and days they cross. */
class OutsideLinesTest {
  private static final Class<GroupedLines> SUBJECT = GroupedLines.class;

  private static GroupedPoints points(Reference data) {
    return GroupedPoints.of(
        Cases.numbers(data, "/data/times"),
        Cases.numbers(data, "/data/values"),
        Cases.labels(data, "/data/groups"));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5})
  void aGeneralPurposeRoutineFindsTheSameLines(int index) {
    Reference set = Reference.read("mixed-lines-statsmodels");
    JsonNode row = set.at("/data/rows/" + index);
    LineSpread spread = LineSpread.valueOf(row.get(1).asText().toUpperCase(Locale.ROOT));
    GroupedLines lines = GroupedLines.fit(points(Reference.read(row.get(0).asText())), spread);
    String at = "/expected/rows/" + index + "/";
    String what = row.get(0).asText() + " by another routine, " + row.get(1).asText() + ": ";
    set.check(SUBJECT, what + "height at zero", at + 0, lines.averageAt(0).value());
    set.check(SUBJECT, what + "slope", at + 1, lines.slope().value());
    set.check(SUBJECT, what + "variance of heights", at + 2, lines.interceptVariance());
    set.check(SUBJECT, what + "variance of slopes", at + 3, lines.slopeVariance());
    set.check(SUBJECT, what + "residual variance", at + 4, lines.residualVariance());
  }

  @Test
  void linesReachAnAllowanceOnTheDaysWorkedOutByHand() {
    Reference set = Reference.read("drift-crossings");
    GroupedLines lines =
        GroupedLines.fit(points(Reference.read("reml-drift-windows")), LineSpread.PARALLEL);
    set.check(SUBJECT, "slope of six windows", "/expected/pooledSlope", lines.slope().value());
    set.check(
        SUBJECT, "its standard error", "/expected/pooledSlopeError", lines.slope().standardError());
    double crossing = (12 - lines.averageAt(0).value()) / lines.slope().value();
    set.check(SUBJECT, "average line reaches 12", "/expected/pointCrossing", crossing);
    double t = new TDistribution(5).inverseCumulativeProbability(0.95);
    StudentEstimate average = lines.averageAt(set.number("/expected/averageAt95"));
    assertEquals(12, average.value() + t * average.standardError(), 2e-4);
    StudentEstimate further = lines.newLineAt(set.number("/expected/newWindowAt95"));
    assertEquals(12, further.value() + t * further.standardError(), 2e-4);
  }

  @Test
  void oneWindowReachesItBetweenFiellersDays() {
    Reference set = Reference.read("drift-crossings");
    Reference data = Reference.read("reml-drift-windows");
    double[] times = Arrays.copyOfRange(Cases.numbers(data, "/data/times"), 5, 10);
    double[] values = Arrays.copyOfRange(Cases.numbers(data, "/data/values"), 5, 10);
    StraightLine line = StraightLine.fit(times, values);
    InversePrediction.Bounded days =
        (InversePrediction.Bounded) InversePrediction.ofHeight(line, 12, 0.90);
    Class<?> subject = InversePrediction.class;
    set.check(
        subject, "window reaches 12", "/expected/windowCrossing", days.estimate().orElseThrow());
    set.check(subject, "at the earliest", "/expected/windowEarliest", days.interval().lower());
    set.check(subject, "at the latest", "/expected/windowLatest", days.interval().upper());
  }
}
