package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.Findings;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Action;

/** What became of the rows, in words. */
final class IntakeWords {
  private static final String ASIDE = "set aside.";

  private IntakeWords() {}

  /** "412 rows: 404 taken in, 4 met before, 3 set aside, 1 in conflict", the last where any is. */
  static String counts(Accounting accounting) {
    return Numbers.count(accounting.rows(), "row", "rows")
        + ": "
        + accounting.takenIn()
        + " taken in, "
        + accounting.metBefore()
        + " met before, "
        + accounting.rowsAside()
        + " set aside"
        + (accounting.rowsInConflict() == 0
            ? ""
            : ", " + accounting.rowsInConflict() + " in conflict");
  }

  /** One row set aside as one sentence, or two. */
  static String sentence(SetAside aside) {
    String text = aside.toString().strip();
    if (text.endsWith(ASIDE)) {
      return text;
    }
    boolean ended = text.endsWith(".") || text.endsWith("?") || text.endsWith("!");
    if (aside.rows() == 0) {
      return text + (ended ? "" : ".");
    }
    String rows =
        aside.rows() == 1
            ? " The row was set aside."
            : " " + Numbers.count(aside.rows(), "row was", "rows were") + " set aside.";
    return text + (ended ? "" : ".") + rows;
  }

  /** Sentences for the rows set aside; neighbours that say the same are one sentence. */
  static List<String> sentences(List<SetAside> all) {
    List<String> sentences = new ArrayList<>();
    int i = 0;
    while (i < all.size()) {
      int end = i + 1;
      while (end < all.size() && isSame(all.get(i), all.get(end))) {
        end++;
      }
      sentences.add(
          end - i == 1 ? sentence(all.get(i)) : sentence(all.get(i), all.subList(i, end)));
      i = end;
    }
    return sentences;
  }

  private static boolean isSame(SetAside a, SetAside b) {
    return a.file().equals(b.file())
        && a.field().equals(b.field())
        && a.reason().equals(b.reason());
  }

  private static String sentence(SetAside first, List<SetAside> same) {
    long rows = same.stream().mapToLong(SetAside::rows).sum();
    String reason = first.reason().strip();
    String said =
        reason.endsWith("The row was set aside.")
            ? reason.substring(0, reason.length() - "The row was set aside.".length()).strip()
            : reason;
    return first.file()
        + ", lines "
        + first.line()
        + " to "
        + same.get(same.size() - 1).line()
        + ", "
        + first.field()
        + ": "
        + said
        + " "
        + Numbers.count(rows, "row was", "rows were")
        + " set aside.";
  }

  /** What must be known before anything else on the page is believed. */
  static List<String> alarms(Findings findings) {
    List<String> alarms = new ArrayList<>();
    List<String> unread = findings.accounting().unreadFiles();
    if (!unread.isEmpty()) {
      alarms.add(
          "Not one row of "
              + String.join(", ", unread)
              + " could be used; what is said here is said without "
              + (unread.size() == 1 ? "it." : "them."));
    }
    List<String> changed = findings.accounting().changedFiles();
    if (!changed.isEmpty()) {
      alarms.add(
          String.join(", ", changed)
              + " changed while "
              + (changed.size() == 1 ? "it was" : "they were")
              + " read; run again.");
    }
    int settings = findings.accounting().settingsAside().size();
    if (settings > 0) {
      alarms.add(
          Numbers.count(settings, "setting", "settings")
              + " of bench.toml could not be used; what hangs on "
              + (settings == 1 ? "it" : "them")
              + " is missing here.");
    }
    if (!findings.idleActions().isEmpty()) {
      alarms.add(
          Numbers.count(findings.idleActions().size(), "row", "rows")
              + " of actions.csv "
              + (findings.idleActions().size() == 1 ? "closes" : "close")
              + " nothing, see the last pages.");
    }
    ConflictWords.alarm(findings).ifPresent(alarms::add);
    ContradictionWords.alarm(findings).ifPresent(alarms::add);
    return alarms;
  }

  /** Why an action closes nothing. */
  static String idle(Action action, Findings findings) {
    return action.origin()
        + ": "
        + (action.cause().isEmpty()
            ? "no cause is given, so it closes nothing. Write the cause, or that none was found."
            : ConflictWords.idle(action, findings));
  }
}
