package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.StillNeeded;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.report.Block.Step;

/**
 * A review as plain lines for a terminal: what came in, then one entry a method with its verdict,
 * the reason and what to do next. Lines are at most {@value #WIDTH} characters wide and wrap with
 * an indentation; only the sentences about rows set aside are never broken, so that they can be
 * searched for and copied.
 */
public final class ScreenLines {
  /** The most characters of a wrapped line. */
  public static final int WIDTH = 100;

  private static final int MOST_ASIDE = 10;

  private final List<String> lines = new ArrayList<>();

  private ScreenLines() {}

  /**
   * Words a review for the screen.
   *
   * @param findings what the review found
   * @return the lines, without line ends
   */
  public static List<String> of(Findings findings) {
    ScreenLines screen = new ScreenLines();
    screen.wrap(
        "",
        findings.bench()
            + ", "
            + Dates.period(findings.period())
            + ", as of "
            + Dates.full(findings.now()));
    IntakeWords.alarms(findings).forEach(words -> screen.wrap("", words));
    screen.intake(findings.accounting());
    screen.tell(ConflictWords.sentences(findings));
    screen.tell(
        findings.across().openOfBench().stream().map(ContradictionWords::sentence).toList());
    screen.tell(findings.idleActions().stream().map(a -> IntakeWords.idle(a, findings)).toList());
    screen.methods(findings);
    return List.copyOf(screen.lines);
  }

  /**
   * Words what came in, for a bench that cannot be reviewed yet.
   *
   * @param accounting what became of every row
   * @return the lines, without line ends
   */
  public static List<String> of(Accounting accounting) {
    ScreenLines screen = new ScreenLines();
    screen.intake(accounting);
    return List.copyOf(screen.lines);
  }

  /**
   * Words what a bench without results needs next.
   *
   * @param bench the bench's name
   * @param needed what each method needs, at least one
   * @param accounting what became of every row
   * @return the lines, without line ends
   */
  public static List<String> of(String bench, List<StillNeeded> needed, Accounting accounting) {
    ScreenLines screen = new ScreenLines();
    screen.wrap("", bench + ": no result is in yet, so nothing can be judged.");
    screen.intake(accounting);
    int width =
        Math.min(28, needed.stream().mapToInt(n -> n.method().key().length()).max().orElse(1));
    for (StillNeeded method : needed) {
      screen.wrap(
          String.format(Locale.ROOT, "%-" + width + "s  ", method.method().key()),
          FirstSteps.of(method));
    }
    screen.wrap("", FirstSteps.howMany(needed.get(0)));
    return List.copyOf(screen.lines);
  }

  private void intake(Accounting accounting) {
    wrap("", IntakeWords.counts(accounting));
    if (!accounting.settingsAside().isEmpty()) {
      wrap(
          "",
          Numbers.count(accounting.settingsAside().size(), "setting", "settings")
              + " could not be used");
      tell(accounting.settingsAside().stream().map(SetAside::toString).toList());
    }
    tell(IntakeWords.sentences(accounting.aside()));
  }

  private void tell(List<String> sentences) {
    lines.addAll(sentences.subList(0, Math.min(MOST_ASIDE, sentences.size())));
    if (sentences.size() > MOST_ASIDE) {
      lines.add(
          "and " + (sentences.size() - MOST_ASIDE) + " more such sentences on the last pages");
    }
  }

  private void methods(Findings findings) {
    int width =
        Math.min(
            28,
            findings.methods().stream().mapToInt(m -> m.method().key().length()).max().orElse(0));
    for (MethodFindings method : findings.methods()) {
      List<String> reasons = Reasons.of(method, findings);
      String more = reasons.size() == 1 ? "" : " (and " + (reasons.size() - 1) + " more)";
      Step step = Steps.of(method).get(0);
      String head =
          String.format(
              Locale.ROOT,
              "%-6s  %-" + Math.max(1, width) + "s  ",
              method.verdict().level().key(),
              method.method().key());
      wrap(head, reasons.get(0) + more + " Next: " + step.what() + " (" + step.by() + ")");
    }
  }

  private void wrap(String head, String text) {
    lines.addAll(wrapped(head, text));
  }

  /** A text in lines of at most {@value #WIDTH} characters, the first after its head. */
  static List<String> wrapped(String head, String text) {
    List<String> lines = new ArrayList<>();
    String indent = " ".repeat(Math.min(head.length(), WIDTH / 2));
    StringBuilder line = new StringBuilder(head);
    boolean empty = true;
    for (String word : text.strip().split("\\s+", -1)) {
      if (!empty && line.length() + 1 + word.length() > WIDTH) {
        lines.add(line.toString());
        line = new StringBuilder(indent.isEmpty() ? "  " : indent);
        empty = true;
      }
      line.append(empty ? "" : " ").append(word);
      empty = false;
    }
    lines.add(line.toString());
    return lines;
  }
}
