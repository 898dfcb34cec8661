package org.quietline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.intake.peek.Evidence;
import org.quietline.intake.peek.Peek;
import org.quietline.intake.peek.Question;
import org.quietline.intake.peek.RowView;

/**
 * Words what was seen in a file as lines of the screen, at most 100 signs wide where they break.
 */
final class PeekLines {
  private static final int WIDTH = 100;
  private static final int MOST_ASIDE = 10;

  private final List<String> lines = new ArrayList<>();
  private final Peek peek;

  private PeekLines(Peek peek) {
    this.peek = peek;
  }

  static List<String> of(Peek peek) {
    PeekLines lines = new PeekLines(peek);
    lines.head();
    lines.evidence();
    lines.rows();
    lines.aside();
    lines.proposal();
    lines.questions();
    return lines.lines;
  }

  private void head() {
    add("", peek.name());
    add(
        "  ",
        peek.bench()
            .map(
                folder ->
                    "Held against the bench in "
                        + folder
                        + ": its methods, instruments, materials and sheets.")
            .orElse(
                "No bench.toml is given or lies above the file, so every method, instrument and"
                    + " material it names is taken as known. Give the bench folder with --bench."));
    peek.sheet().ifPresent(place -> add("  ", "It is read as " + place + ", describes it."));
    if (peek.ofBench()) {
      add(
          "  ",
          "It is one of the sheets beside bench.toml and is read by the names of its columns.");
    }
    if (peek.plain()) {
      add("  ", "This is a plain sheet and needs no [[sheet]].");
    }
  }

  private void evidence() {
    title("What the file says");
    for (Evidence e : peek.evidence()) {
      String why = e.why().isEmpty() ? "" : " (" + e.why() + ")";
      hang("  ", 20, e.about(), e.found() + why);
    }
  }

  private void rows() {
    if (peek.ofBench()) {
      return;
    }
    title(peek.rows().isEmpty() ? "No row would be taken in" : "The first rows, as they are read");
    for (RowView row : peek.rows()) {
      add("  ", "line " + row.line());
      for (RowView.Part part : row.fields()) {
        hang("    ", 14, part.field(), part.value() + from(part));
      }
    }
    if (peek.rows().isEmpty() && !peek.questions().isEmpty()) {
      add("  ", "Answer the questions below to see how the rows would be read.");
    }
  }

  private static String from(RowView.Part part) {
    if (part.from().isEmpty()) {
      return part.value().equals("none") ? "" : "   (not in the file)";
    }
    boolean same = part.from().size() == 1 && part.from().get(0).equals(part.value());
    return same
        ? ""
        : part.from().stream()
            .map(t -> '"' + t + '"')
            .collect(Collectors.joining(" + ", "   from ", ""));
  }

  private void aside() {
    Accounting accounting = peek.trial().accounting();
    List<SetAside> rows = accounting.aside();
    title("What became of the rows");
    add(
        "  ",
        counted(accounting.rows(), "row")
            + (peek.wholeFile() ? "" : " in the first 4 MB")
            + ": "
            + accounting.takenIn()
            + " taken in, "
            + accounting.metBefore()
            + " met before, "
            + accounting.rowsAside()
            + " set aside, "
            + accounting.rowsInConflict()
            + " in conflict.");
    peek.trial()
        .sheetAside()
        .forEach(a -> add("  ", "In the [[sheet]], " + a.field() + ": " + a.reason()));
    rows.stream().limit(MOST_ASIDE).forEach(a -> add("  ", a.toString()));
    if (rows.size() > MOST_ASIDE) {
      add("  ", "and " + (rows.size() - MOST_ASIDE) + " more.");
    }
    accounting.conflicts().stream().limit(MOST_ASIDE).forEach(c -> add("  ", c.toString()));
  }

  private void proposal() {
    if (!proposes()) {
      return;
    }
    title("Proposed for bench.toml");
    lines.addAll(peek.proposal().lines().toList());
    lines.add("");
    add(
        "",
        "It matches this one file."
            + peek.kind()
                .map(k -> " For all files of its kind write match = \"" + k + "\".")
                .orElse(""));
  }

  private void questions() {
    if (!proposes() || peek.questions().isEmpty()) {
      return;
    }
    title("Questions");
    for (Question question : peek.questions()) {
      hang("  ", 4, question.number() + ".", question.text());
      for (int i = 0; i < question.lines().size(); i++) {
        lines.add("      " + question.answer(i) + "  " + question.lines().get(i));
      }
    }
    add(
        "",
        "To see what an answer does, add --answer with its name. To keep it, take the # off its line.");
  }

  private boolean proposes() {
    return !peek.plain() && !peek.ofBench() && peek.sheet().isEmpty();
  }

  private void title(String text) {
    lines.add("");
    lines.add(text);
  }

  private static String counted(long n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }

  /** A text beside a name, its further lines below its first. */
  private void hang(String indent, int width, String name, String text) {
    String start = indent + name + " ".repeat(Math.max(1, width - name.length()));
    List<String> broken = broken(text, Math.max(30, WIDTH - start.length()));
    lines.add(start + broken.get(0));
    broken.stream().skip(1).forEach(l -> lines.add(indent + " ".repeat(width) + l));
  }

  private void add(String indent, String text) {
    broken(text, WIDTH - indent.length()).forEach(line -> lines.add(indent + line));
  }

  private static List<String> broken(String text, int width) {
    List<String> broken = new ArrayList<>();
    String rest = text;
    while (rest.length() > width) {
      int blank = rest.lastIndexOf(' ', width);
      int cut = blank > 0 ? blank : width;
      broken.add(rest.substring(0, cut).stripTrailing());
      rest = rest.substring(cut).stripLeading();
    }
    broken.add(rest);
    return broken;
  }
}
