package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.AcrossRecords;
import org.quietline.assess.DateCoverage;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutOfDate;
import org.quietline.bench.Check;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;

/** "Was anything used past its date?" */
final class DatesSection {
  private static final int MOST = 12;

  private DatesSection() {}

  /** The section of one method; a sentence when nothing was past its date. */
  static List<Block> of(MethodFindings findings, AcrossRecords across) {
    List<OutOfDate> here = findings.outOfDate().stream().filter(OutOfDate::inPeriod).toList();
    int before = findings.outOfDate().size() - here.size();
    String off = switchedOff(findings, across);
    String earlier =
        before == 0
            ? ""
            : " "
                + Numbers.count(before, "earlier result was", "earlier results were")
                + " made past a date.";
    List<Block> blocks = new ArrayList<>();
    String unchecked = (unchecked(findings.dates()) + off).strip();
    if (here.isEmpty()) {
      String lots = lots(findings.dates());
      blocks.add(
          Paragraph.small(
                  (findings.dates().results() == 0
                          ? "There is no result of the period."
                          : unchecked.isEmpty()
                              ? "No result of the period was made past the date of its calibration"
                                  + " or reagent lot."
                              : unchecked)
                      + earlier
                      + lots)
              .in(unchecked.isEmpty() ? Colour.GREY : Colour.INK));
      return blocks;
    }
    blocks.add(new Heading("Was anything used past its date?"));
    List<Row> rows = new ArrayList<>();
    for (OutOfDate past : here.subList(0, Math.min(MOST, here.size()))) {
      rows.add(
          Row.of(
              past.result().sample(),
              Dates.full(past.result().takenAt()),
              Reasons.what(past)
                  + " on "
                  + Dates.full(past.lastDay())
                  + (past.open() ? "" : "; answered in actions.csv"),
              Numbers.count(past.daysPast(), "day past", "days past")));
    }
    blocks.add(
        new Table(
            List.of(
                Column.words("sample", 0.2),
                Column.words("tested", 0.2),
                Column.words("what was past its date", 0.46),
                Column.numbers("", 0.14)),
            rows));
    int more = here.size() - MOST;
    String rest =
        more > 0
            ? "And "
                + Numbers.count(more, "more result", "more results")
                + " of the period; all are in findings.json."
            : "";
    String after =
        (rest + (unchecked.isEmpty() ? "" : " " + unchecked) + earlier + lots(findings.dates()))
            .strip();
    if (!after.isEmpty()) {
      blocks.add(Paragraph.small(after));
    }
    return blocks;
  }

  private static String lots(DateCoverage dates) {
    return dates.lots().isEmpty() ? "" : " Reagent in use: " + LotWords.of(dates.lots()) + ".";
  }

  /** What is not asked at all, because a person switched the check off. */
  private static String switchedOff(MethodFindings findings, AcrossRecords across) {
    StringBuilder words = new StringBuilder();
    across.checksOff().stream()
        .filter(o -> o.method().map(findings.method().key()::equals).orElse(true))
        .filter(
            o -> o.check() == Check.RESULT_AFTER_VALIDITY || o.check() == Check.REAGENT_PAST_DATE)
        .forEach(
            o ->
                words
                    .append(" Not asked: ")
                    .append(o.check().key())
                    .append(", switched off in bench.toml, see the last pages."));
    return words.toString();
  }

  /** For which results it cannot be said whether a date was past. */
  private static String unchecked(DateCoverage dates) {
    List<String> parts = new ArrayList<>();
    if (dates.withoutCalibration() > 0) {
      parts.add(
          Numbers.count(dates.withoutCalibration(), "has", "have") + " no recorded calibration");
    }
    if (dates.withoutReagentDate() > 0) {
      parts.add(
          Numbers.count(dates.withoutReagentDate(), "names", "name")
              + " no reagent lot with a date in reagents.csv");
    }
    return parts.isEmpty()
        ? ""
        : "Past a date: cannot say for all; of "
            + Numbers.count(dates.results(), "result", "results")
            + " of the period "
            + String.join(", ", parts)
            + ".";
  }
}
