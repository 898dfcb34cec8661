package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Slip;
import org.quietline.assess.Slips;
import org.quietline.bench.Method;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;

/** "Does any number look like a slip?" */
final class SlipSection {
  private static final int MOST = 10;

  private SlipSection() {}

  /** The section of one method; a sentence when no number looks like a slip. */
  static List<Block> of(MethodFindings findings) {
    Slips slips = findings.slips();
    List<Slip> here = slips.questions().stream().filter(Slip::inPeriod).toList();
    long before = slips.questions().stream().filter(s -> !s.inPeriod() && s.open()).count();
    String earlier =
        before == 0
            ? ""
            : " "
                + Numbers.count(before, "earlier question is", "earlier questions are")
                + " open, see findings.json.";
    List<Block> blocks = new ArrayList<>();
    if (here.isEmpty()) {
      if (slips.inPeriod() > 0) {
        blocks.add(Paragraph.small(none(slips) + earlier));
      }
      return blocks;
    }
    blocks.add(new Heading("Does any number look like a slip?"));
    blocks.add(table(here.subList(0, Math.min(MOST, here.size())), findings.method()));
    int more = here.size() - MOST;
    String rest =
        more > 0
            ? "And "
                + Numbers.count(more, "more number", "more numbers")
                + " of the period; all are in findings.json. "
            : "";
    blocks.add(
        Paragraph.small(rest + "Each is a question, not a correction. " + judged(slips) + earlier));
    return blocks;
  }

  private static Table table(List<Slip> slips, Method method) {
    List<Row> rows = slips.stream().map(slip -> row(slip, method)).toList();
    return new Table(
        List.of(
            Column.words("tested", 0.13),
            Column.words("sample, as written", 0.21),
            Column.words("what it may be", 0.29),
            Column.words("evidence", 0.27),
            Column.words("", 0.1)),
        rows);
  }

  private static Row row(Slip slip, Method method) {
    return Row.of(
        Dates.brief(slip.result().takenAt().toLocalDate()),
        slip.result().sample() + ": " + SlipWords.written(slip.result()),
        slip.candidates().stream()
            .map(c -> SlipWords.candidate(c, slip, method))
            .collect(Collectors.joining(", or ")),
        SlipWords.evidence(slip.evidence(), method),
        SlipWords.status(slip));
  }

  private static String none(Slips slips) {
    if (slips.judged() == 0) {
      return "Slips of the pen: cannot say for any of "
          + Numbers.count(slips.inPeriod(), "result", "results")
          + ", too few.";
    }
    return "No number of the period looks like a slip of the pen. " + judged(slips);
  }

  /** How many results could be judged. */
  private static String judged(Slips slips) {
    String results = Numbers.count(slips.inPeriod(), "result", "results");
    if (slips.judged() == slips.inPeriod()) {
      return "All of " + results + " could be judged.";
    }
    return slips.judged()
        + " of "
        + results
        + " could be judged; others have too few to be held against, a bound or a zero.";
  }
}
