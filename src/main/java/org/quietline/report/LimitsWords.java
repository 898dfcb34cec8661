package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.Diagnosis;
import org.quietline.assess.InForce;
import org.quietline.assess.Price;
import org.quietline.assess.Price.Delay;
import org.quietline.assess.Revision;
import org.quietline.assess.StreamFindings;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;

/** The limits of a stream in words: whether they fit, what they cost, whether to revise them. */
final class LimitsWords {
  private final Numbers numbers;

  LimitsWords(Numbers numbers) {
    this.numbers = numbers;
  }

  /** What chance gives and what was seen. */
  static String falseStops(Price price) {
    return price
        .expectedStops()
        .value()
        .map(
            expected ->
                "Stop signals: by chance "
                    + Numbers.uncertainty(expected)
                    + ", seen "
                    + price.stopsSeen()
                    + ".")
        .orElse(
            "False stop signals to expect: cannot say, "
                + price.expectedStops().why().orElse("")
                + ".");
  }

  /** Where the limits of the next result come from, before there is a baseline. */
  String startUp(InForce next) {
    String reach = "limits for the next result, ± " + numbers.fine(next.reach());
    return switch (next.origin()) {
      case TARGET ->
          "Wide "
              + reach
              + ", come from the method's allowance"
              + (next.results() > 0 ? " and " + results(next) : "")
              + ", not from what the bench can do.";
      case OTHER_MATERIAL ->
          "Wide "
              + reach
              + ", borrow the scatter of "
              + next.from().orElse("another material")
              + (next.results() > 0 ? " and rest on " + results(next) : "")
              + ".";
      default -> "Very wide " + reach + ", come from " + results(next) + " by Student's t.";
    };
  }

  private static String results(InForce limits) {
    return Numbers.count(limits.results(), "result", "results");
  }

  /** Whether the limits fit the results they come from. */
  static String diagnosis(Diagnosis d) {
    String ratio =
        "ratio "
            + Numbers.figures(d.vonNeumann(), 3)
            + ", independent results have about 2, chance ";
    return switch (d.pattern()) {
      case INDEPENDENT ->
          "The limits fit their baseline: its results are independent, and calibrations differ by"
              + " less than half the scatter within one.";
      case ALLOWED_FOR -> "The limits allow for calibrations that differ.";
      case NOT_SHOWN -> notShown(d);
      case CALIBRATIONS_DIFFER ->
          "The limits do not fit: calibrations of the baseline differ (chance "
              + Numbers.percent(d.chanceCalibrations().orElse(0))
              + "), which moving ranges hardly see, so that false signals are more than stated."
              + " limits-from = \"between-calibrations\" would fit.";
      case DRIFTING ->
          "The limits do not fit: neighbouring results of the baseline are alike ("
              + ratio
              + Numbers.percent(d.chanceSoSmall())
              + "), as under drift or steps, so that false signals are more than stated. Find the"
              + " cause; limits-from = \"sample-deviation\" would be wider.";
      case ALTERNATING ->
          "The limits do not fit: results of the baseline go up and down in turn ("
              + ratio
              + Numbers.percent(d.chanceSoLarge())
              + "), as with over-adjustment or two people in turn, so that the limits are too wide."
              + " limits-from = \"sample-deviation\" would fit.";
    };
  }

  private static String notShown(Diagnosis d) {
    String differ =
        d.calibrationsUpper().isPresent()
            ? "they may differ by up to "
                + Numbers.figures(d.calibrationsUpper().getAsDouble(), 2)
                + " times the scatter within one"
            : "nothing tells how far they differ";
    return "Cannot say whether the limits fit: the baseline spans "
        + Numbers.count(d.calibrations(), "calibration", "calibrations")
        + ", and "
        + differ
        + "; then false signals are more than stated."
        + (d.calibrationsNeeded().isPresent()
            ? " About " + d.calibrationsNeeded().getAsInt() + " calibrations would tell;"
            : "")
        + " limits-from = \"between-calibrations\" allows for it.";
  }

  /** What the results since the baseline say to a revision. */
  String proposal(Revision r) {
    return "Since the baseline "
        + Numbers.count(r.fresh().results(), "result", "results")
        + ": deviation "
        + Numbers.uncertainty(r.fresh().deviation())
        + " against "
        + Numbers.uncertainty(r.old().deviation())
        + " of "
        + r.old().results()
        + " (F "
        + Numbers.figures(r.ratio(), 3)
        + ", chance "
        + Numbers.percent(r.ratioChance())
        + "), mean "
        + numbers.fine(r.fresh().mean())
        + " against "
        + numbers.fine(r.old().mean())
        + " (t "
        + Numbers.fixed(Math.abs(r.t()), 2)
        + ", chance "
        + Numbers.percent(r.tChance())
        + "). "
        + advice(r.advice());
  }

  private static String advice(Revision.Advice advice) {
    return switch (advice) {
      case POOL -> "Nothing differs: a baseline over all of them would make better limits.";
      case REPLACE ->
          "The scatter has become smaller: if that is accepted, a baseline of the new results.";
      case KEEP_SCATTER_GREW -> "The scatter has grown: keep the limits and look for the cause.";
      case KEEP_MEAN_MOVED -> "The mean has moved: keep the limits until the cause is known.";
    };
  }

  /** A revision that was made. */
  String made(Revision r) {
    return "Limits revised from "
        + Dates.full(r.from())
        + r.approvedBy().map(who -> ", approved by " + who).orElse(", nobody named as approving")
        + r.reason().map(why -> ": " + why).orElse("")
        + ". Old: "
        + r.old().results()
        + " results, mean "
        + numbers.fine(r.old().mean())
        + ", deviation "
        + Numbers.uncertainty(r.old().deviation())
        + "; new: "
        + r.fresh().results()
        + ", "
        + numbers.fine(r.fresh().mean())
        + ", "
        + Numbers.uncertainty(r.fresh().deviation())
        + "; F "
        + Numbers.figures(r.ratio(), 3)
        + " (chance "
        + Numbers.percent(r.ratioChance())
        + "), t "
        + Numbers.fixed(Math.abs(r.t()), 2)
        + " (chance "
        + Numbers.percent(r.tChance())
        + ").";
  }

  /** How soon shifts are seen, as a table; empty where it cannot be said. */
  Optional<Table> delays(StreamFindings stream, String unit) {
    Price price = stream.price();
    if (price.delays().value().isEmpty()) {
      return Optional.empty();
    }
    List<Row> rows = new ArrayList<>();
    for (Delay delay : price.delays().value().get()) {
      rows.add(
          Row.of(
              numbers.fine(delay.shift())
                  + " "
                  + unit
                  + (delay.allowance() ? ", the allowable bias" : ""),
              Numbers.figures(delay.deviations(), 2),
              Numbers.percent(delay.withinFour()),
              within(delay.half(), price.testsPerWeek()),
              within(delay.nineTenths(), price.testsPerWeek())));
    }
    return Optional.of(
        new Table(
            List.of(
                Column.words("If results shift by", 0.30),
                Column.numbers("deviations", 0.13),
                Column.numbers("seen within 4", 0.15),
                Column.numbers("half within", 0.21),
                Column.numbers("nine tenths within", 0.21)),
            rows,
            false));
  }

  private static String within(double results, OptionalDouble perWeek) {
    if (Double.isInfinite(results)) {
      return "over 500 results";
    }
    String count = Numbers.count((long) results, "result", "results");
    return perWeek.isPresent()
        ? count
            + ", "
            + Numbers.count(
                Math.max(1, Math.round(results / perWeek.getAsDouble())), "week", "weeks")
        : count;
  }
}
