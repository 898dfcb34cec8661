package org.quietline.report;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.quietline.assess.Diagnosis;
import org.quietline.assess.InForce;
import org.quietline.assess.MaterialBias;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Period;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Action;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.RestartAt;
import org.quietline.bench.Method;
import org.quietline.bench.Rule;
import org.quietline.report.Block.Caption;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Chart.Mark.Shape;

/** "Is it in control?" */
final class ControlSection {
  private static final double HEIGHT = 146;
  private static final int MOST_MONTHS = 15;
  private static final int SHOWN_MONTHS = 12;
  private static final int MOST_CAPTIONS = 8;

  /** Results without which there is nothing to judge by. */
  private static final int FIRST_JUDGED = 5;

  private final Method method;
  private final ChartSettings chart;
  private final Period period;
  private final Numbers numbers;
  private final LimitsWords words;
  private final List<Block> blocks = new ArrayList<>();

  private ControlSection(Method method, ChartSettings chart, Period period) {
    this.method = method;
    this.chart = chart;
    this.period = period;
    this.numbers = new Numbers(method.decimals());
    this.words = new LimitsWords(numbers);
  }

  /** The section of one method. */
  static List<Block> of(MethodFindings findings, ChartSettings chart, Period period) {
    ControlSection section = new ControlSection(findings.method(), chart, period);
    section.blocks.add(new Heading("Is it in control?"));
    if (findings.streams().isEmpty()) {
      section.blocks.add(
          Paragraph.body(
              "Cannot say: there are no control results. A control is a sample whose value is known"
                  + " or stays the same, measured like any other."));
    }
    findings.streams().forEach(section::stream);
    return section.blocks;
  }

  private void stream(StreamFindings stream) {
    LocalDateTime since = since(stream);
    List<Point> shown = Pictures.shown(stream, since);
    if (shown.isEmpty()) {
      blocks.add(
          Paragraph.body(
              "Cannot say for "
                  + Reasons.name(stream)
                  + ": it has no result that is a number"
                  + (stream.points().isEmpty() ? "." : ", only results below or above a bound.")));
      return;
    }
    if (shown.size() == 1) {
      blocks.add(Paragraph.body(only(stream, shown.get(0))));
      return;
    }
    List<Episode> episodes = Episode.of(stream, since);
    ControlChart picture = Pictures.control(stream, shown, episodes, numbers);
    blocks.add(
        new Figure(
            "Control results of " + Reasons.name(stream),
            facts(stream, shown),
            side(stream),
            picture,
            HEIGHT,
            under(stream, shown, episodes, picture),
            description(stream, shown, episodes)));
    words.delays(stream, method.unit().toString()).ifPresent(blocks::add);
  }

  private String only(StreamFindings stream, Point point) {
    String result =
        Reasons.name(stream)
            + ": its only result, "
            + numbers.result(point.value().getAsDouble())
            + " "
            + method.unit()
            + " on "
            + Dates.full(point.at());
    if (point.judgedBy().isEmpty()) {
      return "Cannot say for "
          + result
          + ", has nothing to be compared with; limits: "
          + stream.baseline().why().orElse("not from one result")
          + ".";
    }
    InForce limits = point.judgedBy().get();
    return result
        + ", was judged by wide limits of "
        + numbers.fine(limits.lowerAction())
        + " to "
        + numbers.fine(limits.upperAction())
        + (stream.signals().isEmpty() ? " and gave no signal. " : " and broke a rule. ")
        + stream.next().map(words::startUp).orElse("");
  }

  private static LocalDateTime since(StreamFindings stream) {
    if (stream.points().isEmpty()) {
      return LocalDateTime.MIN;
    }
    LocalDateTime first = stream.points().get(0).at();
    LocalDateTime last = stream.points().get(stream.points().size() - 1).at();
    return first.isBefore(last.minusMonths(MOST_MONTHS)) ? last.minusMonths(SHOWN_MONTHS) : first;
  }

  private String facts(StreamFindings stream, List<Point> shown) {
    long all = stream.points().stream().filter(p -> p.value().isPresent()).count();
    String n = shown.size() == all ? "n = " + all : "n = " + shown.size() + " of " + all;
    String cut = shown.size() == all ? "" : ", the latest 12 months";
    return method.unit() + ", " + n + cut + "; " + stream.pointsInPeriod() + " in the period";
  }

  private List<Paragraph> side(StreamFindings stream) {
    List<Paragraph> side = new ArrayList<>();
    String dot =
        method.replicates() > 1
            ? "Dots: means of " + method.replicates() + " readings."
            : "Dots: results.";
    if (stream.baseline().value().isEmpty()) {
      if (stream.next().isPresent()) {
        side.add(Paragraph.small(dot));
        side.add(Paragraph.small(words.startUp(stream.next().get())).in(Colour.INK));
        side.add(Paragraph.small(LimitsWords.falseStops(stream.price())));
        return side;
      }
      side.add(
          Paragraph.small(dot + " Dots are open because there are no limits to judge them by."));
      side.add(
          Paragraph.small(
                  "Limits: cannot say, " + stream.baseline().why().orElse("no baseline") + ".")
              .in(Colour.INK));
      side.add(Paragraph.small("No signal can be seen without limits."));
      return side;
    }
    Baseline baseline = stream.baseline().value().get();
    side.add(Paragraph.small(dot + " Grey: weighted mean. Strips: calibrations."));
    side.add(Paragraph.small(origin(baseline)));
    side.add(Paragraph.small(rules(baseline)));
    if (baseline.provisional()) {
      side.add(provisional(baseline));
    }
    side.add(Paragraph.small(LimitsWords.falseStops(stream.price())));
    side.add(Paragraph.small(unseen(baseline)));
    return side;
  }

  private static Paragraph provisional(Baseline baseline) {
    String what =
        baseline.chosen()
            ? "Provisional: under 15 results are chosen."
            : "Provisional (open dots): each is judged by those before it.";
    return Paragraph.small(what).in(Colour.INK);
  }

  private String unseen(Baseline baseline) {
    if (baseline.provisional()) {
      double reach = baseline.limits().upperAction() - baseline.centre();
      return "Seen: a result off by " + numbers.fine(reach) + ".";
    }
    return "A shift under one deviation ("
        + Numbers.uncertainty(baseline.deviation())
        + ") may stay unseen for many results.";
  }

  private static String origin(Baseline baseline) {
    String which = baseline.chosen() ? "chosen baseline, " : "first ";
    return "Limits: "
        + which
        + Numbers.count(baseline.results(), "result", "results")
        + ", "
        + Dates.stretch(baseline.from().toLocalDate(), baseline.to().toLocalDate())
        + "; "
        + basis(baseline)
        + ".";
  }

  /** The rules in use, so that "no signal under the rules stated" says which. */
  private String rules(Baseline baseline) {
    if (chart.stopRules().isEmpty()) {
      return "No stop rule is in use.";
    }
    return "Stop rules: "
        + chart.stopRules().stream()
            .filter(rule -> rule != Rule.READINGS_DISAGREE || method.replicates() > 1)
            .map(rule -> RuleWords.brief(rule, readingsLimit(baseline)))
            .collect(Collectors.joining("; "))
        + ".";
  }

  private String readingsLimit(Baseline baseline) {
    return baseline.readingsRangeUpper().value().map(numbers::fine).orElse("a limit not yet known");
  }

  private static String basis(Baseline baseline) {
    return switch (baseline.limitsFrom()) {
      case MOVING_RANGE ->
          "2.6587 times the mean moving range " + Numbers.figures(baseline.meanMovingRange(), 4);
      case SAMPLE_DEVIATION ->
          "3 times the deviation " + Numbers.figures(baseline.sampleDeviation(), 4);
      case PREDICTION ->
          "t prediction with deviation " + Numbers.figures(baseline.sampleDeviation(), 4);
      case BETWEEN_GROUPS ->
          "t prediction for a new calibration, deviation between calibrations "
              + Numbers.figures(baseline.betweenDeviation(), 2);
      case GUARANTEED ->
          "tolerance form with deviation " + Numbers.figures(baseline.sampleDeviation(), 4);
    };
  }

  private List<Caption> under(
      StreamFindings stream, List<Point> shown, List<Episode> episodes, ControlChart picture) {
    List<Caption> under = new ArrayList<>();
    List<Episode> open = episodes.stream().filter(Episode::open).toList();
    List<Episode> closed = episodes.stream().filter(e -> !e.open()).toList();
    int first = Math.max(0, open.size() - MOST_CAPTIONS);
    if (first > 0) {
      String words = "open, earlier; all are in findings.json.";
      under.add(new Caption(letters(open.subList(0, first)), words, Colour.ACCENT));
    }
    for (Episode episode : open.subList(first, open.size())) {
      under.add(new Caption(episode.letter(), caption(episode), Colour.ACCENT));
    }
    List<Episode> fresh = closed.stream().filter(e -> period.contains(e.last().id().at())).toList();
    fresh.forEach(e -> under.add(new Caption(e.letter(), closed(e), Colour.GREY)));
    List<Episode> earlier = closed.stream().filter(e -> !fresh.contains(e)).toList();
    if (!earlier.isEmpty()) {
      under.add(
          new Caption(
              letters(earlier),
              "closed (smaller ring), before this period; causes in actions.csv.",
              Colour.GREY));
    }
    if (episodes.isEmpty() && stream.baseline().value().isPresent()) {
      under.add(Caption.of(noSignal(stream)));
    }
    marksInWords(stream, shown, picture).ifPresent(words -> under.add(Caption.of(words)));
    stream
        .baseline()
        .value()
        .ifPresent(
            b ->
                under.add(
                    Caption.of(
                        "Weighted mean's limits, settled: "
                            + numbers.fine(b.weightedLower())
                            + " and "
                            + numbers.fine(b.weightedUpper())
                            + ". Beyond a warning limit: "
                            + stream.beyondWarning()
                            + " of "
                            + stream.counted()
                            + " results.")));
    under.add(Caption.of(bias(stream)));
    stream
        .choiceNotUsed()
        .ifPresent(why -> under.add(new Caption("", "Not in force: " + why + ".", Colour.INK)));
    stream.diagnosis().value().ifPresent(d -> under.add(diagnosis(d)));
    stream.revisions().forEach(r -> under.add(Caption.of(words.made(r))));
    stream.proposal().value().ifPresent(r -> under.add(Caption.of(words.proposal(r))));
    return under;
  }

  private static Caption diagnosis(Diagnosis diagnosis) {
    Colour colour = diagnosis.warns() ? Colour.INK : Colour.GREY;
    return new Caption("", LimitsWords.diagnosis(diagnosis), colour);
  }

  private static String noSignal(StreamFindings stream) {
    boolean judged = stream.points().stream().anyMatch(p -> p.judgedBy().isPresent());
    return judged
        ? "No signal under the rules stated."
        : "No signal can be seen yet: the first "
            + FIRST_JUDGED
            + " results make the first limits.";
  }

  private static String letters(List<Episode> episodes) {
    return episodes.stream().map(Episode::letter).collect(Collectors.joining(", "));
  }

  private static String closed(Episode closed) {
    String causes =
        closed.signals().stream()
            .flatMap(signal -> signal.closing().flatMap(Action::cause).stream())
            .distinct()
            .collect(Collectors.joining("; "));
    return "closed, "
        + closed.when()
        + ": "
        + closed.rules()
        + (causes.isEmpty()
            ? "."
            : ". Cause: " + causes + "; decided by " + deciders(closed) + ".");
  }

  private static String deciders(Episode closed) {
    return closed.signals().stream()
        .flatMap(signal -> signal.closing().stream())
        .map(action -> action.decidedBy().orElse("nobody named"))
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private String caption(Episode episode) {
    int n = episode.signals().size();
    String many = n == 1 ? "" : n + " signals (" + episode.rules() + "), the last: ";
    return "open, " + episode.when() + ": " + many + RuleWords.seen(episode.last(), method) + ".";
  }

  private static Optional<String> marksInWords(
      StreamFindings stream, List<Point> shown, ControlChart picture) {
    long out = shown.stream().filter(Point::excluded).count();
    long censored = stream.points().stream().filter(p -> p.value().isEmpty()).count();
    List<String> words = new ArrayList<>();
    if (out > 0) {
      words.add(
          "Cross, or triangle where off the scale: "
              + Numbers.count(out, "result", "results")
              + " an action took out.");
    }
    long off = picture.marks().stream().filter(m -> m.shape() == Shape.OFF).count();
    if (off > 0 && out == 0) {
      words.add("Triangle: a result off the scale.");
    }
    strokes(shown).ifPresent(words::add);
    if (censored > 0) {
      words.add(
          Numbers.count(censored, "result", "results")
              + " below or above a bound "
              + (censored == 1 ? "is" : "are")
              + " not drawn.");
    }
    return words.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", words));
  }

  private static Optional<String> strokes(List<Point> shown) {
    boolean lots = shown.stream().anyMatch(p -> p.since().contains(RestartAt.REAGENT_LOT));
    boolean closed = shown.stream().anyMatch(p -> p.since().contains(RestartAt.CLOSED_SIGNAL));
    if (!lots && !closed) {
      return Optional.empty();
    }
    String what =
        lots && closed
            ? "another reagent lot or a closed signal"
            : lots ? "another reagent lot" : "a closed signal";
    return Optional.of(
        "Stroke at the top: " + what + "; a long one where the weighted mean starts anew.");
  }

  private String bias(StreamFindings stream) {
    Optional<MaterialBias> bias = stream.bias().value();
    if (bias.isEmpty()) {
      return "Against the true value: cannot say, " + stream.bias().why().orElse("") + ".";
    }
    double difference = bias.get().difference();
    return "Baseline mean "
        + Numbers.sizeLike(difference, bias.get().standardUncertainty())
        + (difference < 0 ? " below" : " above")
        + " the assigned value"
        + stream.material().assignedValue().map(v -> " " + Numbers.written(v)).orElse("")
        + "; standard uncertainty of the difference "
        + Numbers.uncertainty(bias.get().standardUncertainty())
        + ".";
  }

  private String description(StreamFindings stream, List<Point> shown, List<Episode> episodes) {
    String limits =
        stream
            .baseline()
            .value()
            .map(
                b ->
                    "action limits "
                        + numbers.fine(b.limits().lowerAction())
                        + " and "
                        + numbers.fine(b.limits().upperAction()))
            .orElse("no limits");
    String signals =
        Numbers.count(episodes.size(), "episode of signals", "episodes of signals")
            + ", "
            + episodes.stream().filter(Episode::open).count()
            + " open";
    return "Chart of "
        + shown.size()
        + " control results of "
        + Reasons.name(stream)
        + " in time order, with "
        + limits
        + "; "
        + signals
        + ".";
  }
}
