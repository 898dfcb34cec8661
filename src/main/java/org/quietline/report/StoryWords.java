package org.quietline.report;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.quietline.assess.Hint;
import org.quietline.assess.Hint.DecidingCheck;
import org.quietline.assess.Hint.Estimate;
import org.quietline.assess.Hints;
import org.quietline.assess.Hints.Inseparable;
import org.quietline.assess.Hints.NextTime;
import org.quietline.assess.LookBack;
import org.quietline.assess.Story;
import org.quietline.bench.Method;

/** Stories in words: what began when, how large, consistent with what, what it puts in doubt. */
final class StoryWords {
  private static final int MOST_HINTS = 3;
  private static final double WORTH_A_WORD = 0.05;

  private final Method method;
  private final Numbers numbers;

  StoryWords(Method method) {
    this.method = method;
    this.numbers = new Numbers(method.decimals());
  }

  /** What was seen, since when, how large. */
  String seen(Story story) {
    String rules =
        story.signals().stream()
            .map(s -> RuleWords.phrase(s.id().rule()))
            .distinct()
            .collect(Collectors.joining(", "));
    return Numbers.count(story.signals().size(), "signal", "signals")
        + " on "
        + story.instrument()
        + " ("
        + rules
        + "), "
        + onset(story)
        + "."
        + sizes(story)
        + story.resetBy().map(c -> " It ended with calibration " + c + ".").orElse("");
  }

  private static String onset(Story story) {
    String first = Dates.full(story.onset().first());
    return switch (story.onset().from()) {
      case THE_RESULT_ALONE -> "of " + first + " alone";
      case STEP, LAST_ZERO ->
          "likely begun "
              + story
                  .onset()
                  .lastBefore()
                  .map(before -> "between " + Dates.full(before) + " and " + first)
                  .orElse("by " + first);
    };
  }

  private String sizes(Story story) {
    String each =
        story.sizes().stream()
            .map(
                s ->
                    s.material()
                        + " off by "
                        + numbers.signed(s.size())
                        + " "
                        + method.unit()
                        + " (95 %: "
                        + numbers.signed(s.interval95().lower())
                        + " to "
                        + numbers.signed(s.interval95().upper())
                        + "), n = "
                        + s.results())
            .collect(Collectors.joining("; "));
    return each.isEmpty() ? "" : " Since then " + each + ".";
  }

  /** What it is consistent with. */
  String hints(Story story) {
    if (story.hints().value().isEmpty()) {
      return "Consistent with: cannot say, " + story.hints().why().orElse("") + ".";
    }
    Hints hints = story.hints().value().get();
    String ranked =
        hints.ranked().stream()
            .filter(h -> h.share() >= WORTH_A_WORD || h.equals(hints.leading()))
            .limit(MOST_HINTS)
            .map(this::hint)
            .collect(Collectors.joining("; "));
    return "Consistent with: "
        + ranked
        + ". From "
        + Numbers.count(hints.results(), "control result", "control results")
        + "; a pattern is no cause.";
  }

  private String hint(Hint hint) {
    return pattern(hint)
        + " ("
        + Numbers.percent(hint.share())
        + " of the likelihood, "
        + estimate(hint.estimate())
        + ")";
  }

  private static String pattern(Hint hint) {
    Optional<String> subject = hint.subject();
    return switch (hint.pattern()) {
      case ADDITIVE -> "all levels off by one amount";
      case PROPORTIONAL -> "all levels off by one share";
      case LOT_STEP -> "a step with reagent lot " + subject.orElse("");
      case CALIBRATION_DRIFT -> "drift since calibration" + subject.map(s -> " " + s).orElse("");
      case CALIBRATION_STEP -> "a step with calibration " + subject.orElse("");
      case REAGENT_AGE -> "ageing reagent" + subject.map(s -> " " + s).orElse("");
      case ONE_MATERIAL -> "control material " + subject.orElse("") + " alone";
      case ONE_PERSON -> "results of " + subject.orElse("one person");
      case ONE_RESULT -> "one result alone, a slip or a bubble";
      case ONE_SESSION -> "one sitting";
    };
  }

  private String estimate(Estimate e) {
    return switch (e.per()) {
      case AMOUNT -> numbers.signed(e.value()) + " " + method.unit();
      case SHARE -> share(e.value());
      case AMOUNT_A_DAY ->
          (e.value() < 0 ? "−" : "+")
              + Numbers.uncertainty(Math.abs(e.value()))
              + " "
              + method.unit()
              + " a day";
      case SHARE_A_DAY -> share(e.value()) + " a day";
    };
  }

  private static String share(double share) {
    return (share < 0 ? "−" : "+") + Numbers.percent(Math.abs(share)) + " of the level";
  }

  /** The check that would tell, and what cannot be told apart. */
  Optional<String> check(Story story) {
    return story.hints().value().map(h -> "To tell: " + check(h.leading().check()) + apart(h));
  }

  private static String apart(Hints hints) {
    List<Inseparable> pairs = hints.inseparable();
    if (pairs.isEmpty()) {
      return "";
    }
    return pairs.stream()
        .map(
            p ->
                " These results cannot tell "
                    + name(p.likelier())
                    + " from "
                    + name(p.other())
                    + "; next time "
                    + nextTime(p.nextTime())
                    + ".")
        .distinct()
        .limit(2)
        .collect(Collectors.joining());
  }

  private static String name(Hint.Pattern pattern) {
    return switch (pattern) {
      case ADDITIVE -> "an amount";
      case PROPORTIONAL -> "a share of the level";
      case LOT_STEP -> "a lot step";
      case CALIBRATION_DRIFT -> "calibration drift";
      case CALIBRATION_STEP -> "a calibration step";
      case REAGENT_AGE -> "ageing reagent";
      case ONE_MATERIAL -> "one material";
      case ONE_PERSON -> "one person";
      case ONE_RESULT -> "one result";
      case ONE_SESSION -> "one sitting";
    };
  }

  static String check(DecidingCheck check) {
    return switch (check) {
      case READ_THE_BLANK_AND_A_LOW_LEVEL -> "read the blank and a control at a low level.";
      case READ_A_HIGH_LEVEL -> "read a control at a high level.";
      case RUN_OLD_AND_NEW_LOT_SIDE_BY_SIDE ->
          "run the control with the old and the new lot in one sitting.";
      case READ_A_CALIBRATOR_AGAIN -> "read a calibrator as a sample, before recalibrating.";
      case CALIBRATE_AGAIN_AND_READ_THE_CONTROL ->
          "read the control, calibrate again, and read it once more.";
      case READ_THE_CONTROL_WITH_FRESH_REAGENT -> "read the control with reagent opened today.";
      case READ_A_FRESH_PORTION_OF_THE_MATERIAL ->
          "read a fresh portion of the material, or another material.";
      case LET_ANOTHER_PERSON_RUN_THE_SAME_SAMPLE ->
          "let two people run one sample in one sitting.";
      case READ_A_CONTROL_IN_ANOTHER_SESSION -> "read the control in another sitting.";
      case READ_ONE_NEW_CONTROL -> "read one new control; both results stay.";
    };
  }

  private static String nextTime(NextTime next) {
    return switch (next) {
      case RUN_TWO_MATERIALS_AT_DIFFERENT_LEVELS -> "run two control materials at different levels";
      case OPEN_REAGENT_BETWEEN_CALIBRATIONS -> "open reagent in the middle of a calibration";
      case LET_ANOTHER_PERSON_RUN_CONTROLS -> "let another person run controls, too";
      case RUN_MORE_THAN_ONE_CONTROL_A_SESSION -> "run more than one control in a sitting";
      case RUN_OLD_AND_NEW_LOT_SIDE_BY_SIDE -> "run both lots in one sitting";
      case TAKE_MORE_CONTROL_RESULTS -> "take more control results";
    };
  }

  /** What the look-back covers. */
  String lookBack(LookBack back) {
    String since =
        switch (back.since()) {
          case LAST_GOOD_CONTROL ->
              "since the last good control"
                  + back.lastGood().map(g -> " of " + Dates.full(g.at())).orElse("");
          case CALIBRATION ->
              "since the calibration"
                  + back.from().map(f -> " of " + Dates.full(f)).orElse("")
                  + ", for no control before was good";
          case START -> "from the start, for no control before was good";
        };
    String ended = back.endedBy().map(c -> ", up to calibration " + c).orElse(", up to now");
    String likely =
        back.assumed()
            .value()
            .map(a -> " Likely error " + estimate(a.estimate()) + ".")
            .orElse(" Likely error: cannot say, " + back.assumed().why().orElse("") + ".");
    return "In doubt "
        + since
        + ended
        + ": "
        + Numbers.count(back.batches(), "sample", "samples")
        + ", a limit inside for "
        + back.batchesAtLimit()
        + "."
        + likely;
  }
}
