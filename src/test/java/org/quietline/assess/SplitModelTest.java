package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.quietline.assess.SplitModel.Place;
import org.quietline.assess.VarianceSplit.Source;
import org.quietline.stats.mixed.VarianceEstimate;

/**
 * Where the scatter of control results comes from. The practitioner's 26 readings of 14 runs in 5
 * calibrations (RV-1, {@code reml-nested-unbalanced}) are put in as a bench would write them.
 */
class SplitModelTest {
  private static final String[][] RUNS = {
    {".198 .201", ".205 .203", ".200 .204"},
    {".209 .212", ".207 .211", ".214"},
    {".196 .193", ".199 .201", ".194 .198"},
    {".203 .201", ".206 .209"},
    {".188 .192", ".190", ".195 .193"}
  };

  private final TestBench made = new TestBench();

  private void practitioner() {
    LocalDateTime at = TestBench.START;
    for (int c = 0; c < RUNS.length; c++) {
      made.calibrated("C" + c, at);
      for (String run : RUNS[c]) {
        at = at.plusDays(2);
        made.control(at, Arrays.stream(run.split(" ")).map(r -> "0" + r).toArray(String[]::new));
      }
      at = at.plusDays(1);
    }
  }

  private Answer<SplitModel> fitted() {
    Records records = made.records();
    return SplitModel.of(records, "PM-1", records.bench().settings().materials().get(0));
  }

  @Test
  void componentsAreThoseOfTheCheckSet() {
    practitioner();
    VarianceSplit split = fitted().value().orElseThrow().split();
    assertEquals(26, split.readings());
    assertEquals(14, split.results());
    assertEquals(14, split.sessions());
    assertEquals(5, split.calibrations());
    assertEquals(0.0072630, split.deviation(Source.CALIBRATION).value().orElseThrow(), 5e-8);
    assertEquals(0.0021115, split.betweenResults().value().orElseThrow(), 5e-8);
    assertEquals(0.0022047, split.deviation(Source.READING).value().orElseThrow(), 5e-8);
    assertEquals(0.20113996, split.level(), 5e-9);
    assertTrue(split.deviation(Source.SESSION).value().isEmpty());
  }

  /** The practitioner's table of what averaging buys, 1 reading to 3 calibrations. */
  @Test
  void averagingBuysWhatTheTableSays() {
    practitioner();
    double[] printed = {0.00788, 0.00772, 0.00764, 0.00750, 0.00546, 0.00446};
    VarianceSplit split = fitted().value().orElseThrow().split();
    for (int i = 0; i < printed.length; i++) {
      assertEquals(printed[i], split.averaging().get(i).deviation(), 5.1e-6, "row " + i);
    }
    assertEquals(printed[1], split.reported().deviation(), 5.1e-6);
  }

  /** A mean and a difference, by the errors drawn one by one. */
  @Test
  void meansAndDifferencesScatterAsDrawnErrorsDo() {
    practitioner();
    SplitModel model = fitted().value().orElseThrow();
    List<Place> results = List.of(new Place("a", 1, 2), new Place("a", 2, 3), new Place("b", 3, 1));
    Place more = new Place("b", 4, 2);
    Random random = new Random(1);
    int many = 200_000;
    double mean = 0;
    double difference = 0;
    for (int i = 0; i < many; i++) {
      double a = deviation(model, Source.CALIBRATION) * random.nextGaussian();
      double b = deviation(model, Source.CALIBRATION) * random.nextGaussian();
      double old =
          (a
                  + result(model, 2, random)
                  + a
                  + result(model, 3, random)
                  + b
                  + result(model, 1, random))
              / 3;
      double next = b + result(model, 2, random);
      mean += old * old / many;
      difference += (next - old) * (next - old) / many;
    }
    assertClose(mean, model.ofMean(results), many);
    assertClose(difference, model.ofDifference(results, more), many);
  }

  private static double deviation(SplitModel model, Source source) {
    return Math.sqrt(model.component(source));
  }

  private static double result(SplitModel model, int readings, Random random) {
    return deviation(model, Source.RESULT) * random.nextGaussian()
        + deviation(model, Source.READING) / Math.sqrt(readings) * random.nextGaussian();
  }

  private static void assertClose(double drawn, VarianceEstimate stated, int many) {
    assertEquals(1, stated.variance() / drawn, 5 * Math.sqrt(2.0 / many));
  }

  /** Two results of one session share what lies between results, unless sessions tell. */
  @Test
  void resultsOfOneSessionCountAsOne() {
    practitioner();
    SplitModel model = fitted().value().orElseThrow();
    double apart = model.ofMean(List.of(new Place("a", 1, 2), new Place("a", 2, 2))).variance();
    double together = model.ofMean(List.of(new Place("a", 1, 2), new Place("a", 1, 2))).variance();
    assertEquals(model.component(Source.RESULT) / 2, together - apart, 1e-12);
  }

  /** With several results in sessions the sessions have a component of their own. */
  @Test
  void sessionsOfSeveralResultsAreTold() {
    Random random = new Random(3);
    for (int c = 0; c < 30; c++) {
      LocalDateTime at = TestBench.START.plusDays(10L * c);
      made.calibrated("C" + c, at);
      double calibration = 0.004 * random.nextGaussian();
      for (int s = 0; s < 3; s++) {
        double session = 0.003 * random.nextGaussian();
        for (int r = 0; r < 2; r++) {
          double value = 0.2 + calibration + session + 0.002 * random.nextGaussian();
          made.control(
              at.plusDays(s + 1L).plusHours(r),
              read(value + 0.001 * random.nextGaussian()),
              read(value + 0.001 * random.nextGaussian()));
        }
      }
    }
    VarianceSplit split = fitted().value().orElseThrow().split();
    assertEquals(
        List.of(Source.CALIBRATION, Source.SESSION, Source.RESULT, Source.READING),
        split.parts().stream().map(VarianceSplit.Part::source).toList());
    assertEquals(List.of(30, 90, 180, 360), split.parts().stream().map(p -> p.groups()).toList());
    double[] true_ = {0.004, 0.003, 0.002, 0.001};
    for (int k = 0; k < true_.length; k++) {
      assertTrue(split.parts().get(k).interval95().contains(true_[k]), split.parts().toString());
    }
  }

  private static String read(double value) {
    return String.format(Locale.ROOT, "%.6f", value);
  }

  @Test
  void singleReadingsTellCalibrationsFromResults() {
    made.replicates = 1;
    made.calibrated("C0", TestBench.START.minusDays(1));
    made.daily("0.200", "0.203", "0.201");
    made.calibrated("C1", TestBench.START.plusDays(2).plusHours(1));
    made.daily("0.211", "0.209", "0.212");
    VarianceSplit split = fitted().value().orElseThrow().split();
    assertEquals(
        List.of(Source.CALIBRATION, Source.RESULT),
        split.parts().stream().map(VarianceSplit.Part::source).toList());
    // one-way analysis of variance: balanced, so that REML gives the same; (MSb − MSw)/3
    double within = (2.333333333333e-6 + 2.333333333333e-6) / 2;
    double between = 3 * Math.pow(0.632 / 3 - 0.604 / 3, 2) / 2;
    assertEquals(
        Math.sqrt((between - within) / 3),
        split.deviation(Source.CALIBRATION).value().orElseThrow(),
        1e-9);
  }

  @Test
  void whatCannotBeToldIsSaid() {
    made.daily("0.200", "0.203", "0.201", "0.204", "0.202");
    assertEquals(
        Optional.of("needs 5 control results with a calibration behind them, has 0"),
        fitted().why());
    made.calibrated("C0", TestBench.START.minusDays(1));
    made.results.clear();
    made.daily("0.200", "0.200", "0.200", "0.200", "0.200");
    assertTrue(fitted().value().isEmpty());
  }
}
