package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.model.InversePrediction.Bounded;
import org.quietline.stats.model.InversePrediction.Nowhere;
import org.quietline.stats.model.InversePrediction.TwoRays;
import org.quietline.stats.model.InversePrediction.WholeLine;

class InversePredictionTest {
  private final Reference reference = Reference.read("inverse-predictions");

  private StraightLine line(String set) {
    int n = reference.at("/data/sets/" + set + "/x").size();
    return StraightLine.fit(
        reference.numbers("/data/sets/" + set + "/x", n),
        reference.numbers("/data/sets/" + set + "/y", n));
  }

  @Test
  void setsFoundBySearch() {
    int kinds = 0;
    for (int i = 0; i < 16; i++) {
      String place = "/data/cases/" + i;
      JsonNode given = reference.at(place);
      double y = Reference.number(given.get("y"));
      double level = given.get("level").asDouble();
      StraightLine line = line(given.get("set").asText());
      InversePrediction found =
          given.get("weight").isNull()
              ? InversePrediction.ofHeight(line, y, level)
              : InversePrediction.ofReading(line, y, given.get("weight").asDouble(), level);
      String what = given.get("set").asText() + ", y " + y + " at " + level + ": ";
      check(what + "g", place + "/g", found.g());
      check(what + "estimate", place + "/at", found.estimate().orElseThrow());
      switch (given.get("kind").asText()) {
        case "bounded" -> {
          Interval interval = assertInstanceOf(Bounded.class, found).interval();
          check(what + "lower end", place + "/ends/0", interval.lower());
          check(what + "upper end", place + "/ends/1", interval.upper());
          kinds |= 1;
        }
        case "rays" -> {
          TwoRays rays = assertInstanceOf(TwoRays.class, found);
          check(what + "end of the lower ray", place + "/ends/0", rays.below());
          check(what + "start of the upper ray", place + "/ends/1", rays.above());
          kinds |= 2;
        }
        default -> {
          assertInstanceOf(WholeLine.class, found);
          kinds |= 4;
        }
      }
    }
    assertEquals(7, kinds, "all kinds of sets were there");
    assertEquals(16, reference.at("/data/cases").size());
  }

  private void check(String what, String pointer, double got) {
    reference.check(InversePrediction.class, what, pointer, got);
  }

  /** Each place of a grid is tested by itself: is the reading within the interval it predicts? */
  @Test
  void agreesWithTheTestInvertedPlaceByPlace() {
    SplittableRandom random = new SplittableRandom(61);
    int[] kinds = new int[3];
    for (int trial = 0; trial < 150; trial++) {
      int n = 4 + trial % 6;
      double[] x = Simulation.normal(random, n);
      double[] weights = Arrays.stream(Simulation.normal(random, n)).map(Math::exp).toArray();
      double slope = random.nextDouble(-1.5, 1.5);
      double[] y = new double[n];
      for (int i = 0; i < n; i++) {
        y[i] = slope * x[i] + Simulation.normal(random);
      }
      StraightLine line = StraightLine.weighted(x, y, weights);
      double height = 2 * Simulation.normal(random);
      double level = random.nextDouble(0.4, 0.99);
      double weight = random.nextDouble(0.3, 4);
      InversePrediction reading = InversePrediction.ofReading(line, height, weight, level);
      InversePrediction crossing = InversePrediction.ofHeight(line, height, level);
      kinds[reading instanceof Bounded ? 0 : reading instanceof TwoRays ? 1 : 2]++;
      for (double at = -40; at <= 40; at += 0.93) {
        boolean likely = line.predictionInterval(at, weight, level).contains(height);
        assertEquals(likely, reading.contains(at), "reading at " + at + " of " + reading);
        boolean there = line.intervalAt(at, level).contains(height);
        assertEquals(there, crossing.contains(at), "crossing at " + at + " of " + crossing);
      }
    }
    assertTrue(Arrays.stream(kinds).min().orElse(0) > 10, Arrays.toString(kinds));
  }

  @Test
  void boundedExactlyWhereTheSlopeIsToldFromZero() {
    StraightLine line = line("window");
    double p = Reference.read("practitioner-drift-window").number("/expected/p");
    assertInstanceOf(Bounded.class, InversePrediction.ofHeight(line, 0.012, 1 - p * 1.0001));
    assertInstanceOf(TwoRays.class, InversePrediction.ofHeight(line, 0.012, 1 - p * 0.9999));
    assertEquals(1, InversePrediction.ofHeight(line, 0.012, 1 - p).g(), 1e-12);
  }

  @Test
  void aPerfectLineCrossesAtOnePlace() {
    StraightLine line = StraightLine.fit(new double[] {0, 1, 2}, new double[] {1, 3, 5});
    Bounded found = assertInstanceOf(Bounded.class, InversePrediction.ofHeight(line, 7, 0.95));
    assertEquals(new Interval(3, 3), found.interval());
    assertEquals(0, found.g());
    assertEquals(
        new Interval(1, 1),
        assertInstanceOf(Bounded.class, InversePrediction.ofHeight(line, 3, 0.95)).interval());
  }

  @Test
  void aPerfectFlatLineIsAtItsHeightEverywhereAndAtAnotherNowhere() {
    StraightLine line = StraightLine.fit(new double[] {0, 1, 2}, new double[] {4, 4, 4});
    InversePrediction whole = InversePrediction.ofHeight(line, 4, 0.95);
    assertEquals(new WholeLine(OptionalDouble.empty(), Double.POSITIVE_INFINITY), whole);
    assertTrue(whole.contains(1e9));
    InversePrediction nowhere = InversePrediction.ofReading(line, 4.5, 1, 0.95);
    assertEquals(new Nowhere(), nowhere);
    assertEquals(false, nowhere.contains(1));
    assertEquals(Double.POSITIVE_INFINITY, nowhere.g());
    assertEquals(OptionalDouble.empty(), nowhere.estimate());
  }

  @Test
  void aFlatLineWithScatterHasNoEstimateAndRaysOfItsOwnMiddle() {
    StraightLine line = StraightLine.fit(new double[] {-1, 0, 1}, new double[] {1, -2, 1});
    TwoRays rays = assertInstanceOf(TwoRays.class, InversePrediction.ofHeight(line, 900, 0.9));
    assertEquals(OptionalDouble.empty(), rays.estimate());
    assertEquals(Double.POSITIVE_INFINITY, rays.g());
    assertEquals(-rays.below(), rays.above());
    // the height is just reached where t times the standard error is the distance
    double t = Student.exceededWith(0.05, 1);
    assertEquals(900, t * line.standardErrorAt(rays.above()), 1e-9);
    assertTrue(rays.contains(rays.above()) && rays.contains(rays.below()));
    assertEquals(false, rays.contains(0));
  }

  @Test
  void followsTheScalesOfBothAxes() {
    SplittableRandom random = new SplittableRandom(62);
    for (int trial = 0; trial < 50; trial++) {
      double[] x = Simulation.normal(random, 7);
      double[] y = Simulation.normal(random, 7);
      StraightLine line = StraightLine.fit(x, y);
      StraightLine moved =
          StraightLine.fit(
              Arrays.stream(x).map(v -> 100 - 8 * v).toArray(),
              Arrays.stream(y).map(v -> 3 + 0.25 * v).toArray());
      InversePrediction here = InversePrediction.ofReading(line, 1.3, 2, 0.6);
      InversePrediction there = InversePrediction.ofReading(moved, 3 + 0.25 * 1.3, 2, 0.6);
      assertEquals(here.g(), there.g(), 1e-9 * here.g());
      assertEquals(here.getClass(), there.getClass());
      if (here instanceof Bounded a && there instanceof Bounded b) {
        double scale = 1e-9 * (100 + Math.abs(b.interval().lower()));
        assertEquals(100 - 8 * a.interval().upper(), b.interval().lower(), scale);
        assertEquals(100 - 8 * a.at(), b.at(), scale);
      }
    }
  }

  @Test
  void moreReadingsAndALowerLevelMakeItNarrower() {
    StraightLine line = line("linewidth");
    double before = Double.POSITIVE_INFINITY;
    for (double weight : new double[] {0.5, 1, 2, 8, 1e6}) {
      double width = width(InversePrediction.ofReading(line, 6.2, weight, 0.95));
      assertTrue(width < before, weight + ": " + width);
      before = width;
    }
    assertEquals(before, width(InversePrediction.ofHeight(line, 6.2, 0.95)), 1e-4 * before);
    assertTrue(width(InversePrediction.ofHeight(line, 6.2, 0.9)) < before);
  }

  private static double width(InversePrediction found) {
    Interval interval = assertInstanceOf(Bounded.class, found).interval();
    return interval.upper() - interval.lower();
  }

  /** A change of the unit of y changes no place. */
  @Test
  void theUnitOfTheReadingsDoesNotMatter() {
    double[] x = {1, 2, 3, 4, 5, 6, 7, 8};
    double[] y = {1.1, 2.3, 2.9, 4.2, 5.1, 5.8, 7.3, 7.9};
    Bounded plain =
        assertInstanceOf(
            Bounded.class, InversePrediction.ofReading(StraightLine.fit(x, y), 4, 1, 0.95));
    for (int power : new int[] {-300, -100, 100, 300, 400}) {
      double[] scaled = java.util.Arrays.stream(y).map(v -> Math.scalb(v, power)).toArray();
      StraightLine line = StraightLine.fit(x, scaled);
      assertEquals(plain, InversePrediction.ofReading(line, Math.scalb(4.0, power), 1, 0.95));
    }
  }
}
