package org.quietline.report;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.quietline.assess.Findings;
import org.quietline.assess.LookBack;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Signal;
import org.quietline.assess.Story;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Method;
import org.quietline.bench.SignalId;
import org.quietline.report.Block.Badge;
import org.quietline.report.Block.Caption;
import org.quietline.report.Block.Checklist;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Place;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Signatures;
import org.quietline.report.Block.Step;
import org.quietline.report.Block.Table;
import org.quietline.report.Block.Title;

/**
 * A notice for each story of stop signals that is open and new in the period: what was seen, what
 * to do now and in which order, what it may be, what it puts in doubt, and room for what was found.
 */
public final class Notices {
  private static final double HEIGHT = 120;

  /** The chart shows so many results before the latest. */
  private static final int SHOWN = 20;

  /** The latest signals that are listed. */
  private static final int MOST = 6;

  private final Findings findings;
  private final MethodFindings method;
  private final Story story;
  private final Numbers numbers;
  private final List<Block> blocks = new ArrayList<>();

  private Notices(Findings findings, MethodFindings method, Story story) {
    this.findings = findings;
    this.method = method;
    this.story = story;
    this.numbers = new Numbers(method.method().decimals());
  }

  /**
   * Words the notices of a review.
   *
   * @param findings what the review found
   * @param programVersion the version of the program, printed in the foot of each page
   * @return the notices, in the order of methods and stories; none where no story is open
   */
  public static List<Notice> of(Findings findings, String programVersion) {
    List<Notice> notices = new ArrayList<>();
    for (MethodFindings method : findings.methods()) {
      method.stories().stream()
          .filter(s -> s.open() && s.stops())
          .filter(s -> findings.period().contains(s.lastSignal()))
          .forEach(
              s ->
                  notices.add(
                      new Notice(
                          s.id(), new Notices(findings, method, s).document(programVersion))));
    }
    return notices;
  }

  private Document document(String programVersion) {
    String what = method.method().title() + " on " + story.instrument();
    String day = Dates.full(story.lastSignal());
    compose(what);
    return new Document(
        "Notice, " + what + ", " + day,
        "Stop signals on a test method",
        findings.bench(),
        "Notice · " + day,
        "quietline "
            + programVersion
            + " · settings "
            + findings.settingsFingerprint()
            + " · data "
            + findings.dataFingerprint(),
        findings.now(),
        List.of(new Page("Notice", blocks)));
  }

  private void compose(String what) {
    StoryWords words = new StoryWords(method.method());
    List<Signal> open = story.signals().stream().filter(Signal::open).toList();
    Signal latest = open.get(open.size() - 1);
    blocks.add(
        new Title(
            what,
            "notice, by what is known on " + Dates.minute(findings.now()),
            Optional.of(new Badge("hold", Emphasis.GRAVE, "act now"))));
    blocks.add(
        Paragraph.lead(
            "Stop: "
                + RuleWords.seen(latest, method.method())
                + ", "
                + Dates.minute(latest.id().at())
                + "."));
    blocks.add(new Heading("What to do, in this order"));
    blocks.add(new Checklist(steps(words)));
    blocks.add(new Heading("What was seen?"));
    blocks.add(Paragraph.body(words.seen(story)));
    stream().ifPresent(this::figure);
    blocks.add(signals(open));
    blocks.add(new Heading("What may be behind it?"));
    blocks.add(Paragraph.body(words.hints(story)));
    words.check(story).ifPresent(check -> blocks.add(Paragraph.body(check)));
    story.lookBack().ifPresent(back -> doubt(words, back));
    found(open);
  }

  private List<Step> steps(StoryWords words) {
    Method m = method.method();
    List<Step> steps = new ArrayList<>();
    steps.add(
        new Step(
            "Report no result of " + m.key() + " on " + story.instrument() + ".", "", "now", true));
    steps.add(
        new Step(
            "Keep vials, reagents and the rest of the sample. Throw nothing away, and do not repeat"
                + " until it passes.",
            "",
            "now",
            true));
    steps.add(
        new Step(
            "Look at sample id and unit, arithmetic, bubbles and vial, volumes, waiting time and"
                + " temperature, reagent lot and date, state of the control material.",
            "",
            "now",
            true));
    steps.add(
        new Step(
            "Take the control as found before anybody recalibrates: recalibrating hides the"
                + " evidence.",
            "",
            "then",
            false));
    words
        .check(story)
        .ifPresent(
            check ->
                steps.add(new Step("Then the check that would tell, below.", "", "then", false)));
    steps.add(
        new Step(
            "Measure one new control. Both results stay; a good one does not cancel this signal.",
            "",
            "then",
            false));
    steps.add(
        new Step(
            "Hold the batches in doubt, below. Do not blend to mend without a new result.",
            "",
            "until settled",
            false));
    return steps;
  }

  /** The stream of the latest signal, where it is on control results. */
  private Optional<StreamFindings> stream() {
    Set<String> materials =
        story.signals().stream()
            .map(s -> s.id().material())
            .collect(Collectors.toCollection(LinkedHashSet::new));
    return method.streams().stream()
        .filter(s -> s.instrument().equals(story.instrument()))
        .filter(s -> materials.contains(s.material().key()))
        .findFirst();
  }

  private void figure(StreamFindings stream) {
    List<Point> all = Pictures.shown(stream, LocalDateTime.MIN);
    List<Point> shown = all.subList(Math.max(0, all.size() - SHOWN), all.size());
    if (shown.size() < 2) {
      return;
    }
    List<Episode> episodes = Episode.of(stream, shown.get(0).at());
    List<Caption> under = new ArrayList<>();
    for (Episode episode : episodes) {
      under.add(
          new Caption(
              episode.letter(),
              (episode.open() ? "open, " : "closed, ")
                  + episode.when()
                  + ": "
                  + episode.rules()
                  + ".",
              episode.open() ? Colour.ACCENT : Colour.GREY));
    }
    List<Paragraph> side = new ArrayList<>();
    side.add(
        Paragraph.small("The latest results of the control, with the limits that judge them."));
    side.add(Paragraph.small(LimitsWords.falseStops(stream.price())));
    blocks.add(
        new Figure(
            "Control results of " + Reasons.name(stream),
            method.method().unit() + ", the latest " + shown.size() + " of " + all.size(),
            side,
            Pictures.control(stream, shown, episodes, numbers),
            HEIGHT,
            under,
            "Chart of the latest " + shown.size() + " control results of " + Reasons.name(stream)));
  }

  private Table signals(List<Signal> open) {
    List<Row> rows = new ArrayList<>();
    for (Signal signal : open.subList(Math.max(0, open.size() - MOST), open.size())) {
      rows.add(
          Row.of(
              Dates.minute(signal.id().at()),
              RuleWords.phrase(signal.id().rule()),
              numbers.fine(signal.value()),
              numbers.fine(signal.limit()),
              place(signal.id())));
    }
    return new Table(
        List.of(
            Column.words(
                open.size() > MOST ? "the latest " + MOST + " of " + open.size() : "open signals",
                0.2),
            Column.words("rule", 0.31),
            Column.numbers("value", 0.1),
            Column.numbers("limit", 0.1),
            Column.words("calibration, file and line", 0.29)),
        rows,
        true);
  }

  private String place(SignalId id) {
    return method.streams().stream()
        .filter(s -> s.instrument().equals(id.instrument()))
        .filter(s -> s.material().key().equals(id.material()))
        .flatMap(s -> s.points().stream())
        .filter(p -> p.at().equals(id.at()))
        .findFirst()
        .map(p -> p.calibration().map(c -> c + ", ").orElse("") + p.file() + ", " + p.line())
        .orElse(id.material());
  }

  private void doubt(StoryWords words, LookBack back) {
    blocks.add(new Heading("What is in doubt?"));
    blocks.addAll(StorySection.doubted(words, numbers, back));
  }

  /** Room for what was found, and how to close it. */
  private void found(List<Signal> open) {
    blocks.add(new Heading("What was found and decided?"));
    List<Row> rows = new ArrayList<>();
    for (String field :
        List.of(
            "cause, or not found",
            "by what it is known",
            "mended by",
            "kept from coming back by",
            "good again when, checked on",
            "decision on the results in doubt",
            "customer told, and why or why not")) {
      rows.add(Row.of(field, "", ""));
    }
    blocks.add(
        new Table(
            List.of(Column.words("", 0.34), Column.words("", 0.36), Column.words("", 0.3)),
            rows,
            true));
    blocks.add(
        Paragraph.small(
            "It stays open until actions.csv holds a row with its cause for each id: "
                + open.stream().map(s -> s.id().toString()).collect(Collectors.joining(", "))
                + "."));
    blocks.add(
        Paragraph.small(
            "Reagents can burn, poison or sensitise: read label and safety data sheet of the lot in"
                + " hand. Samples may hold methanol: toxic, and it burns with a flame that can be"
                + " invisible. Statistics judge measurements and override no safety rule, permit or"
                + " procedure; local codes and competent professionals prevail."));
    blocks.add(
        new Signatures(
            List.of(
                new Place("Found and mended", "what is written above was seen and done"),
                new Place("Resume", "may let the method report results again"))));
  }
}
