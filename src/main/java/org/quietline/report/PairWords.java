package org.quietline.report;

import java.util.List;
import java.util.stream.Collectors;
import org.quietline.assess.PairsOfPeriod;
import org.quietline.assess.ReportedValue.Path;
import org.quietline.bench.Result;

/** The pairs of a period and what became of them, in words. */
final class PairWords {
  private static final int MOST_NAMES = 3;

  private PairWords() {}

  /** How many disagree, what chance lets, which paths results took, who got no further reading. */
  static String period(PairsOfPeriod pairs) {
    if (pairs.standing().value().isEmpty()) {
      return "In the period: " + pairs.standing().why().orElse("") + ".";
    }
    String standing =
        switch (pairs.standing().value().get()) {
          case AS_EXPECTED -> "";
          case ADVISORY -> ", more than chance lets in nine months of ten";
          case ACTION -> ", more than chance explains";
        };
    return "In the period "
        + pairs.beyond().size()
        + " of "
        + pairs.judged()
        + " beyond the limit of their time, chance expects "
        + Numbers.fixed(pairs.expected(), 1)
        + standing
        + names(pairs.beyond())
        + "."
        + paths(pairs)
        + (pairs.withoutReading().isEmpty()
            ? ""
            : " A further reading was called for and not taken"
                + names(pairs.withoutReading())
                + ".");
  }

  private static String names(List<Result> results) {
    if (results.isEmpty()) {
      return "";
    }
    int more = results.size() - MOST_NAMES;
    return results.stream()
        .limit(MOST_NAMES)
        .map(r -> r.sample() + " on " + Dates.brief(r.takenAt().toLocalDate()))
        .collect(Collectors.joining(", ", ": ", more > 0 ? " and " + more + " more" : ""));
  }

  /** Only what is out of the ordinary: two readings that agree need no word. */
  private static String paths(PairsOfPeriod pairs) {
    String words =
        pairs.paths().entrySet().stream()
            .filter(e -> e.getKey() != Path.TWO_AGREE && e.getKey() != Path.TWO_DISAGREE)
            .map(e -> e.getValue() + " " + path(e.getKey()))
            .collect(Collectors.joining(", "));
    return words.isEmpty() ? "" : " Reported otherwise: " + words + ".";
  }

  private static String path(Path path) {
    return switch (path) {
      case TWO_AGREE -> "mean of two";
      case TWO_DISAGREE -> "mean of two that disagree";
      case THREE_AGREE -> "mean of three";
      case THREE_MEDIAN -> "median of three";
      case FOUR_AGREE -> "mean of four";
      case FOUR_MEDIAN -> "median of four";
      case MANY_AGREE -> "mean of all";
      case MANY_MEDIAN -> "median of all";
      case MORE_THAN_ASKED -> "mean of two, more were read though they agree";
      case SINGLE -> "single reading";
      case NO_LIMIT -> "without a limit yet";
      case CENSORED -> "only a bound";
      case NONE -> "no number";
    };
  }
}
