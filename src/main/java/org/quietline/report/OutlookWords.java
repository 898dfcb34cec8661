package org.quietline.report;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.quietline.assess.Backtest;
import org.quietline.assess.CalibrationOutlook;
import org.quietline.assess.Drift;
import org.quietline.assess.Drift.Decision;
import org.quietline.assess.Explanation;
import org.quietline.assess.IntervalReview;
import org.quietline.assess.Recheck;
import org.quietline.assess.TestPlan;
import org.quietline.assess.WindowCount;
import org.quietline.bench.Calibration;
import org.quietline.bench.DriftForm;

/** What an outlook says, in sentences. */
final class OutlookWords {
  private final CalibrationOutlook outlook;
  private final Drift drift;
  private final Numbers numbers;
  private final String unit;
  private final LocalDate today;

  OutlookWords(CalibrationOutlook outlook, LocalDate today) {
    this.today = today;
    this.outlook = outlook;
    this.drift = outlook.drift();
    this.numbers = new Numbers(outlook.method().decimals());
    this.unit = " " + outlook.method().unit();
  }

  /** The decision in two or three words. */
  static String decided(Decision decision) {
    return switch (decision) {
      case KEEP -> "keep to its date";
      case RECALIBRATE_BY -> "recalibrate early";
      case RECALIBRATE_NOW -> "recalibrate now";
      case EXPIRED -> "expired";
      case CANNOT_SAY -> "cannot say yet";
    };
  }

  private String calibration() {
    return drift.calibration().map(Calibration::key).orElse("without a name");
  }

  private String expiry() {
    return drift.expires().map(Dates::full).orElse("its end");
  }

  private String safeChance() {
    return drift.pool().value().map(p -> asSet(p.safeChance())).orElse("the safe one");
  }

  /** A share as a person wrote it: 5 %, not 5.0 %. */
  private static String asSet(double share) {
    return BigDecimal.valueOf(share).movePointRight(2).stripTrailingZeros().toPlainString() + " %";
  }

  /** What to do, how sure, and how large, in one sentence. */
  String recommendation() {
    String safe = drift.lastSafeDay().value().map(Dates::full).orElse("");
    return switch (drift.decision()) {
      case KEEP ->
          "Keep calibration "
              + calibration()
              + " to its date, "
              + expiry()
              + ": the chance that it is off by more than "
              + allowance()
              + " stays at or below "
              + safeChance()
              + " ("
              + chanceAtExpiry()
              + " on the last day).";
      case RECALIBRATE_BY ->
          "Recalibrate "
              + drift.instrument()
              + " by "
              + safe
              + ", before calibration "
              + calibration()
              + " ends on "
              + expiry()
              + ": after that day the chance of being off by more than "
              + allowance()
              + " is above "
              + safeChance()
              + ", and "
              + chanceAtExpiry()
              + " at the end.";
      case RECALIBRATE_NOW ->
          "Recalibrate "
              + drift.instrument()
              + " now: results are likely off by "
              + now()
              + unit
              + ", and the chance that this is more than "
              + allowance()
              + " is "
              + chanceNow()
              + drift
                  .lastSafeDay()
                  .value()
                  .map(day -> "; its last safe day, " + Dates.full(day) + ", is past")
                  .orElse("")
              + ".";
      case EXPIRED ->
          "The validity of calibration "
              + calibration()
              + " is over since "
              + expiry()
              + ": recalibrate "
              + drift.instrument()
              + " before the next result.";
      case CANNOT_SAY ->
          "Cannot say yet whether calibration " + calibration() + " lasts: " + why() + ".";
    };
  }

  private String why() {
    return drift
        .lastSafeDay()
        .why()
        .or(() -> drift.line().why())
        .orElse("the records do not show it");
  }

  private String allowance() {
    return drift.allowance().isPresent()
        ? numbers.fine(drift.allowance().getAsDouble()) + unit
        : "its allowance";
  }

  private String chanceAtExpiry() {
    return drift.chanceBeyondAtExpiry().value().map(Numbers::percent).orElse("not known");
  }

  private String chanceNow() {
    return drift.chanceBeyondNow().value().map(Numbers::percent).orElse("not known");
  }

  private String now() {
    return drift.line().value().map(l -> numbers.signed(l.biasNow())).orElse("an unknown amount");
  }

  /** How far the records go to show a drift, with its size or with what could be hiding. */
  String evidence() {
    if (drift.line().value().isEmpty()) {
      return "No line can be drawn: " + drift.line().why().orElseThrow() + ".";
    }
    Drift.Line line = drift.line().value().get();
    double half = (line.slope().upper() - line.slope().lower()) / 2;
    String slope =
        Numbers.signedLike(line.slopePerDay(), half)
            + unit
            + " a day (95 %: "
            + Numbers.signedLike(line.slope().lower(), half)
            + " to "
            + Numbers.signedLike(line.slope().upper(), half)
            + ")";
    if (isLikelyUsedUp(line)) {
      return "The allowance is likely used up already: the line stands at "
          + numbers.signed(line.biasNow())
          + unit
          + " now and changes by "
          + slope
          + ".";
    }
    return line.slopeIsReal()
        ? "Drift is likely: the line changes by " + slope + "."
        : "No drift is shown: the line changes by "
            + slope
            + ". One of up to "
            + Numbers.uncertainty(hidden(line))
            + unit
            + (daysLeft() > 0 ? " from now to its last day" : " over the whole validity")
            + " may be hiding.";
  }

  private long daysLeft() {
    return drift.expires().map(day -> Dates.days(today, day)).orElse(0L);
  }

  private double hidden(Drift.Line line) {
    return daysLeft() > 0
        ? daysLeft() * Math.max(Math.abs(line.slope().lower()), Math.abs(line.slope().upper()))
        : line.largestHidden();
  }

  private boolean isLikelyUsedUp(Drift.Line line) {
    return drift.allowance().isPresent()
        && Math.abs(line.biasNow()) > drift.allowance().getAsDouble();
  }

  /** What the line rests on. */
  String pool() {
    return drift
        .pool()
        .value()
        .map(
            p ->
                "The line rests on "
                    + Numbers.count(p.results(), "control result", "control results")
                    + " of "
                    + Numbers.count(p.windows(), "window", "windows")
                    + ", which scatter about their lines by "
                    + Numbers.uncertainty(p.residualDeviation())
                    + unit
                    + ". How much windows differ is not taken as known but averaged over."
                    + form(p)
                    + leftOut(p)
                    + extended(p))
        .orElse("");
  }

  private static String form(Drift.Pool pool) {
    String taken =
        pool.form() == DriftForm.ADDITIVE
            ? "as the same amount at all levels"
            : "as the same share of all levels";
    String chance =
        pool.chanceOfShare().isPresent()
            ? " (chance of a share " + Numbers.percent(pool.chanceOfShare().getAsDouble()) + ")"
            : "";
    return switch (pool.formFrom()) {
      case ONE_LEVEL -> "";
      case SETTING -> " Drift is taken " + taken + ", as set" + chance + ".";
      case DATA ->
          " Drift is taken " + taken + ": control results at two levels say so" + chance + ".";
      case UNDECIDED ->
          " Whether drift is an amount or a share of the level is not known"
              + chance
              + "; it is taken "
              + taken
              + ", by which results may be carried farther.";
      case NO_SHARES ->
          " Drift is taken "
              + taken
              + ": a reference is not above zero, where shares mean nothing.";
    };
  }

  private static String leftOut(Drift.Pool pool) {
    return pool.leftOut() == 0
        ? ""
        : " "
            + Numbers.count(
                pool.leftOut(), "result of an earlier window", "results of earlier windows")
            + " made with another reagent lot than most of its window "
            + (pool.leftOut() == 1 ? "is" : "are")
            + " left out.";
  }

  private static String extended(Drift.Pool pool) {
    return pool.extended()
        ? " No window was followed beyond day "
            + (int) Math.floor(pool.followedTo())
            + "; from there on the line is only extended."
        : "";
  }

  /** What an explanation is about. */
  static String subject(Explanation explanation) {
    String key = explanation.subject().orElse("");
    return switch (explanation.kind()) {
      case REAGENT_AGE -> "The reagent ages";
      case MATERIAL_AGE -> "The control material changes";
      case SECOND_MATERIAL ->
          key.isEmpty() ? "Another control material drifts otherwise" : key + " drifts otherwise";
      case PERSON -> key.isEmpty() ? "A person reads otherwise" : key + " reads otherwise";
      case TEMPERATURE -> "The bench is warmer or colder";
    };
  }

  /** How an explanation was tested, and what came of it. */
  String tested(Explanation explanation) {
    if (explanation.effect().value().isEmpty()) {
      return "Not tested: " + explanation.effect().why().orElseThrow() + ".";
    }
    Explanation.Effect effect = explanation.effect().value().get();
    double half = (effect.interval95().upper() - effect.interval95().lower()) / 2;
    double slopeHalf = (effect.slopeBeside95().upper() - effect.slopeBeside95().lower()) / 2;
    String per =
        switch (explanation.kind()) {
          case REAGENT_AGE, MATERIAL_AGE, SECOND_MATERIAL -> " a day";
          case TEMPERATURE -> " a degree";
          case PERSON -> "";
        };
    return (effect.isShown() ? "Shown: " : "Not shown: ")
        + Numbers.signedLike(effect.size(), half)
        + unit
        + per
        + " (95 %: "
        + Numbers.signedLike(effect.interval95().lower(), half)
        + " to "
        + Numbers.signedLike(effect.interval95().upper(), half)
        + "), by "
        + effect.results()
        + " results; beside it the calibration drifts by "
        + Numbers.signedLike(effect.slopeBeside(), slopeHalf)
        + " a day ("
        + Numbers.signedLike(effect.slopeBeside95().lower(), slopeHalf)
        + " to "
        + Numbers.signedLike(effect.slopeBeside95().upper(), slopeHalf)
        + ").";
  }

  /** What a change of lot or material within the windows did. */
  String effect(Drift.Effect effect) {
    double half = (effect.interval95().upper() - effect.interval95().lower()) / 2;
    return (effect.of() == Drift.Effect.Of.LOT ? "Lot " : "Material ")
        + effect.key()
        + " reads "
        + Numbers.signedLike(effect.difference(), half)
        + unit
        + " (95 %: "
        + Numbers.signedLike(effect.interval95().lower(), half)
        + " to "
        + Numbers.signedLike(effect.interval95().upper(), half)
        + ")"
        + (effect.against().isEmpty() ? "" : " against " + effect.against())
        + "; the line allows for it.";
  }

  /** When to run the next control tests. */
  String plan(TestPlan plan) {
    return Numbers.count(plan.days().size(), "test: ", "tests: ")
        + days(plan.days())
        + ". The 95 % interval at expiry, "
        + Numbers.uncertainty(plan.widthNow())
        + unit
        + " wide now, is expected to narrow to "
        + Numbers.uncertainty(plan.widthThen())
        + " (spread evenly: "
        + Numbers.uncertainty(plan.evenlyThen())
        + ")"
        + (plan.chanceThen().isPresent()
            ? ", the chance beyond the allowance to be "
                + Numbers.percent(plan.chanceThen().getAsDouble())
            : "")
        + ".";
  }

  /** Days in words. */
  static String days(List<LocalDate> days) {
    return days.stream().map(Dates::brief).collect(Collectors.joining(", "));
  }

  /** What would settle what cannot be said. */
  String settling() {
    if (drift.decision() != Decision.CANNOT_SAY) {
      return "";
    }
    if (drift.settling().value().isEmpty()) {
      return "What would settle it: " + drift.settling().why().orElseThrow() + ".";
    }
    Drift.Settling settling = drift.settling().value().get();
    return "What would settle it: "
        + Numbers.count(settling.days().size(), "control test", "control tests")
        + " ("
        + days(settling.days())
        + "), if results lie where they are expected; the chance of being beyond the allowance at"
        + " expiry would then be "
        + Numbers.percent(settling.chanceThen())
        + ".";
  }

  /** How the outlook would have done before. */
  String backtest() {
    if (outlook.backtest().value().isEmpty()) {
      return "On the bench's own past it cannot be tried yet: "
          + outlook.backtest().why().orElseThrow()
          + ".";
    }
    Backtest back = outlook.backtest().value().get();
    int n = back.tries().size();
    return "On the bench's own past: the last result of each of "
        + n
        + " earlier windows, forecast from all others, fell into its 50, 80 and 95 % interval "
        + back.held50()
        + ", "
        + back.held80()
        + " and "
        + back.held95()
        + " times; "
        + Numbers.fixed(0.50 * n, 1)
        + ", "
        + Numbers.fixed(0.80 * n, 1)
        + " and "
        + Numbers.fixed(0.95 * n, 1)
        + " are meant. "
        + (back.off()
            ? "That is off by more than chance: do not rely on the intervals of this note."
            : "That is within chance, which for so few windows is wide.");
  }

  /** Whether the validity is right. */
  String interval() {
    if (outlook.interval().value().isEmpty()) {
      return "By the lines of the windows: cannot say, "
          + outlook.interval().why().orElseThrow()
          + ".";
    }
    IntervalReview review = outlook.interval().value().get();
    return "By the lines of "
        + review.windows()
        + " windows an average window is safe "
        + until(review.averageDays(), review)
        + ", and a new one before its first check "
        + until(review.uncheckedDays(), review)
        + " (set: "
        + review.validDays()
        + " days). "
        + (shorter(review)
            ? "A shorter validity, or a check right after each calibration, is worth a proposal."
            : "A longer validity is no finding of this note: it needs a technical justification and an"
                + " authorisation, and never goes beyond what the maker or a regulator allows.");
  }

  /** The same by counting. */
  String count() {
    if (drift.count().value().isEmpty()) {
      return "By counting: cannot say, " + drift.count().why().orElseThrow() + ".";
    }
    WindowCount count = drift.count().value().get();
    int inside = count.checked() - count.outside();
    return "By counting: "
        + inside
        + " of "
        + Numbers.count(count.checked(), "window that was", "windows that were")
        + " checked in the last third ended inside the allowance"
        + (count.unchecked() > 0 ? " (" + count.unchecked() + " were not checked then)" : "")
        + "; with 95 % confidence that shows a reliability over "
        + count.validDays()
        + " days of at least "
        + Numbers.percent(count.byRate())
        + " (constant rate) and "
        + Numbers.percent(count.byShare())
        + " (share of windows). "
        + (count.isShown()
            ? "The " + Numbers.percent(count.reliability()) + " asked for are shown."
            : "The "
                + Numbers.percent(count.reliability())
                + " asked for are not shown: that takes "
                + count.cleanNeeded()
                + " windows without one outside; as it is, they are shown for "
                + Numbers.fixed(Math.floor(count.daysShown() * 10) / 10, 1)
                + " days.");
  }

  /** The last recalibration as found and as left, and how often both were taken. */
  String rechecks() {
    if (outlook.rechecks().isEmpty()) {
      return "As found and as left: there was no recalibration yet.";
    }
    Recheck last = outlook.rechecks().get(outlook.rechecks().size() - 1);
    long both = outlook.rechecks().stream().filter(r -> isBoth(r)).count();
    String latest =
        last.step().value().isPresent()
            ? "the control changed by "
                + numbers.signed(last.step().value().get().change())
                + unit
                + " (95 %: "
                + numbers.signed(last.step().value().get().interval95().lower())
                + " to "
                + numbers.signed(last.step().value().get().interval95().upper())
                + ")"
            : last.step().why().orElseThrow();
    return "As found and as left at "
        + last.calibration().key()
        + ": "
        + latest
        + ". Both were taken within three days at "
        + both
        + " of "
        + Numbers.count(outlook.rechecks().size(), "recalibration", "recalibrations")
        + ".";
  }

  private static boolean isBoth(Recheck recheck) {
    return recheck.asFound().isPresent() && recheck.asLeft().isPresent();
  }

  private static boolean shorter(IntervalReview review) {
    return review.uncheckedDays().orElse(-1) < review.validDays();
  }

  private static String until(OptionalInt days, IntervalReview review) {
    if (days.isEmpty()) {
      return "on no day";
    }
    boolean seen = days.getAsInt() <= review.followedTo();
    return seen
        ? "to day " + days.getAsInt()
        : "as far as windows were followed, day " + (int) Math.floor(review.followedTo());
  }
}
