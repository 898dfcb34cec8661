package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.quietline.stats.Digits.assertRelative;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Evidence;
import org.quietline.stats.Interval;
import org.quietline.stats.Reference;
import org.quietline.stats.Simulation;
import org.quietline.stats.distribution.Normal;
import org.quietline.stats.distribution.Student;
import org.quietline.stats.sample.CensoredSample.Shape;

class CensoredSampleTest {
  private static final Class<?> SUBJECT = CensoredSample.class;
  private static final double[] PLAIN = {0.061, 0.074, 0.052, 0.09, 0.068, 0.081, 0.057, 0.066};

  private static CensoredNormal fitted(CensoredSample sample, Shape shape) {
    return (CensoredNormal) sample.fit(shape);
  }

  @Test
  void agreesWithTwentyFiveDigitsAndProfiles() {
    Reference file = Reference.read("censored-fits");
    assertEquals(6, file.at("/expected/cases").size());
    for (int i = 0; i < 6; i++) {
      String at = "/expected/cases/" + i + "/";
      CensoredSample sample =
          CensoredSample.of(numbers(file.at(at + "exact")))
              .withBelow(numbers(file.at(at + "below")))
              .withAbove(numbers(file.at(at + "above")));
      CensoredNormal got = fitted(sample, Shape.valueOf(file.at(at + "shape").asText()));
      String name = file.at(at + "name").asText() + ": ";
      estimates(file, at, name, got);
      profiles(file, at, name, got);
    }
  }

  private static void estimates(Reference file, String at, String name, CensoredNormal got) {
    // estimates and errors are good to far more than the profile ends are
    close(file, name + "location", at + "location", got.location());
    close(file, name + "scale", at + "scale", got.scale());
    close(file, name + "location's error", at + "locationError", got.locationError());
    close(file, name + "scale's error", at + "scaleError", got.scaleError());
    close(file, name + "quantile", at + "quantile95", got.quantile(0.95));
    file.check(SUBJECT, name + "log-likelihood", at + "logLikelihood", got.logLikelihood(), 1e-10);
    double scale = got.locationError() * got.scaleError();
    file.check(
        SUBJECT, name + "covariance", at + "errorCovariance", got.errorCovariance(), 1e-9 * scale);
  }

  private static void close(Reference file, String what, String pointer, double got) {
    file.check(SUBJECT, what, pointer, got, 1e-11 * Math.abs(file.number(pointer)));
  }

  private static void profiles(Reference file, String at, String name, CensoredNormal got) {
    Interval location = got.locationInterval(0.95);
    Interval scale = got.scaleInterval(0.95);
    Interval quantile = got.quantileInterval(0.95, 0.95);
    file.check(SUBJECT, name + "location, lower", at + "locationLower95", location.lower());
    file.check(SUBJECT, name + "location, upper", at + "locationUpper95", location.upper());
    file.check(SUBJECT, name + "scale, lower", at + "scaleLower95", scale.lower());
    file.check(SUBJECT, name + "scale, upper", at + "scaleUpper95", scale.upper());
    file.check(SUBJECT, name + "quantile, lower", at + "quantileLower95", quantile.lower());
    file.check(SUBJECT, name + "quantile, upper", at + "quantileUpper95", quantile.upper());
  }

  /** Cohen's factor for samples made to have the share and the spread of each cell. */
  @Test
  void cohensTable() {
    Reference table = Reference.read("cohen-1961-censored");
    JsonNode shares = table.at("/data/shareCensored");
    assertEquals(7, shares.size());
    for (String gamma : List.of(".05", ".10", ".20", ".50", "1.00")) {
      for (int i = 0; i < 7; i++) {
        int censored = (int) Math.round(40 * Double.parseDouble(shares.get(i).asText()));
        double away = Math.sqrt(Double.parseDouble(gamma));
        double[] exact = new double[40 - censored];
        Arrays.setAll(exact, k -> k % 2 == 0 ? 1 - away : 1 + away);
        CensoredSample sample = CensoredSample.of(exact).withBelow(new double[censored]);
        table.check(
            SUBJECT,
            "factor for " + gamma + " and " + shares.get(i).asText(),
            "/expected/" + gamma + "/" + i,
            1 - fitted(sample, Shape.NORMAL).mean());
      }
    }
  }

  @Test
  void arsenicOfOahu() {
    Reference book = Reference.read("helsel-oahu-arsenic");
    CensoredNormal got =
        fitted(
            CensoredSample.of(book.numbers("/data/exact", 11))
                .withBelow(book.numbers("/data/below", 13)),
            Shape.LOGNORMAL);
    book.check(SUBJECT, "arsenic: mean", "/expected/mean", got.mean());
    book.check(SUBJECT, "arsenic: deviation", "/expected/deviation", got.deviation());
    book.check(SUBJECT, "arsenic: median", "/expected/median", got.quantile(0.5));
  }

  @Test
  void withoutCensoredValuesItIsTheMean() {
    CensoredNormal got = fitted(CensoredSample.of(PLAIN), Shape.NORMAL);
    Summary s = Summary.of(PLAIN);
    double divisorN = s.deviation() * Math.sqrt(7 / 8.0);
    assertRelative(s.mean(), got.location(), 1e-14, "mean");
    assertRelative(divisorN, got.scale(), 1e-14, "deviation");
    assertRelative(divisorN / Math.sqrt(8), got.locationError(), 1e-12, "error");
    assertRelative(divisorN / 4, got.scaleError(), 1e-12, "error of scale");
    assertEquals(0, got.errorCovariance(), 1e-18);
    double half = Student.exceededWith(0.025, 7) * s.deviation() / Math.sqrt(8);
    Interval interval = got.locationInterval(0.95);
    assertRelative(s.mean() - half, interval.lower(), 1e-11, "Student's lower end");
    assertRelative(s.mean() + half, interval.upper(), 1e-11, "Student's upper end");
    assertEquals(Shape.NORMAL, got.shape());
  }

  /** A fine grid over both parameters finds no higher point. */
  @Test
  void isTheHighestPoint() {
    CensoredSample sample = CensoredSample.of(3, 5, 6, 9, 4).withBelow(2, 4).withAbove(10);
    CensoredNormal got = fitted(sample, Shape.NORMAL);
    double highest = Double.NEGATIVE_INFINITY;
    for (double m = 3; m < 8; m += 0.02) {
      for (double s = 1; s < 7; s += 0.02) {
        highest = Math.max(highest, slow(sample, m, s));
      }
    }
    assertRelative(slow(sample, got.location(), got.scale()), got.logLikelihood(), 1e-13, "ll");
    assertTrue(highest <= got.logLikelihood());
    Evidence.own(
        SUBJECT, "height of the likelihood", "fine grid", highest, got.logLikelihood(), 1e-4);
  }

  private static double slow(CensoredSample sample, double m, double s) {
    double sum = 0;
    for (double x : sample.exact()) {
      sum += Math.log(Normal.density((x - m) / s) / s);
    }
    for (double x : sample.below()) {
      sum += Math.log(Normal.below((x - m) / s));
    }
    for (double x : sample.above()) {
      sum += Math.log(Normal.above((x - m) / s));
    }
    return sum;
  }

  @Test
  void followsShiftAndScale() {
    CensoredSample sample = CensoredSample.of(3, 5, 6, 9, 4).withBelow(2, 4).withAbove(10);
    CensoredSample moved =
        CensoredSample.of(1030, 1050, 1060, 1090, 1040).withBelow(1020, 1040).withAbove(1100);
    CensoredNormal one = fitted(sample, Shape.NORMAL);
    CensoredNormal other = fitted(moved, Shape.NORMAL);
    assertRelative(1000 + 10 * one.location(), other.location(), 1e-13, "location");
    assertRelative(10 * one.scale(), other.scale(), 1e-12, "scale");
    assertRelative(100 * one.errorCovariance(), other.errorCovariance(), 1e-10, "covariance");
    assertRelative(
        1000 + 10 * one.quantileInterval(0.9, 0.9).upper(),
        other.quantileInterval(0.9, 0.9).upper(),
        1e-11,
        "interval");
    assertRelative(
        10 * one.scaleInterval(0.9).lower(), other.scaleInterval(0.9).lower(), 1e-10, "scale");
    assertRelative(
        one.logLikelihood() - 5 * Math.log(10), other.logLikelihood(), 1e-12, "likelihood");
  }

  @Test
  void mirroredLimitsGiveTheMirroredPopulation() {
    CensoredNormal one =
        fitted(CensoredSample.of(3, 5, 6, 9).withBelow(2, 4).withAbove(10), Shape.NORMAL);
    CensoredNormal other =
        fitted(CensoredSample.of(-3, -5, -6, -9).withAbove(-2, -4).withBelow(-10), Shape.NORMAL);
    assertRelative(-one.location(), other.location(), 1e-12, "location");
    assertRelative(one.scale(), other.scale(), 1e-12, "scale");
    Interval a = one.quantileInterval(0.1, 0.95);
    Interval b = other.quantileInterval(0.9, 0.95);
    assertRelative(-a.lower(), b.upper(), 1e-10, "end");
  }

  @Test
  void lognormalIsTheNormalOfLogarithms() {
    double[] logs = DoubleStream.of(PLAIN).map(Math::log).toArray();
    CensoredNormal log = fitted(CensoredSample.of(logs).withBelow(Math.log(0.05)), Shape.NORMAL);
    CensoredNormal got = fitted(CensoredSample.of(PLAIN).withBelow(0.05), Shape.LOGNORMAL);
    assertRelative(log.location(), got.location(), 1e-14, "location");
    assertRelative(Math.exp(log.quantile(0.9)), got.quantile(0.9), 1e-13, "quantile");
    double s = log.scale();
    assertRelative(Math.exp(log.location() + s * s / 2), got.mean(), 1e-13, "mean");
    double ratio = Math.sqrt(Math.exp(s * s) - 1);
    assertRelative(got.mean() * ratio, got.deviation(), 1e-10, "deviation");
    Interval median = got.quantileInterval(0.5, 0.95);
    assertRelative(Math.exp(got.locationInterval(0.95).lower()), median.lower(), 1e-12, "median");
    assertEquals(Shape.LOGNORMAL, got.shape());
  }

  @Test
  void heavyCensoringAndFarLimitsStillConverge() {
    SplittableRandom random = new SplittableRandom(6);
    for (int trial = 0; trial < 60; trial++) {
      double[] exact = Simulation.normal(random, 2 + random.nextInt(4));
      double far = random.nextInt(8);
      CensoredSample sample =
          CensoredSample.of(exact)
              .withBelow(Collections.nCopies(30, -far).stream().mapToDouble(v -> v).toArray())
              .withAbove(far, far, far + 5);
      CensoredNormal got = fitted(sample, Shape.NORMAL);
      double height = got.logLikelihood();
      double step = 1e-4 * got.scale();
      for (double[] by : new double[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {-1, -1}}) {
        double near = slow(sample, got.location() + by[0] * step, got.scale() + by[1] * step);
        assertTrue(near <= height + 1e-12 * Math.abs(height), () -> near + " above " + height);
      }
      assertTrue(got.locationInterval(0.95).contains(got.location()));
      assertTrue(got.scaleInterval(0.95).contains(got.scale()));
      assertTrue(got.quantileInterval(0.95, 0.95).contains(got.quantile(0.95)));
    }
  }

  /** Limits thirty thousand times as far away as the two known values are apart. */
  @Test
  void nearlyEqualValuesFarFromTheirLimits() {
    CensoredNormal got =
        fitted(CensoredSample.of(0.8330809, 0.8330293).withBelow(0, 0, 0, 0, 0, 0), Shape.NORMAL);
    CensoredNormal near =
        fitted(CensoredSample.of(0.8331, 0.8330).withBelow(0, 0, 0, 0, 0, 0), Shape.NORMAL);
    assertEquals(near.location(), got.location(), 2e-4);
    assertEquals(near.scale(), got.scale(), 2e-4);
    assertTrue(got.location() < 0 && got.scale() > 0.8);
    assertTrue(got.locationInterval(0.95).contains(got.location()));
    assertTrue(got.scaleInterval(0.95).contains(got.scale()));
    CensoredNormal idle =
        fitted(CensoredSample.of(1, 2, 4).withBelow(1e7).withAbove(-1e7), Shape.NORMAL);
    assertRelative(7 / 3.0, idle.location(), 1e-12, "limits that say nothing");
  }

  @Test
  void fewerThanTwoKnownAreNotDetermined() {
    assertEquals(
        new CensoredFit.NotDetermined(0, 0, 3),
        new CensoredSample(List.of(), List.of(1.0, 2.0), List.of(3.0)).fit(Shape.NORMAL));
    assertEquals(
        new CensoredFit.NotDetermined(3, 1, 1),
        CensoredSample.of(4, 4, 4).withBelow(2).fit(Shape.LOGNORMAL));
    assertTrue(CensoredSample.of(4, 4.5).withBelow(2).fit(Shape.NORMAL) instanceof CensoredNormal);
  }

  @Test
  void countsAndShares() {
    CensoredSample sample = CensoredSample.of(4, 5).withBelow(2, 3).withAbove(8).withBelow(1);
    assertEquals(6, sample.n());
    assertEquals(4 / 6.0, sample.shareCensored());
    assertEquals(List.of(2.0, 3.0, 1.0), sample.below());
  }

  @Test
  void moreCensoringWidensAndHigherLevelToo() {
    CensoredSample some = CensoredSample.of(PLAIN).withBelow(0.05);
    CensoredSample more = some.withBelow(0.05, 0.05, 0.05);
    CensoredNormal one = fitted(some, Shape.NORMAL);
    CensoredNormal other = fitted(more, Shape.NORMAL);
    assertTrue(other.location() < one.location());
    assertTrue(other.scale() > one.scale());
    Interval narrow = one.scaleInterval(0.8);
    Interval wide = one.scaleInterval(0.99);
    assertTrue(wide.lower() < narrow.lower() && narrow.upper() < wide.upper());
  }

  private static double[] numbers(JsonNode array) {
    double[] numbers = new double[array.size()];
    Arrays.setAll(numbers, i -> array.get(i).doubleValue());
    return numbers;
  }

  @Test
  void valuesThatNoDoubleTellsApartDetermineNothing() {
    assertEquals(
        new CensoredFit.NotDetermined(2, 1, 0), CensoredSample.of(0.0, -0.0).fit(Shape.NORMAL));
    assertEquals(
        new CensoredFit.NotDetermined(2, 1, 1),
        CensoredSample.of(1e10, Math.nextUp(1e10)).withBelow(1e9).fit(Shape.LOGNORMAL));
    assertEquals(
        new CensoredFit.NotDetermined(2, 1, 0),
        CensoredSample.of(1e-200, 2e-200).fit(Shape.NORMAL));
  }
}
