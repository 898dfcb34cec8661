package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.Findings;

/** The monthly review: one page that answers, one page a method, one page on what came in. */
public final class MonthlyReview {
  private MonthlyReview() {}

  /**
   * Words a review.
   *
   * @param findings what the review found
   * @param programVersion the version of the program, printed in the foot of each page
   * @return the pages as values; the same findings and version give equal documents
   */
  public static Document of(Findings findings, String programVersion) {
    String period = Dates.period(findings.period());
    List<Page> pages = new ArrayList<>();
    pages.add(FrontPage.of(findings));
    findings.methods().forEach(m -> pages.add(MethodPage.of(m, findings)));
    pages.add(LastPage.of(findings));
    String foot =
        "quietline "
            + programVersion
            + " · settings "
            + findings.settingsFingerprint()
            + " · data "
            + findings.dataFingerprint()
            + " · in-house production-control results";
    return new Document(
        "Monthly review, " + period + ", " + findings.bench(),
        "Control of test methods, " + period,
        findings.bench(),
        "Monthly review · " + period,
        foot,
        findings.now(),
        pages);
  }
}
