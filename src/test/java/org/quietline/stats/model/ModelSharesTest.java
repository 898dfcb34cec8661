package org.quietline.stats.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.stats.Reference;

class ModelSharesTest {
  private static final Reference EXACT = Reference.read("model-shares");

  @Test
  void criteria_and_shares_are_those_of_the_likelihood() {
    double[] corrected = new double[3];
    double[] schwarz = new double[3];
    for (int row = 0; row < 3; row++) {
      String at = "/expected/rows/" + row + "/";
      double squares = EXACT.number(at + 0);
      int n = (int) EXACT.number(at + 1);
      int parameters = (int) EXACT.number(at + 2);
      corrected[row] = ModelShares.corrected(squares, n, parameters);
      schwarz[row] = ModelShares.schwarz(squares, n, parameters);
      EXACT.check(ModelShares.class, "corrected, model " + row, at + 3, corrected[row]);
      EXACT.check(ModelShares.class, "Schwarz, model " + row, at + 4, schwarz[row]);
    }
    for (int row = 0; row < 3; row++) {
      EXACT.check(
          ModelShares.class,
          "share by the corrected criterion, model " + row,
          "/expected/sharesCorrected/" + row,
          ModelShares.of(corrected).shares().get(row));
      EXACT.check(
          ModelShares.class,
          "share by Schwarz's criterion, model " + row,
          "/expected/sharesSchwarz/" + row,
          ModelShares.of(schwarz).shares().get(row));
    }
  }

  @Test
  void a_model_alone_or_far_ahead_has_everything() {
    assertEquals(List.of(1.0), ModelShares.of(17).shares());
    assertEquals(List.of(0.0, 1.0), ModelShares.of(5000, -5000).shares());
    assertEquals(List.of(0.5, 0.5), ModelShares.of(-3, -3).shares());
  }

  private static void refused(String message, org.junit.jupiter.api.function.Executable call) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
  }

  @Test
  void refusals_say_what_is_wrong() {
    refused("needs at least 1 value, has 0", ModelShares::of);
    refused("value 1 is NaN, not a usable number", () -> ModelShares.of(Double.NaN));
    refused(
        "sum of squared residuals must be above zero, is 0.0",
        () -> ModelShares.corrected(0, 10, 1));
    refused("parameters must be at least 1, is 0", () -> ModelShares.schwarz(1, 10, 0));
    refused("number of values must be at least 5, is 4", () -> ModelShares.corrected(1, 4, 3));
  }
}
