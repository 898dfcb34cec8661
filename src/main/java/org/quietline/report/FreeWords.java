package org.quietline.report;

import static java.util.stream.Collectors.joining;

import java.util.List;
import org.quietline.assess.Concern;
import org.quietline.assess.FreeStreams;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.NoticeRate;
import org.quietline.assess.NoticeRate.Question;
import org.quietline.assess.PairFindings.OrderEffect;
import org.quietline.assess.RetestFindings.Move;
import org.quietline.assess.SampleEvenness.Comparison;
import org.quietline.assess.Signal;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.Method;

/** What costs no control test, in words. */
final class FreeWords {
  private final FreeStreams free;
  private final Method method;
  private final Numbers numbers;

  FreeWords(MethodFindings findings) {
    this.free = findings.free();
    this.method = findings.method();
    this.numbers = new Numbers(method.decimals());
  }

  /** Open signals of calibrations, blanks and related methods. */
  static String open(Concern.OpenFreeSignals concern, Method method) {
    List<Signal> open = concern.open();
    Signal latest = open.get(open.size() - 1);
    String one = concern.weight() == Weight.STOP ? "stop signal" : "notice";
    return Numbers.count(open.size(), one, one + "s")
        + (open.size() == 1 ? " is" : " are")
        + " open for what costs no control test on "
        + open.stream().map(s -> s.id().instrument()).distinct().sorted().collect(joining(", "))
        + ", "
        + (open.size() == 1 ? "" : "the latest ")
        + "of "
        + Dates.full(RuleWords.day(latest))
        + ": "
        + RuleWords.seen(latest, method)
        + "; no cause is recorded.";
  }

  /** A question put once a review that came out beyond chance. */
  String notice(NoticeRate notice) {
    return switch (notice.question()) {
      case RETESTS_MOVED ->
          "Samples measured again in another session have moved on "
              + notice.where()
              + free.retests().stream()
                  .filter(r -> r.instrument().equals(notice.where()))
                  .flatMap(r -> r.all().value().stream())
                  .findFirst()
                  .map(move -> ": " + move(move))
                  .orElse("")
              + ".";
      case ORDER_OF_READINGS ->
          "First and second readings differ on "
              + notice.where()
              + free.pairs().stream()
                  .filter(p -> p.instrument().equals(notice.where()))
                  .flatMap(p -> p.order().value().stream())
                  .findFirst()
                  .map(order -> ": " + order(order))
                  .orElse("")
              + ", as by settling, carry-over or timing.";
      case SAMPLES_UNEVEN ->
          "Readings of real samples lie further apart than those of the control ("
              + notice.where()
              + ")"
              + free.evenness().stream()
                  .filter(e -> e.rate().equals(notice))
                  .flatMap(e -> e.comparison().value().stream())
                  .findFirst()
                  .map(c -> ": " + evenness(c))
                  .orElse("")
              + "; samples may be uneven or settle.";
      default -> "More than chance explains: " + notice.where() + ".";
    };
  }

  /** What to do about such a question. */
  static String step(NoticeRate notice) {
    return switch (notice.question()) {
      case RETESTS_MOVED ->
          "Keep a retained sample cold and closed, and test it and a fresh one in one session.";
      case ORDER_OF_READINGS -> "Read a few vials in turned order, and rinse or wait in between.";
      case SAMPLES_UNEVEN -> "Mix samples longer before each portion, and test one sample again.";
      default -> "Look at " + notice.where() + ".";
    };
  }

  String move(Move move) {
    return "mean change "
        + numbers.signed(move.mean())
        + " (95 %: "
        + numbers.signed(move.interval().lower())
        + " to "
        + numbers.signed(move.interval().upper())
        + "), n = "
        + move.samples();
  }

  String order(OrderEffect order) {
    return "first less second "
        + numbers.signed(order.mean())
        + " (95 %: "
        + numbers.signed(order.interval().lower())
        + " to "
        + numbers.signed(order.interval().upper())
        + "), n = "
        + order.pairs();
  }

  static String evenness(Comparison c) {
    return Numbers.figures(c.ratio(), 2)
        + " times the control's deviation (95 %: "
        + Numbers.figures(c.interval().lower(), 2)
        + " to "
        + Numbers.figures(c.interval().upper(), 2)
        + "), "
        + c.productPairs()
        + " and "
        + Numbers.count(c.controlPairs(), "pair", "pairs");
  }

  /** The question in a few words. */
  static String question(Question question) {
    return switch (question) {
      case CALIBRATION_STEP -> "step at the limit";
      case BLANK_DRIFTING -> "blank";
      case METHODS_DISAGREE -> "related method";
      case RETESTS_MOVED -> "measured again";
      case PAIR_BEYOND -> "pairs of samples";
      case ORDER_OF_READINGS -> "order of readings";
      case SAMPLES_UNEVEN -> "samples against the control";
    };
  }
}
