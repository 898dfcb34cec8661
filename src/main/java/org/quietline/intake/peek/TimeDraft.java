package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Drafts how the times are read. */
final class TimeDraft {
  private final Draft draft;
  private final List<String> said;

  TimeDraft(Draft draft, List<String> said) {
    this.draft = draft;
    this.said = said;
  }

  void write(List<TimeShape> shapes) {
    if (!said.isEmpty()) {
      draft.line("time-format", oneOrList(said));
      draft.found("times", Shown.and(said), "you said so");
      return;
    }
    if (shapes.isEmpty()) {
      draft.found("times", "none found", "no column holds days in most of its rows");
      return;
    }
    TimeFormats formats = new TimeFormats(shapes);
    List<TimeFormats.Meaning> meanings = formats.meanings();
    if (shapes.stream().noneMatch(TimeShape::hasTime)) {
      draft.found(
          "times",
          "days without a time of day",
          "a result needs both; add a column with the time, or write it behind the day");
    } else if (formats.isPlain()) {
      draft.found("times", "ISO 8601", "year, month, day in all " + shapes.size() + " rows");
    } else if (meanings.size() == 1) {
      decided(formats, meanings.get(0), shapes.size());
    } else {
      ask(formats, meanings);
    }
    if (formats.hasShortYears()) {
      draft.found("years", "two digits", "26 is read as 2026");
    }
  }

  private void decided(TimeFormats formats, TimeFormats.Meaning meaning, int rows) {
    draft.line("time-format", oneOrList(meaning.formats()));
    List<String> witnesses = formats.witnesses(meaning);
    draft.found(
        "times",
        Shown.and(meaning.formats()),
        witnesses.isEmpty()
            ? "so written in " + Shown.counted(rows, "row")
            : String.join(", ", witnesses));
  }

  private void ask(TimeFormats formats, List<TimeFormats.Meaning> meanings) {
    List<String> lines = new ArrayList<>();
    List<String> forward = new ArrayList<>();
    Set<Integer> steps = new HashSet<>();
    long twoWays = 0;
    for (TimeFormats.Meaning meaning : meanings) {
      String value = oneOrList(meaning.formats());
      lines.add("time-format = " + value);
      twoWays = Math.max(twoWays, formats.twoWays(meaning));
      formats
          .stepsBack(meaning)
          .ifPresent(
              n -> {
                steps.add(n);
                forward.add(
                    value
                        + (n == 0
                            ? " the days run forward"
                            : " they step back " + Shown.counted(n, "time")));
              });
    }
    draft.ask(
        "In what order do day and month stand? "
            + (twoWays > 0
                ? "Both orders were used, and "
                    + Shown.counted(twoWays, "row")
                    + (twoWays == 1 ? " has" : " have")
                    + " two meanings; with both formats "
                    + (twoWays == 1 ? "it is" : "they are")
                    + " set aside."
                : (formats.hasShortYears() && lines.stream().anyMatch(l -> l.matches(".*\"yy\\W.*"))
                        ? "The year has two digits, and no number tells it from the day."
                        : "No day above 12 tells.")
                    + (steps.size() < 2 ? "" : " With " + String.join(", with ", forward) + ".")),
        lines);
    draft.found("times", "open", "more than one order of day and month can be meant");
  }

  private static String oneOrList(List<String> formats) {
    return Toml.oneOrList(formats.stream().map(Toml::text).toList());
  }
}
