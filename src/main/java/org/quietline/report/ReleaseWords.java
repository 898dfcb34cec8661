package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.quietline.assess.Answer;
import org.quietline.assess.Release;
import org.quietline.assess.Release.Decision;
import org.quietline.assess.Release.Held;
import org.quietline.assess.Release.Judged;
import org.quietline.assess.Release.Way;
import org.quietline.assess.Release.WayOut;
import org.quietline.assess.ReleaseFindings;
import org.quietline.assess.Uncertainty;

/** A release decision by one method in words. */
final class ReleaseWords {
  private final Release release;
  private final Numbers numbers;
  private final String unit;

  ReleaseWords(Release release) {
    this.release = release;
    this.numbers = new Numbers(release.method().decimals());
    this.unit = " " + release.method().unit();
  }

  /** A decision as printed. */
  static String decided(Answer<Decision> decision) {
    return decision
        .value()
        .map(
            d ->
                switch (d) {
                  case WITHIN -> "within";
                  case BEYOND -> "beyond";
                  case TOO_CLOSE_TO_CALL -> "too close to call";
                })
        .orElse("cannot say");
  }

  /** The decision by one method as printed: one that is only held is not close to its limit. */
  static String decided(Release release) {
    boolean clear =
        release.judged().value().filter(j -> j.byValue() == Decision.WITHIN).isPresent();
    return clear && !release.held().isEmpty() ? "held" : decided(release.decision());
  }

  /** The decision on a batch as printed. */
  static String decided(ReleaseFindings.Batch batch) {
    boolean close = batch.releases().stream().anyMatch(r -> decided(r).equals("too close to call"));
    boolean held = batch.decision().value().equals(Optional.of(Decision.TOO_CLOSE_TO_CALL));
    return held && !close ? "held" : decided(batch.decision());
  }

  /** A chance; one that is all but certain is not printed as certain. */
  static String chance(double chance) {
    return chance > 0.999
        ? "over 99.9 %"
        : chance < 0.001 ? "under 0.1 %" : Numbers.percent(chance);
  }

  /** The decision by this method in a sentence or two. */
  String sentence() {
    if (release.judged().value().isEmpty()) {
      return "By " + method() + " it cannot be said: " + release.judged().why().orElseThrow() + ".";
    }
    Judged judged = release.judged().value().get();
    String value =
        "By "
            + method()
            + " it holds "
            + numbers.fine(release.value().orElseThrow())
            + unit
            + " against "
            + limits(judged)
            + ", and conforms with a chance of "
            + chance(judged.chance());
    return value
        + switch (judged.byValue()) {
          case WITHIN -> release.held().isEmpty() ? "." : ", but " + held() + ".";
          case BEYOND -> ": beyond the limit.";
          case TOO_CLOSE_TO_CALL ->
              ": too close to call, the rule asks for "
                  + Numbers.percent(release.confidence())
                  + (release.held().isEmpty() ? "." : "; and " + held() + ".");
        };
  }

  private String method() {
    return release.method().key();
  }

  private String limits(Judged judged) {
    List<String> limits = new ArrayList<>();
    judged.lowerLimit().ifPresent(l -> limits.add("at least " + numbers.result(l)));
    judged.upperLimit().ifPresent(l -> limits.add("at most " + numbers.result(l)));
    return String.join(" and ", limits);
  }

  /** What holds the batch, in one clause. */
  String held() {
    return release.held().stream()
        .map(Held::kind)
        .distinct()
        .map(
            kind -> {
              String what =
                  release.held().stream()
                      .filter(h -> h.kind() == kind)
                      .map(Held::what)
                      .distinct()
                      .collect(Collectors.joining(", "));
              return switch (kind) {
                case STOP_SIGNAL -> "an open stop signal puts it in doubt (" + what + ")";
                case CALIBRATION_PAST_DATE -> "calibration " + what + " was past its date";
                case REAGENT_PAST_DATE -> "reagent lot " + what + " was past its date";
                case CALIBRATION_UNSAFE -> "calibration " + what + " was past its last safe day";
                case READINGS_DISAGREE ->
                    "its readings disagree and the further reading was not taken";
              };
            })
        .collect(Collectors.joining("; "));
  }

  /** What holds the batch, for a table. */
  String heldShort() {
    return release.held().isEmpty()
        ? ""
        : "Held: "
            + release.held().stream()
                .map(Held::kind)
                .distinct()
                .map(ReleaseWords::kind)
                .collect(Collectors.joining(", "))
            + ".";
  }

  /** Why a batch is held, in a few words. */
  static String kind(Release.HeldBy kind) {
    return switch (kind) {
      case STOP_SIGNAL -> "open stop signal";
      case CALIBRATION_PAST_DATE -> "calibration past its date";
      case REAGENT_PAST_DATE -> "reagent past its date";
      case CALIBRATION_UNSAFE -> "calibration past its last safe day";
      case READINGS_DISAGREE -> "readings that disagree";
    };
  }

  /** The acceptance limits. */
  String acceptance(Judged judged) {
    List<String> limits = new ArrayList<>();
    judged
        .lowerLimit()
        .ifPresent(l -> limits.add("at least " + numbers.fine(l + judged.guardBand())));
    judged
        .upperLimit()
        .ifPresent(l -> limits.add("at most " + numbers.fine(l - judged.guardBand())));
    return String.join(", ", limits);
  }

  /** The limits as set. */
  String limit() {
    return release
        .method()
        .limits()
        .map(
            l -> {
              List<String> limits = new ArrayList<>();
              l.lower().ifPresent(v -> limits.add("at least " + Numbers.written(v)));
              l.upper().ifPresent(v -> limits.add("at most " + Numbers.written(v)));
              return String.join(", ", limits) + l.source().map(s -> " (" + s + ")").orElse("");
            })
        .orElse("none");
  }

  /** What a way out is. */
  static String way(Way way) {
    return switch (way) {
      case READING -> "one more reading of the same vial or portion";
      case SESSION -> "a fresh test in another session, same calibration";
      case CALIBRATION -> "a fresh test after a recalibration";
      case OUTSIDE -> "an outside laboratory, which then decides alone";
    };
  }

  /** The cheapest way out in a sentence. */
  String wayOut() {
    if (release.judged().value().isEmpty() || release.judged().value().get().worth().isEmpty()) {
      return "";
    }
    Judged judged = release.judged().value().get();
    Way worth = judged.worth().get();
    WayOut best = judged.ways().stream().filter(w -> w.way() == worth).findFirst().orElseThrow();
    return best.settled() >= 0.5
        ? "The cheapest way out is "
            + way(worth)
            + ": it settles the question with a chance of "
            + chance(best.settled())
            + "."
        : "No way out has an even chance to settle it; the best is "
            + way(worth)
            + ", with "
            + chance(best.settled())
            + ". Else hold the batch, or treat it as beyond.";
  }

  /** What costs say, as advice. */
  String costs() {
    if (release.judged().value().isEmpty()
        || release.judged().value().get().breakEven().isEmpty()) {
      return "";
    }
    Judged judged = release.judged().value().get();
    double even = judged.breakEven().getAsDouble();
    return "Costs alone: by those set, releasing costs less than holding back from a chance of "
        + chance(even)
        + " on; here it is "
        + chance(judged.chance())
        + ". That is advice beside the rule, not the rule.";
  }

  /** What the results are called. */
  String named() {
    return release
        .method()
        .listedMethod()
        .map(l -> "run as " + l)
        .orElse("in-house production-control result");
  }

  /** The parts of an uncertainty in one text, largest first. */
  static String parts(Uncertainty.Budget budget) {
    return budget.parts().stream()
        .filter(p -> p.uncertainty() > 0)
        .sorted((a, b) -> Double.compare(b.uncertainty(), a.uncertainty()))
        .map(p -> part(p.kind()) + " " + Numbers.uncertainty(p.uncertainty()))
        .collect(Collectors.joining(", "));
  }

  /** What a part is. */
  static String part(Uncertainty.Kind kind) {
    return switch (kind) {
      case CALIBRATIONS -> "between calibrations";
      case RESULTS -> "between results of one calibration";
      case READINGS -> "readings of the control";
      case PRODUCT_READINGS -> "what product readings scatter more";
      case BIAS -> "bias seen, not corrected for";
      case BIAS_ERROR -> "error of the control's mean";
      case REFERENCE -> "the assigned value";
      case OUTSIDE -> "differences from outside laboratories";
      case OUTSIDE_STATED -> "uncertainty of those laboratories";
      case ALLOWANCE -> "allowable bias / √3, nothing better being known";
    };
  }
}
