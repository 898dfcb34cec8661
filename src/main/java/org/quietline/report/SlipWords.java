package org.quietline.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.quietline.assess.Slip;
import org.quietline.assess.Slip.Candidate;
import org.quietline.assess.Slip.Evidence;
import org.quietline.bench.Method;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.report.Block.Step;

/** Numbers that look like a slip, as words: a question each, never a correction. */
final class SlipWords {
  private static final int MOST_IDS = 8;

  private SlipWords() {}

  /** The open questions of a period as one sentence. */
  static String open(List<Slip> open, Method method) {
    Slip first = open.get(0);
    String count =
        open.size() == 1
            ? "1 number of the period looks like a slip of the pen: "
            : open.size() + " numbers of the period look like slips of the pen, the first being ";
    return count
        + first.result().sample()
        + " of "
        + Dates.full(first.result().takenAt())
        + ", written "
        + written(first.result())
        + ", may be "
        + candidate(first.candidates().get(0), first, method)
        + "; a question, not a correction.";
  }

  /** One question as a sentence. */
  static String question(Slip slip, Method method) {
    String candidates =
        slip.candidates().stream()
            .map(c -> candidate(c, slip, method))
            .collect(Collectors.joining(", or "));
    return "It may be " + candidates + ": " + evidence(slip.evidence(), method) + ".";
  }

  /** What to do about open questions. */
  static Step step(List<Slip> open, String by) {
    String ids =
        open.stream().limit(MOST_IDS).map(s -> s.id().toString()).collect(Collectors.joining("\n"));
    int more = open.size() - MOST_IDS;
    return new Step(
        open.size() == 1
            ? "Compare the number with the pad or the instrument, and answer in actions.csv."
            : "Compare each number with the pad or the instrument, and answer in actions.csv.",
        ids + (more > 0 ? " and " + more + " more in findings.json" : ""),
        by,
        false);
  }

  /** The readings as they were written, with their unit. */
  static String written(Result result) {
    return result.writtenReadings().stream()
            .filter(r -> !(r instanceof Reading.Missing))
            .map(r -> r.toString().replace('-', '−'))
            .collect(Collectors.joining(" and "))
        + " "
        + result.writtenUnit();
  }

  /** What a number may be. */
  static String candidate(Candidate candidate, Slip slip, Method method) {
    String partner = slip.partner().map(Result::sample).orElse("another sample");
    String reading =
        candidate.reading().isPresent() ? "reading " + candidate.reading().getAsInt() + ": " : "";
    String what =
        switch (candidate.what()) {
          case POWER_OF_TEN -> reading + places(candidate.factor());
          case ACID_NUMBER_FOR_FATTY_ACID -> reading + "an acid number in place of a fatty acid";
          case FATTY_ACID_FOR_ACID_NUMBER -> reading + "a fatty acid in place of an acid number";
          case DOUBLE_VOLUME -> reading + "with twice the volume";
          case HALF_VOLUME -> reading + "with half the volume";
          case READINGS_EXCHANGED ->
              reading
                  + "exchanged with reading "
                  + candidate.partnerReading().orElse(1)
                  + " of "
                  + partner;
          case SAMPLES_EXCHANGED -> "exchanged with " + partner;
          case COPIED -> "copied from " + partner + ", the row before";
        };
    return candidate.value().isPresent()
        ? what + " (" + new Numbers(method.decimals()).result(candidate.value().getAsDouble()) + ")"
        : what;
  }

  private static String places(double factor) {
    long times = Math.round(factor > 1 ? factor : 1 / factor);
    String written = String.format(Locale.ROOT, "%,d", times).replace(',', ' ');
    return written + (factor > 1 ? " times too large" : " times too small");
  }

  /** Why a question is asked. */
  static String evidence(Evidence evidence, Method method) {
    if (evidence instanceof Slip.Distance distance) {
      return source(distance)
          + ": about "
          + new Numbers(method.decimals()).result(distance.expected())
          + "; "
          + deviations(distance.apart())
          + " deviations away, limit "
          + deviations(distance.limit());
    }
    double chance = ((Slip.Coincidence) evidence).chance();
    return "chance of such a repetition " + Numbers.percent(chance);
  }

  private static String deviations(double number) {
    return Numbers.fixed(number, number < 20 ? 1 : 0);
  }

  private static String source(Slip.Distance distance) {
    return switch (distance.source()) {
      case OTHER_READING -> "the other reading";
      case SAME_SAMPLE -> "the same sample tested again";
      case RELATED_METHOD ->
          distance.other().map(Result::method).orElse("the related method") + " of the sample";
      case MATERIAL -> "other results of the control";
      case SAME_KIND -> "samples of its kind";
      case SAME_ROLE -> "samples of rare kinds";
    };
  }

  /** Whether somebody answered: "open", "answered" or "taken out". */
  static String status(Slip slip) {
    if (slip.open()) {
      return "open";
    }
    return slip.closing().isPresent() ? "answered" : "taken out";
  }
}
