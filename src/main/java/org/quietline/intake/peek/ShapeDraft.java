package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Drafts what concerns the file as a whole: encoding, delimiter, header, lines before it. */
final class ShapeDraft {
  private final Draft draft;
  private final FileHead head;
  private final Answers answers;

  ShapeDraft(Draft draft, FileHead head, Answers answers) {
    this.draft = draft;
    this.head = head;
    this.answers = answers;
  }

  Grid write() {
    draft.found("size", size(), head.isWhole() ? "looked at to its end" : "its start and its end");
    Decoded decoded = Decoded.of(head, answers.encoding());
    List<Line> lines = Line.of(decoded.text());
    if (lines.stream().allMatch(line -> line.text().isBlank())) {
      throw new PeekException(head.name() + " holds no row: every line is empty.");
    }
    List<Delimiters.Cut> cuts = cuts(lines);
    delimiter(cuts);
    decoded.setting().ifPresent(name -> draft.line("encoding", Toml.text(name)));
    draft.found("encoding", decoded.found(), decoded.why());
    draft.found("line ends", Line.ends(decoded.text()), "");
    Grid grid = Grid.of(lines, cuts.get(0).sign(), cuts.get(0).width());
    header(grid);
    oddLines(grid);
    return grid;
  }

  private String size() {
    long size = head.size();
    return size < 10_000
        ? size + " bytes"
        : size < 10_000_000
            ? size / 1000 + " kB"
            : String.format(Locale.ROOT, "%,d MB", size / 1_000_000);
  }

  private List<Delimiters.Cut> cuts(List<Line> lines) {
    List<Delimiters.Cut> cuts = Delimiters.of(lines, answers.delimiter().orElse(Delimiters.SIGNS));
    if (cuts.isEmpty()) {
      throw new PeekException(
          head.name()
              + " cannot be cut into columns: "
              + answers
                  .delimiter()
                  .map(sign -> "no line holds " + Shown.quoted(sign))
                  .orElse("its lines hold no comma, semicolon, tab or upright stroke in common")
              + ". Is it a list or a letter? If another sign stands between the columns, give it"
              + " with --delimiter.");
    }
    return cuts;
  }

  private void delimiter(List<Delimiters.Cut> cuts) {
    Delimiters.Cut best = cuts.get(0);
    String why =
        answers.delimiter().isPresent()
            ? "you said so"
            : best.lines() + " of " + best.all() + " lines have " + best.width() + " fields";
    draft.found("between columns", best.words(), why);
    if (cuts.size() > 1) {
      List<String> words = cuts.stream().map(Delimiters.Cut::words).toList();
      draft.askRefusing(
          "delimiter",
          "What stands between two columns? "
              + String.join(" or ", words)
              + " cuts the lines evenly. Below it is taken to be "
              + best.words()
              + ".",
          cuts.stream().map(Delimiters.Cut::toml).toList());
    } else if (best.sign() != ',') {
      draft.line("delimiter", best.toml());
    }
  }

  private void header(Grid grid) {
    int skip = grid.before().size();
    if (skip > 0 && !grid.before().stream().allMatch(l -> l.text().isBlank() && skip == 0)) {
      draft.line("skip-lines", Integer.toString(skip));
      draft.found(
          "before the header",
          Shown.counted(skip, "line"),
          Shown.some(grid.before().stream().map(l -> Line.stripped(l.text())).toList(), 2));
    }
    if (grid.header().isPresent()) {
      draft.found(
          "header", "line " + (skip + 1), "it holds words only, and the rows below it more");
    } else {
      draft.line("header", "false");
      draft.found("header", "none", "the first row holds numbers or times like the others");
    }
    draft.found("rows", Integer.toString(grid.rows().size()), "of " + grid.width() + " fields");
  }

  private void oddLines(Grid grid) {
    if (!grid.repeats().isEmpty()) {
      draft.found("header again", "in " + lines(grid.repeats()), "the same words as in the header");
    }
    if (!grid.uneven().isEmpty()) {
      draft.found(
          "uneven rows", "in " + lines(grid.uneven()), "not " + grid.width() + " fields wide");
    }
    if (head.stopsInLine()) {
      draft.found("end", "without a line end", "the file stops in its last line; is it whole?");
    }
    if (head.hasDamagedEnd()) {
      draft.found("end", "damaged", "its last bytes hold NUL signs");
    }
  }

  private static String lines(List<Integer> numbers) {
    List<String> some = new ArrayList<>();
    numbers.stream().limit(5).forEach(n -> some.add(Integer.toString(n)));
    Optional<String> more =
        numbers.size() > 5 ? Optional.of((numbers.size() - 5) + " more") : Optional.empty();
    more.ifPresent(some::add);
    return (numbers.size() == 1 ? "line " : "lines ") + Shown.and(some);
  }
}
