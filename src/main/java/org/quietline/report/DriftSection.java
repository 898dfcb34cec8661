package org.quietline.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Drift;
import org.quietline.assess.Drift.Decision;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.WindowCount;
import org.quietline.bench.Calibration;
import org.quietline.bench.Method;
import org.quietline.report.Block.Caption;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;

/** "Is the calibration drifting?" */
final class DriftSection {
  private static final double HEIGHT = 116;
  private static final double HEIGHT_WITHOUT_LINE = 62;

  private final Method method;
  private final LocalDate today;
  private final Numbers numbers;

  private DriftSection(Method method, LocalDate today) {
    this.method = method;
    this.today = today;
    this.numbers = new Numbers(method.decimals());
  }

  /** The section of one method. */
  static List<Block> of(MethodFindings findings, LocalDate today) {
    DriftSection section = new DriftSection(findings.method(), today);
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("Is the calibration drifting?"));
    if (findings.drift().isEmpty()) {
      blocks.add(Paragraph.body("Cannot say: no calibration of this method is recorded."));
    }
    findings.drift().forEach(d -> blocks.add(section.window(d)));
    return blocks;
  }

  private Block window(Drift drift) {
    Optional<DriftChart> chart = DriftPictures.of(drift, today, numbers);
    if (chart.isEmpty()) {
      String start =
          drift
              .calibration()
              .map(c -> "Calibration " + c.key() + " on " + drift.instrument() + ": cannot say, ")
              .orElse("No calibration of " + drift.instrument() + " is recorded: cannot say, ");
      return Paragraph.body(
          start + drift.line().why().orElse("there is no control result in its window") + ".");
    }
    return new Figure(
        "Deviation of the control since calibration "
            + drift.calibration().map(Calibration::key).orElse(""),
        method.unit() + " against days, n = " + drift.deviations().size(),
        side(drift),
        chart.get(),
        drift.line().value().isPresent() ? HEIGHT : HEIGHT_WITHOUT_LINE,
        under(drift),
        "Chart of "
            + drift.deviations().size()
            + " deviations of the control against days since the calibration"
            + (drift.line().value().isPresent() ? ", with a forecast fan." : "."));
  }

  private List<Paragraph> side(Drift drift) {
    List<Paragraph> side = new ArrayList<>();
    boolean assigned = drift.deviations().stream().allMatch(Drift.Deviation::assigned);
    String reference = assigned ? "its assigned value" : "its reference (open: baseline centre)";
    side.add(
        Paragraph.small(
            "Dots: control results on " + drift.instrument() + " less " + reference + "."));
    if (drift.line().value().isEmpty()) {
      side.add(
          Paragraph.small("Line: cannot say, " + drift.line().why().orElse("too few results") + ".")
              .in(Colour.INK));
      side.add(Paragraph.small("Dots alone forecast nothing."));
      return side;
    }
    Drift.Line line = drift.line().value().get();
    side.add(
        Paragraph.small(
            "Line and fan: where the true deviation lies with 50, 80 and 95 % chance"
                + drift.pool().value().map(DriftSection::pooled).orElse("")
                + "."));
    chances(drift).ifPresent(text -> side.add(Paragraph.small(text).in(Colour.INK)));
    if (drift.referenceUncertainty().value().isEmpty()) {
      side.add(
          Paragraph.small("They leave out the assigned value's uncertainty: none is stated.")
              .in(Colour.INK));
    }
    side.add(
        Paragraph.small(
            line.slopeIsReal()
                ? "Ageing reagent or control looks the same as a drifting calibration."
                : "No change shown; one of up to "
                    + Numbers.uncertainty(line.largestHidden())
                    + " over the validity may hide here."));
    return side;
  }

  private static String pooled(Drift.Pool pool) {
    return ", by "
        + Numbers.count(pool.results(), "result", "results")
        + " of "
        + Numbers.count(pool.windows(), "window", "windows")
        + (pool.windows() > 1 ? " (thin lines: earlier ones)" : "");
  }

  private Optional<String> chances(Drift drift) {
    if (drift.allowance().isEmpty()) {
      return Optional.of("No allowance is set, so no last safe day can be given.");
    }
    List<String> parts = new ArrayList<>();
    drift.chanceBeyondNow().value().ifPresent(p -> parts.add("today " + Numbers.percent(p)));
    drift
        .chanceBeyondAtExpiry()
        .value()
        .ifPresent(p -> parts.add("at expiry " + Numbers.percent(p)));
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of("Chance of being beyond the allowance: " + String.join(", ", parts) + ".");
  }

  private List<Caption> under(Drift drift) {
    List<Caption> under = new ArrayList<>();
    drift.line().value().ifPresent(line -> under.add(Caption.of(slope(line))));
    boolean asks = drift.decision() != Decision.KEEP && drift.decision() != Decision.CANNOT_SAY;
    under.add(new Caption("", decision(drift), asks ? Colour.ACCENT : Colour.INK));
    drift.count().value().ifPresent(count -> under.add(Caption.of(counted(count))));
    return under;
  }

  private String slope(Drift.Line line) {
    double half = (line.slope().upper() - line.slope().lower()) / 2;
    return "The line changes by "
        + Numbers.signedLike(line.slopePerDay(), half)
        + " a day (95 %: "
        + Numbers.signedLike(line.slope().lower(), half)
        + " to "
        + Numbers.signedLike(line.slope().upper(), half)
        + "); now "
        + numbers.signed(line.biasNow())
        + ", at expiry "
        + numbers.signed(line.biasAtExpiry())
        + " ("
        + numbers.signed(line.atExpiry().lower())
        + " to "
        + numbers.signed(line.atExpiry().upper())
        + ").";
  }

  private static String decision(Drift drift) {
    String safe = drift.lastSafeDay().value().map(day -> ", " + Dates.full(day)).orElse("");
    String end = drift.expires().map(day -> " to its date, " + Dates.full(day)).orElse("");
    String why = drift.lastSafeDay().why().or(() -> drift.line().why()).orElse("");
    return switch (drift.decision()) {
      case KEEP -> "Keep the calibration" + end + ".";
      case RECALIBRATE_BY -> "Recalibrate by the last safe day" + safe + ".";
      case RECALIBRATE_NOW -> "Recalibrate now, after a check as found.";
      case EXPIRED ->
          "The validity is over"
              + drift.expires().map(d -> " since " + Dates.full(d)).orElse("")
              + ".";
      case CANNOT_SAY ->
          "Whether it lasts: cannot say"
              + (why.isEmpty() ? "." : ", " + why + ".")
              + settles(drift);
    };
  }

  /** The validity by counting windows; the decision note says more. */
  private static String counted(WindowCount count) {
    return "Windows inside at their end: "
        + (count.checked() - count.outside())
        + " of "
        + count.checked()
        + "; shown with 95 % confidence: "
        + Numbers.percent(Math.min(count.byRate(), count.byShare()))
        + " reliability (asked: "
        + Numbers.percent(count.reliability())
        + ").";
  }

  private static String settles(Drift drift) {
    return drift
        .settling()
        .value()
        .map(
            s ->
                " "
                    + Numbers.count(s.days().size(), "control test", "control tests")
                    + " would likely settle it: "
                    + OutlookWords.days(s.days())
                    + ".")
        .orElse("");
  }
}
