package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Answer;
import org.quietline.assess.Release;
import org.quietline.assess.Release.Decision;
import org.quietline.assess.Release.Judged;
import org.quietline.assess.Release.WayOut;
import org.quietline.assess.ReleaseFindings;
import org.quietline.assess.Uncertainty;
import org.quietline.report.Block.Badge;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Place;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Signatures;
import org.quietline.report.Block.Table;
import org.quietline.report.Block.Title;

/** The note on one batch: may it go? One page. */
public final class ReleaseNote {
  private final ReleaseFindings.Batch batch;
  private final ReleaseFindings findings;

  private ReleaseNote(ReleaseFindings.Batch batch, ReleaseFindings findings) {
    this.batch = batch;
    this.findings = findings;
  }

  /**
   * Words the decision on a batch.
   *
   * @param batch one of the batches
   * @param findings what it is part of
   * @param programVersion the version of the program, printed in the foot
   * @return the page as values; the same findings and version give equal documents
   */
  public static Document of(
      ReleaseFindings.Batch batch, ReleaseFindings findings, String programVersion) {
    ReleaseNote note = new ReleaseNote(batch, findings);
    String day = Dates.full(findings.now().toLocalDate());
    return new Document(
        "Release note, " + batch.sample() + ", " + day,
        "Release decision on a batch",
        findings.bench(),
        "Release note · " + day,
        "quietline "
            + programVersion
            + " · settings "
            + findings.settingsFingerprint()
            + " · data "
            + findings.dataFingerprint(),
        findings.now(),
        List.of(new Page(batch.sample(), note.blocks())));
  }

  private List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Title(
            "May batch " + batch.sample() + " go?",
            "by what is known on " + Dates.minute(findings.now()),
            Optional.of(badge())));
    blocks.add(Paragraph.lead(recommendation()));
    batch.releases().forEach(r -> blocks.add(Paragraph.body(new ReleaseWords(r).sentence())));
    blocks.add(new Heading("What was measured, and against what?"));
    blocks.add(measured());
    blocks.addAll(waysOut());
    blocks.add(new Heading("What does it rest on?"));
    blocks.add(rests());
    blocks.add(new Heading("By which rule?"));
    blocks.add(Paragraph.small(rule()).in(Colour.INK));
    batch.releases().stream()
        .map(r -> new ReleaseWords(r).costs())
        .filter(c -> !c.isEmpty())
        .distinct()
        .forEach(c -> blocks.add(Paragraph.small(c).in(Colour.INK)));
    blocks.add(cautions());
    blocks.add(
        new Signatures(
            List.of(
                new Place("Decided", "released, held, or sent out; why if against this note"),
                new Place("Authorised", "may release"))));
    return blocks;
  }

  private Badge badge() {
    Answer<Decision> decision = batch.decision();
    Emphasis emphasis =
        decision
            .value()
            .map(
                d ->
                    switch (d) {
                      case WITHIN -> Emphasis.CALM;
                      case BEYOND -> Emphasis.GRAVE;
                      case TOO_CLOSE_TO_CALL -> Emphasis.RAISED;
                    })
            .orElse(Emphasis.RAISED);
    return new Badge(ReleaseWords.decided(batch), emphasis, "");
  }

  private String recommendation() {
    Answer<Decision> decision = batch.decision();
    if (decision.value().isEmpty()) {
      return "It cannot be said whether this batch may go: "
          + decision.why().orElseThrow()
          + ". Hold it, or have it tested outside.";
    }
    boolean held = ReleaseWords.decided(batch).equals("held");
    return switch (decision.value().get()) {
      case WITHIN ->
          "Within its limits by every method that has one here; the rule lets it go"
              + (findings.settings().confidence() < 0.95
                  ? ", at a lower confidence than usual."
                  : ".");
      case BEYOND -> "Do not release: it is beyond a limit.";
      case TOO_CLOSE_TO_CALL ->
          held
              ? "Hold it: what it was tested with is in doubt, whatever the value says. Settle that"
                  + " first, then test it again."
              : "Hold it: the result is nearer to the limit than it is sure.";
    };
  }

  private Table measured() {
    List<Row> rows = new ArrayList<>();
    for (Release release : batch.releases()) {
      ReleaseWords words = new ReleaseWords(release);
      Numbers numbers = new Numbers(release.method().decimals());
      Optional<Judged> judged = release.judged().value();
      rows.add(
          Row.of(
              release.method().key() + ", " + release.instrument() + ", " + release.method().unit(),
              release.value().isPresent() ? numbers.fine(release.value().getAsDouble()) : "none",
              words.limit(),
              judged.map(j -> Numbers.uncertainty(j.uncertainty())).orElse("cannot say"),
              judged.map(words::acceptance).orElse("cannot say"),
              judged.map(j -> ReleaseWords.chance(j.chance())).orElse("cannot say"),
              ReleaseWords.decided(release)));
    }
    return new Table(
        List.of(
            Column.words("method", 0.2),
            Column.numbers("result", 0.09),
            Column.words("limit", 0.17),
            Column.numbers("uncertainty", 0.12),
            Column.words("acceptance", 0.15),
            Column.numbers("conforms", 0.13),
            Column.words("", 0.14)),
        rows);
  }

  private List<Block> waysOut() {
    List<Block> blocks = new ArrayList<>();
    for (Release release : batch.releases()) {
      Optional<Judged> judged = release.judged().value().filter(j -> !j.ways().isEmpty());
      if (judged.isEmpty()) {
        continue;
      }
      blocks.add(new Heading("What would settle " + release.method().key() + "?"));
      List<Row> rows = new ArrayList<>();
      for (WayOut way : judged.get().ways()) {
        rows.add(
            Row.of(
                ReleaseWords.way(way.way()),
                Numbers.uncertainty(way.uncertainty()),
                ReleaseWords.chance(way.within()),
                ReleaseWords.chance(way.beyond()),
                ReleaseWords.chance(way.settled())));
      }
      blocks.add(
          new Table(
              List.of(
                  Column.words("after", 0.48),
                  Column.numbers("uncertainty", 0.13),
                  Column.numbers("then within", 0.13),
                  Column.numbers("then beyond", 0.13),
                  Column.numbers("settled", 0.13)),
              rows,
              true));
      boolean outside = judged.get().ways().stream().anyMatch(w -> w.way() == Release.Way.OUTSIDE);
      blocks.add(
          Paragraph.small(
                  new ReleaseWords(release).wayOut()
                      + " More tests with the same calibration leave "
                      + Numbers.uncertainty(judged.get().sharedUncertainty())
                      + " "
                      + release.method().unit()
                      + " of the uncertainty as it is."
                      + (outside
                          ? ""
                          : " For an outside laboratory it cannot be said: outside.csv states no"
                              + " expanded uncertainty with its factor."))
              .in(Colour.INK));
    }
    return blocks;
  }

  private Table rests() {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < batch.releases().size(); i++) {
      Release release = batch.releases().get(i);
      rows.add(Row.of(release.method().key(), results(release)));
      rows.add(
          Row.of("", batch.budgets().get(i).value().map(b -> uncertainty(b, release)).orElse("")));
    }
    return new Table(List.of(Column.words("", 0.2), Column.words("", 0.8)), rows, false);
  }

  private static String results(Release release) {
    Numbers numbers = new Numbers(release.method().decimals());
    StringBuilder text = new StringBuilder();
    for (Release.Used used : release.results()) {
      text.append(numbers.fine(used.value()))
          .append(used.retest() ? " (retest), " : ", ")
          .append(Dates.minute(used.at()))
          .append(", ")
          .append(Numbers.count(used.readings(), "reading", "readings"))
          .append(", calibration ")
          .append(used.calibration())
          .append(", ")
          .append(used.file())
          .append(" line ")
          .append(used.line())
          .append("; ");
    }
    String control =
        release
            .lastControl()
            .map(at -> "latest control of its calibration before it: " + Dates.minute(at))
            .orElse("no control of its calibration before it");
    return text + new ReleaseWords(release).named() + "; " + control + ".";
  }

  private static String uncertainty(Uncertainty.Budget budget, Release release) {
    return "One result is uncertain by "
        + Numbers.uncertainty(budget.standard())
        + " "
        + release.method().unit()
        + " ("
        + degrees(budget.degreesOfFreedom())
        + "), from "
        + Numbers.count(budget.results(), "result", "results")
        + " of "
        + budget.material()
        + " in "
        + Numbers.count(budget.calibrations(), "calibration", "calibrations")
        + ": "
        + ReleaseWords.parts(budget)
        + "; the root of the sum of squares.";
  }

  private static String degrees(double freedom) {
    return freedom > 200
        ? "over 200 degrees of freedom"
        : Numbers.fixed(freedom, freedom < 10 ? 1 : 0) + " degrees of freedom";
  }

  private String rule() {
    String confidence = Numbers.percent(findings.settings().confidence());
    return "A batch is within its limit where its value keeps at least t·u from it, with t the "
        + confidence
        + " point of Student's t, so that it conforms with at least that chance; beyond where it is"
        + " outside by as much; between, it is too close to call. An open stop signal on its method,"
        + " a calibration or reagent past its date, or readings that disagree forbid \"within\"."
        + " Values are the plain mean of all results of the sample and are compared unrounded;"
        + " printed figures are rounded to the nearest digit, a tie to the even one. Nothing is"
        + " assumed of the batch before it was tested. JCGM 106:2012.";
  }

  private static Paragraph cautions() {
    return Paragraph.small(
        "A release shown here is a proposal under this rule. Placing fuel on the market is governed"
            + " by the specification, the contract and the law that apply, and by the person legally"
            + " responsible; where they name a referee method or an accredited laboratory, use it. The"
            + " value speaks of the sample, not of a tank that was not mixed. Statistics override no"
            + " safety rule, permit or procedure. Samples may hold methanol: toxic, and it burns with"
            + " a flame that can be invisible. Local codes and competent professionals prevail.");
  }
}
