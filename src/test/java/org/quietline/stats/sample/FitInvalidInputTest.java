package org.quietline.stats.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.quietline.stats.sample.CensoredSample.Shape;

/** Every refusal of fitted samples, with its whole sentence. */
class FitInvalidInputTest {
  private static final double NAN = Double.NaN;
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  @Test
  void censored() {
    refused("number of values must be at least 1, is 0", () -> CensoredSample.of());
    refused("value 2 is NaN, not a usable number", () -> CensoredSample.of(1, NAN));
    refused(
        "value 1 is Infinity, not a usable number", () -> CensoredSample.of(1).withBelow(INFINITE));
    refused(
        "value 1 is -Infinity, not a usable number",
        () -> CensoredSample.of(1).withAbove(-INFINITE));
    refused(
        "value of a lognormal population must be above zero, is 0.0",
        () -> CensoredSample.of(1, 2).withBelow(0).fit(Shape.LOGNORMAL));
    refused("exact must be at least 0, is -1", () -> new CensoredFit.NotDetermined(-1, 0, 0));
    refused("distinct must be at least 0, is -1", () -> new CensoredFit.NotDetermined(0, -1, 0));
    refused("distinct must be at most 1, is 2", () -> new CensoredFit.NotDetermined(3, 2, 0));
    refused("censored must be at least 0, is -1", () -> new CensoredFit.NotDetermined(0, 0, -1));
    CensoredNormal got = (CensoredNormal) CensoredSample.of(1, 2).withBelow(0.5).fit(Shape.NORMAL);
    refused("share must be between 0 and 1, is 1.0", () -> got.quantile(1));
    refused("level must be between 0 and 1, is NaN", () -> got.locationInterval(NAN));
    refused("level must be between 0 and 1, is 1.0", () -> got.scaleInterval(1));
    refused("share must be between 0 and 1, is NaN", () -> got.quantileInterval(NAN, 0.9));
    refused("level must be between 0 and 1, is 0.0", () -> got.quantileInterval(0.5, 0));
  }

  @Test
  void boxCox() {
    refused("needs at least 3 values, has 2", () -> BoxCox.of(1, 2));
    refused("all values are equal: 3.0", () -> BoxCox.of(3, 3, 3));
    refused(
        "value 2 is 0.0: a power needs values above zero, and shifting them would decide the power",
        () -> BoxCox.of(1, 0, 3));
    refused("value 1 is NaN, not a usable number", () -> BoxCox.of(NAN, 1, 2));
    BoxCox got = BoxCox.of(1, 2, 4);
    refused("power is NaN", () -> got.logLikelihood(NAN));
    refused("level must be between 0 and 1, is 1.0", () -> got.interval(1));
    refused("level must be between 0 and 1, is NaN", () -> got.plainPower(NAN));
    refused("value must be above zero, is 0.0", () -> BoxCox.transformed(0, 1));
    refused("power is Infinity", () -> BoxCox.transformed(1, INFINITE));
    refused("transformed value is NaN", () -> BoxCox.original(NAN, 1));
    refused("power is NaN", () -> BoxCox.original(1, NAN));
  }

  @Test
  void bootstrap() {
    double[] three = {1, 2, 3};
    refused(
        "needs at least 3 values, has 2",
        () -> Bootstrap.of(new double[2], Summary::meanOf, 100, 1));
    refused(
        "samples must be at least 100, is 99", () -> Bootstrap.of(three, Summary::meanOf, 99, 1));
    refused(
        "statistic is NaN for [1.0, 2.0, 3.0]",
        () ->
            Bootstrap.of(
                three,
                v -> v.length == 3 && v[0] == 1 && v[1] == 2 && v[2] == 3 ? NAN : 0,
                100,
                31));
    refused(
        "level must be between 0 and 1, is 1.0",
        () -> Bootstrap.of(three, Summary::meanOf, 100, 1).interval(1));
  }

  private static void refused(String message, Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }
}
