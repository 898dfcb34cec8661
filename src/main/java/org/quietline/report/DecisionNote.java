package org.quietline.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Answer;
import org.quietline.assess.CalibrationOutlook;
import org.quietline.assess.Drift;
import org.quietline.assess.Drift.Ahead;
import org.quietline.assess.Drift.Decision;
import org.quietline.assess.Explanation;
import org.quietline.assess.OutlookFindings;
import org.quietline.assess.TestPlan;
import org.quietline.assess.Touched;
import org.quietline.bench.Calibration;
import org.quietline.report.Block.Badge;
import org.quietline.report.Block.Caption;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Place;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Signatures;
import org.quietline.report.Block.Table;
import org.quietline.report.Block.Title;

/** The decision note on one calibration: recalibrate now, or keep it to its date? */
public final class DecisionNote {
  /** The chart's height in points; it gives way to checks that would not fit below it. */
  private static final double HEIGHT = 150;

  private static final double LEAST_HEIGHT = 105;

  /** What one more check takes, in points. */
  private static final double CHECK = 14;

  /** As many checks fit below a chart of full height. */
  private static final int FITTING_CHECKS = 5;

  /** As many checks fit on the first page. */
  private static final int MOST_CHECKS = 8;

  /** More touched results than these are named by their number. */
  private static final int MOST_TOUCHED = 14;

  /** Fewer windows than these leave it open how much windows differ. */
  private static final int FEW_WINDOWS = 4;

  private final CalibrationOutlook outlook;
  private final Drift drift;
  private final LocalDate today;
  private final OutlookWords words;
  private final Numbers numbers;
  private final String unit;

  private DecisionNote(CalibrationOutlook outlook, LocalDate today) {
    this.outlook = outlook;
    this.drift = outlook.drift();
    this.today = today;
    this.words = new OutlookWords(outlook, today);
    this.numbers = new Numbers(outlook.method().decimals());
    this.unit = outlook.method().unit().toString();
  }

  /**
   * Words an outlook.
   *
   * @param outlook one of the bench's outlooks
   * @param findings what it is part of
   * @param programVersion the version of the program, printed in the foot of each page
   * @return the pages as values; the same findings and version give equal documents
   */
  public static Document of(
      CalibrationOutlook outlook, OutlookFindings findings, String programVersion) {
    LocalDate today = findings.now().toLocalDate();
    DecisionNote note = new DecisionNote(outlook, today);
    String subject = outlook.method().title() + ", " + outlook.drift().instrument();
    String foot =
        "quietline "
            + programVersion
            + " · settings "
            + findings.settingsFingerprint()
            + " · data "
            + findings.dataFingerprint()
            + " · in-house production-control results";
    return new Document(
        "Decision note, " + subject + ", " + Dates.full(today),
        "Outlook of a calibration",
        findings.bench(),
        "Decision note · " + Dates.full(today),
        foot,
        findings.now(),
        note.pages(subject));
  }

  /** Two pages; where the checks do not fit on the first, one text that runs on. */
  private List<Page> pages(String subject) {
    List<Block> first = first();
    if (drift.deviations().size() <= MOST_CHECKS) {
      return List.of(new Page(subject, first), new Page("What it rests on", second()));
    }
    first.addAll(second());
    return List.of(new Page(subject, first));
  }

  private List<Block> first() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Title(
            "Recalibrate, or keep to the date?",
            outlook.method().title() + " · " + drift.instrument() + " · " + unit,
            Optional.of(badge())));
    blocks.add(Paragraph.lead(words.recommendation()));
    blocks.add(Paragraph.body(words.evidence()));
    blocks.add(facts());
    picture().ifPresent(blocks::add);
    if (drift.pool().value().isPresent()) {
      blocks.add(Paragraph.small(words.pool()));
      blocks.add(new Heading("Which window is meant?"));
      blocks.add(questions(drift.pool().value().get()));
    }
    blocks.add(cautions());
    if (!drift.deviations().isEmpty()) {
      blocks.add(new Heading("Which checks is this window judged by?"));
      blocks.add(checks());
    }
    return blocks;
  }

  private Badge badge() {
    boolean calm = drift.decision() == Decision.KEEP;
    boolean grave =
        drift.decision() == Decision.RECALIBRATE_NOW || drift.decision() == Decision.EXPIRED;
    Emphasis emphasis = calm ? Emphasis.CALM : grave ? Emphasis.GRAVE : Emphasis.RAISED;
    return new Badge(OutlookWords.decided(drift.decision()), emphasis, "");
  }

  private Table facts() {
    List<Row> rows = new ArrayList<>();
    drift
        .calibration()
        .ifPresent(
            c ->
                rows.add(
                    Row.of(
                        "calibration",
                        c.key()
                            + ", "
                            + Dates.minute(c.calibratedAt())
                            + drift.expires().map(d -> ", valid to " + Dates.full(d)).orElse(""))));
    rows.add(Row.of("allowance", allowance()));
    rows.add(Row.of("last safe day", lastSafeDay()));
    rows.add(
        Row.of(
            "chance beyond it",
            "today "
                + percent(drift.chanceBeyondNow())
                + ", on the last day "
                + percent(drift.chanceBeyondAtExpiry())));
    rows.add(Row.of("reference", reference()));
    if (!outlook.lots().isEmpty()) {
      rows.add(Row.of("reagent", LotWords.of(outlook.lots())));
    }
    return new Table(List.of(Column.words("", 0.18), Column.words("", 0.82)), rows, false);
  }

  private String allowance() {
    return drift.allowance().isPresent()
        ? numbers.fine(drift.allowance().getAsDouble())
            + " "
            + unit
            + ", set for this method in bench.toml (allowable-bias)"
        : "none is set: allowable-bias in bench.toml";
  }

  private String lastSafeDay() {
    return drift
        .lastSafeDay()
        .value()
        .map(Dates::full)
        .orElseGet(() -> "cannot say: " + drift.lastSafeDay().why().orElseThrow());
  }

  private static String percent(Answer<Double> chance) {
    return chance.value().map(Numbers::percent).orElse("cannot say");
  }

  private String reference() {
    if (drift.deviations().isEmpty()) {
      return "no control result in this window";
    }
    boolean assigned = drift.deviations().get(0).assigned();
    String what = assigned ? "assigned value of " : "centre of the baseline of ";
    String material =
        drift.pool().value().map(Drift.Pool::material).orElse(drift.deviations().get(0).material());
    return what
        + material
        + drift
            .referenceUncertainty()
            .value()
            .map(
                u ->
                    ", standard uncertainty "
                        + Numbers.uncertainty(u)
                        + " "
                        + unit
                        + ", counted in")
            .orElse(", of unstated uncertainty: the chances leave it out");
  }

  private Optional<Figure> picture() {
    Optional<DriftChart> chart = DriftPictures.of(drift, today, numbers);
    return chart.map(
        c ->
            new Figure(
                "Deviation of the control since calibration "
                    + drift.calibration().map(Calibration::key).orElse(""),
                unit + " against days, n = " + drift.deviations().size(),
                side(),
                c,
                height(),
                List.of(
                    Caption.of(
                        "The fan speaks of the calibration's error, not of the scatter of a single"
                            + " result; it supposes that a window's drift is a straight line.")),
                "Chart of "
                    + drift.deviations().size()
                    + " deviations of the control against days since the calibration, with earlier"
                    + " windows as thin lines."));
  }

  private double height() {
    int more = Math.max(0, drift.deviations().size() - FITTING_CHECKS);
    return Math.max(LEAST_HEIGHT, HEIGHT - more * CHECK);
  }

  private List<Paragraph> side() {
    List<Paragraph> side = new ArrayList<>();
    side.add(Paragraph.small("Dots: control results of this window less their reference."));
    if (!drift.earlier().isEmpty()) {
      side.add(Paragraph.small("Thin lines: earlier windows."));
    }
    if (drift.line().value().isPresent()) {
      side.add(
          Paragraph.small(
              "Thick line and fan: where the calibration's error lies with 50, 80 and 95 % chance."));
    }
    if (drift.deviations().stream().anyMatch(d -> !d.used())) {
      side.add(Paragraph.small("Crosses: results that the line does not rest on."));
    }
    return side;
  }

  private Table questions(Drift.Pool pool) {
    List<Row> rows = new ArrayList<>();
    rows.add(ahead("the average window", Answer.of(pool.average())));
    rows.add(ahead("this window, by its own checks", thisWindow()));
    rows.add(ahead("the next window, before its first check", pool.next()));
    return new Table(
        List.of(
            Column.words("on its last day", 0.4),
            Column.numbers("off by", 0.14),
            Column.numbers("95 % interval", 0.26),
            Column.numbers("chance beyond", 0.2)),
        rows,
        true);
  }

  private Answer<Ahead> thisWindow() {
    return drift
        .line()
        .map(
            l ->
                new Ahead(
                    l.biasAtExpiry(),
                    l.atExpiry(),
                    drift
                        .chanceBeyondAtExpiry()
                        .value()
                        .map(java.util.OptionalDouble::of)
                        .orElse(java.util.OptionalDouble.empty())));
  }

  private Row ahead(String window, Answer<Ahead> answer) {
    if (answer.value().isEmpty()) {
      return Row.of(window, "", "cannot say", "");
    }
    Ahead ahead = answer.value().get();
    return Row.of(
        window,
        numbers.signed(ahead.bias()),
        numbers.signed(ahead.interval95().lower())
            + " to "
            + numbers.signed(ahead.interval95().upper()),
        ahead.chanceBeyond().isPresent()
            ? Numbers.percent(ahead.chanceBeyond().getAsDouble())
            : "no allowance");
  }

  private Table checks() {
    List<Row> rows = new ArrayList<>();
    double scatter = drift.pool().value().map(Drift.Pool::residualDeviation).orElse(0.0);
    for (Drift.Deviation d : drift.deviations()) {
      rows.add(
          Row.of(
              Numbers.fixed(d.day(), 1),
              Dates.minute(d.at()),
              d.material(),
              d.lot().orElse("not recorded"),
              numbers.signed(d.deviation()),
              scatter > 0 ? Numbers.fixed(d.deviation() / (scatter * d.scatter()), 1) : "",
              d.used() ? "" : "left out"));
    }
    return new Table(
        List.of(
            Column.numbers("day", 0.07),
            Column.words("taken", 0.2),
            Column.words("material", 0.17),
            Column.words("lot", 0.16),
            Column.numbers("deviation", 0.14),
            Column.numbers("in scatters", 0.13),
            Column.words("", 0.13)),
        rows,
        false);
  }

  private List<Block> second() {
    List<Block> blocks = new ArrayList<>();
    blocks.addAll(explanations());
    blocks.addAll(touched());
    blocks.addAll(tests());
    blocks.addAll(trust());
    blocks.addAll(signs());
    blocks.addAll(toDo());
    return blocks;
  }

  private List<Block> explanations() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("What else could have moved the control?"));
    List<Row> rows = new ArrayList<>();
    for (Explanation explanation : outlook.explanations()) {
      rows.add(Row.of(OutlookWords.subject(explanation), words.tested(explanation)));
    }
    drift
        .pool()
        .value()
        .ifPresent(
            p -> {
              p.effects().forEach(e -> rows.add(Row.of("A change in the window", words.effect(e))));
              p.confounded()
                  .forEach(
                      key ->
                          rows.add(
                              Row.of(
                                  "Not to be told apart",
                                  key
                                      + " changed together with something else; its results are"
                                      + " left out.")));
              p.uncheckedLot()
                  .ifPresent(
                      l ->
                          rows.add(
                              Row.of(
                                  "Not checked",
                                  "Lot "
                                      + l
                                      + " is in use and no control result of this window was made"
                                      + " with it.")));
            });
    if (rows.isEmpty()) {
      blocks.add(Paragraph.body("Not tested: no line can be drawn."));
    } else {
      blocks.add(new Table(List.of(Column.words("", 0.25), Column.words("", 0.75)), rows, false));
      blocks.add(
          Paragraph.small(
              "Each was tried alone beside the line. What is not shown is not excluded; a cause that"
                  + " changed on the day of the calibration cannot be told from it."));
    }
    return blocks;
  }

  private List<Block> touched() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("Which results does it touch?"));
    if (outlook.touched().value().isEmpty()) {
      blocks.add(Paragraph.body("Cannot say: " + outlook.touched().why().orElseThrow() + "."));
      return blocks;
    }
    Touched touched = outlook.touched().value().get();
    String since =
        (touched.sinceControl()
                ? "the last control result that was inside the allowance and broke no rule, "
                : "the calibration (no control result since was inside the allowance without a signal), ")
            + Dates.minute(touched.since());
    if (touched.results().isEmpty()) {
      blocks.add(Paragraph.body("No product result was made since " + since + "."));
      return blocks;
    }
    blocks.add(
        Paragraph.body(
            Numbers.count(touched.results().size(), "product result", "product results")
                + " since "
                + since
                + ", each likely off by about as much as the line says for its day:"));
    List<Row> rows = new ArrayList<>();
    touched.results().stream()
        .skip(Math.max(0, touched.results().size() - MOST_TOUCHED))
        .forEach(r -> rows.add(touched(r)));
    blocks.add(
        new Table(
            List.of(
                Column.words("sample", 0.16),
                Column.words("taken", 0.2),
                Column.numbers("result", 0.1),
                Column.numbers("likely off by", 0.14),
                Column.numbers("95 % interval", 0.22),
                Column.numbers("corrected, to the limit", 0.18)),
            rows,
            false));
    if (touched.results().size() > MOST_TOUCHED) {
      blocks.add(
          Paragraph.small(
              "And "
                  + (touched.results().size() - MOST_TOUCHED)
                  + " earlier ones, back to "
                  + Dates.minute(touched.results().get(0).at())
                  + "."));
    }
    return blocks;
  }

  private Row touched(Touched.Result r) {
    return Row.of(
        r.sample(),
        Dates.minute(r.at()),
        r.value().isPresent() ? numbers.result(r.value().getAsDouble()) : "a bound",
        numbers.signed(r.error()),
        numbers.signed(r.error95().lower()) + " to " + numbers.signed(r.error95().upper()),
        r.nearestLimit().isPresent() ? numbers.signed(r.nearestLimit().getAsDouble()) : "no limit");
  }

  private List<Block> tests() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("When to spend the next control tests?"));
    if (drift.decision() == Decision.RECALIBRATE_NOW || drift.decision() == Decision.EXPIRED) {
      blocks.add(
          Paragraph.body(
              "On both sides of the recalibration: one as found, before anything is touched, and"
                  + " one as left, right after it."));
      return blocks;
    }
    for (Answer<TestPlan> plan : outlook.plans()) {
      if (plan.value().isPresent()) {
        blocks.add(Paragraph.small(words.plan(plan.value().get())).in(Colour.INK));
      } else {
        blocks.add(
            Paragraph.small("Cannot plan: " + plan.why().orElseThrow() + ".").in(Colour.INK));
        break;
      }
    }
    if (drift.pool().value().filter(p -> p.windows() < FEW_WINDOWS).isPresent()
        && outlook.plans().stream().anyMatch(p -> p.value().isPresent())) {
      blocks.add(
          Paragraph.small(
                  "So few windows hardly say how much windows differ; results that differ more than"
                      + " expected leave the interval wider than this.")
              .in(Colour.INK));
    }
    if (outlook.plans().isEmpty()) {
      blocks.add(
          Paragraph.body(
              "Right after the next calibration, in mid-window, and in its last third: that is where"
                  + " a check tells most of a drift."));
    }
    if (!words.settling().isEmpty()) {
      blocks.add(Paragraph.small(words.settling()).in(Colour.INK));
    }
    return blocks;
  }

  private List<Block> trust() {
    return List.of(
        new Heading("How far is this to be trusted, and is the validity right?"),
        Paragraph.small(words.backtest()).in(Colour.INK),
        Paragraph.small(words.interval() + " " + words.count()).in(Colour.INK));
  }

  private List<Block> signs() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("What do calibrations, blanks and rechecks say?"));
    blocks.add(
        Paragraph.small(
                outlook
                        .signs()
                        .map(s -> SignWords.of(s, numbers, unit))
                        .orElse("No responses and no blanks are recorded.")
                    + " "
                    + words.rechecks())
            .in(Colour.INK));
    return blocks;
  }

  private List<Block> toDo() {
    return List.of(
        new Heading("What was decided?"),
        Paragraph.small(
                "Recalibrating hides the evidence: take the as-found check first, on the same control"
                    + " material; then recalibrate; then take the as-left check. Write both down as"
                    + " control results, with their times.")
            .in(Colour.INK),
        new Signatures(
            List.of(
                new Place("Decided", "what was done, and why if against this note"),
                new Place("Authorised", "has read all pages"))));
  }

  private static Paragraph cautions() {
    return Paragraph.small(
        "The statistics judge measurements. They override no safety rule, interlock, permit or"
            + " procedure. Reagents and samples can burn, poison or ignite: read label and safety"
            + " data sheet of the lot in hand. Local codes, the maker's instructions and"
            + " regulators' limits on validity come before this note, as does the advice of"
            + " licensed or competent professionals.");
  }
}
