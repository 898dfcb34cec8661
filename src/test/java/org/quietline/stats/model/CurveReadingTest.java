package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.model.CurveReading.Found;
import org.quietline.stats.model.CurveReading.NotReached;
import org.quietline.stats.model.CurveReading.Turns;

class CurveReadingTest {
  private static final Interval RANGE = new Interval(2, 21);

  @Test
  void loadCellParabola() {
    Reference reference = Reference.read("curve-readings");
    LeastSquares curve = LeastSquaresTest.loadCell(2);
    for (int i = 0; i < 3; i++) {
      String place = "/data/cases/" + i;
      JsonNode given = reference.at(place);
      double y = Reference.number(given.get("y"));
      double weight = given.get("weight").asDouble();
      Found found =
          assertInstanceOf(
              Found.class, CurveReading.of(curve, RANGE, y, weight, given.get("level").asDouble()));
      String what = "load cell, reading " + y + ": ";
      reference.check(CurveReading.class, what + "load", place + "/at", found.at());
      reference.check(
          CurveReading.class, what + "lower end", place + "/lower", found.lower().orElseThrow());
      reference.check(
          CurveReading.class, what + "upper end", place + "/upper", found.upper().orElseThrow());
    }
  }

  @Test
  void aCurveOfDegreeOneReadsLikeTheLine() {
    double[] x = {1, 2, 3, 4, 5, 6};
    double[] y = {9.1, 8.2, 6.8, 6.1, 4.9, 4.2};
    InversePrediction.Bounded line =
        assertInstanceOf(
            InversePrediction.Bounded.class,
            InversePrediction.ofReading(StraightLine.fit(x, y), 6.5, 2, 0.95));
    Found curve =
        assertInstanceOf(
            Found.class,
            CurveReading.of(
                LeastSquares.fit(Terms.polynomial(1), x, y), new Interval(1, 6), 6.5, 2, 0.95));
    assertEquals(line.at(), curve.at(), 1e-12);
    assertEquals(line.interval().lower(), curve.lower().orElseThrow(), 1e-12);
    assertEquals(line.interval().upper(), curve.upper().orElseThrow(), 1e-12);
  }

  @Test
  void anEndThatTheRangeDoesNotHoldStaysOpen() {
    double[] x = {1, 2, 3, 4, 5, 6};
    double[] y = {1.4, 1.5, 3.6, 3.7, 5.6, 5.4};
    LeastSquares curve = LeastSquares.fit(Terms.polynomial(1), x, y);
    Found low = assertInstanceOf(Found.class, read(curve, 1, 6, 2));
    assertEquals(OptionalDouble.empty(), low.lower());
    assertTrue(low.upper().isPresent());
    Found high = assertInstanceOf(Found.class, read(curve, 1, 6, 5.4));
    assertTrue(high.lower().isPresent());
    assertEquals(OptionalDouble.empty(), high.upper());
  }

  private static CurveReading read(LeastSquares curve, double from, double to, double y) {
    return CurveReading.of(curve, new Interval(from, to), y, 1, 0.95);
  }

  @Test
  void heightsBeyondTheRangeAreNotReached() {
    LeastSquares curve = LeastSquaresTest.loadCell(2);
    NotReached above = assertInstanceOf(NotReached.class, read(curve, 2, 21, 2.2));
    assertEquals(new Interval(curve.at(2), curve.at(21)), above.heights());
    assertInstanceOf(NotReached.class, read(curve, 2, 21, 0.19));
    assertInstanceOf(Found.class, read(curve, 2, 21, curve.at(21)));
    assertInstanceOf(Found.class, read(curve, 2, 21, curve.at(2)));
  }

  @Test
  void aCurveThatTurnsGivesNoSinglePlace() {
    double[] x = {0, 1, 2, 3, 4, 5};
    double[] y = {0, 5.1, 7.9, 9.1, 8.0, 5.0};
    LeastSquares curve = LeastSquares.fit(Terms.polynomial(2), x, y);
    Turns turns = assertInstanceOf(Turns.class, read(curve, 0, 5, 6));
    double top = -curve.coefficient(1) / (2 * curve.coefficient(2));
    assertEquals(top, turns.at(), 0.011);
    assertInstanceOf(Found.class, read(curve, 0, 2.5, 6));
    assertInstanceOf(Found.class, read(curve, 3.5, 5, 6));
  }

  @Test
  void aPerfectCurveReadsOnePlace() {
    double[] x = {1, 2, 3, 4};
    double[] y = {1, 4, 9, 16};
    LeastSquares curve = LeastSquares.fit(Terms.polynomial(2), x, y);
    Found found = assertInstanceOf(Found.class, read(curve, 1, 4, 6.25));
    assertEquals(2.5, found.at(), 1e-14);
    assertEquals(2.5, found.lower().orElseThrow(), 1e-12);
    assertEquals(2.5, found.upper().orElseThrow(), 1e-12);
  }
}
