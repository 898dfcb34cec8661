package org.quietline;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Period;
import org.quietline.assess.Review;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.intake.BenchFolder;
import org.quietline.intake.Intake;

/**
 * The review of published data finds what the NIST/SEMATECH e-Handbook of Statistical Methods,
 * section 2.6.2, prints; tolerance half a unit of its last digit.
 */
class ResistivityReviewTest {
  private static MethodFindings review() {
    Intake intake = BenchFolder.read(Path.of("sample-runs", "resistivity"));
    Review review =
        new Review(
            intake.bench(),
            intake.accounting(),
            intake.settingsFingerprint(),
            intake.dataFingerprint());
    return review
        .of(Period.of(review.latestMonth().orElseThrow()), Optional.empty())
        .methods()
        .get(0);
  }

  @Test
  void centre_deviation_and_two_sigma_limits_are_the_handbooks() {
    Baseline baseline = review().streams().get(0).baseline().value().orElseThrow();
    assertEquals(25, baseline.results());
    assertEquals(97.06984, baseline.centre(), 0.000005);
    assertEquals(0.0268, baseline.sampleDeviation(), 0.00005);
    assertEquals(97.01624, baseline.limits().lowerWarning(), 0.000005);
    assertEquals(97.12344, baseline.limits().upperWarning(), 0.000005);
  }

  @Test
  void two_results_are_beyond_two_sigma_and_none_breaks_a_stop_rule() {
    StreamFindings stream = review().streams().get(0);
    Baseline baseline = stream.baseline().value().orElseThrow();
    List<String> beyond =
        stream.points().stream()
            .filter(
                p ->
                    p.value().getAsDouble() < baseline.limits().lowerWarning()
                        || p.value().getAsDouble() > baseline.limits().upperWarning())
            .map(p -> p.at() + " " + p.value().getAsDouble())
            .toList();
    assertEquals(List.of("1994-03-28T17:33 97.014", "1994-04-07T15:46 97.016"), beyond);
    assertEquals(2, stream.beyondWarning());
    assertEquals(List.of(), stream.signals());
  }
}
