package org.quietline.report.pdf;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;
import org.quietline.assess.Findings;
import org.quietline.report.Document;
import org.quietline.report.Invented;
import org.quietline.report.MonthlyReview;

/** Reviews from empty to crowded, on both papers. */
final class Specimens {
  private Specimens() {}

  static Document bench() {
    return MonthlyReview.of(Invented.bench(), "0.1.0");
  }

  static Document crowd() {
    Findings findings =
        Invented.findings(
            "A bench with Да long name 中 that runs on and on until there is no room left on the line"
                + " at all, twice",
            Invented.accounting(90),
            List.of(
                Invented.crowded(),
                Invented.busy(),
                Invented.youngFattyAcid(0),
                Invented.youngFattyAcid(1),
                Invented.youngFattyAcid(2)));
    return MonthlyReview.of(findings, "0.1.0");
  }

  static Document empty() {
    return MonthlyReview.of(
        Invented.findings("Tidewick", Invented.accounting(0), List.of()), "0.1.0");
  }

  static Stream<Arguments> all() {
    return Stream.of(Paper.values())
        .flatMap(
            paper ->
                Stream.of(
                    Arguments.of("bench", bench(), paper),
                    Arguments.of("crowd", crowd(), paper),
                    Arguments.of("empty", empty(), paper)));
  }
}
