package org.quietline.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.quietline.assess.ConflictFinding;
import org.quietline.assess.Findings;
import org.quietline.bench.Accounting.InConflict;
import org.quietline.bench.Action;
import org.quietline.bench.Check;
import org.quietline.bench.Conflict;
import org.quietline.bench.Matter;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;

/** Rows that claim to be the same one, in words: both values, both places, and how to settle it. */
final class ConflictWords {
  private ConflictWords() {}

  /** All conflicts: open ones first, then those of sheets that only a person can mend, settled. */
  static List<String> sentences(Findings findings) {
    List<String> sentences = new ArrayList<>();
    List<ConflictFinding> found = findings.across().conflicts();
    found.stream().filter(ConflictFinding::open).forEach(c -> sentences.add(sentence(c)));
    toMend(findings).forEach(c -> sentences.add(c.toString()));
    found.stream().filter(c -> !c.open()).forEach(c -> sentences.add(sentence(c)));
    return sentences;
  }

  /** The rows in conflict that no action can settle. */
  static List<InConflict> toMend(Findings findings) {
    return findings.accounting().conflicts().stream().filter(c -> c.id().isEmpty()).toList();
  }

  /** One conflict, open or settled. */
  static String sentence(ConflictFinding found) {
    return same(found.conflict())
        + found
            .decision()
            .map(ConflictWords::settled)
            .orElse(" The first counts. " + howToSettle(found.conflict()));
  }

  /** The reason of a verdict for the open conflicts of a method. */
  static String reason(List<ConflictFinding> open) {
    String first =
        ContradictionWords.name(open.get(0).conflict().first())
            + " stands in two rows with different content; the first counts until a person chooses.";
    return open.size() == 1
        ? first
        : open.size() + " rows stand against results taken in; the first: " + first;
  }

  /** The ids of the first open conflicts, one a line. */
  static String ids(List<ConflictFinding> open) {
    return ContradictionWords.firstOf(
        open.stream().map(c -> c.conflict().id().toString()).distinct().toList());
  }

  /** What must be known of rows in conflict that only a corrected sheet mends. */
  static Optional<String> alarm(Findings findings) {
    long rows = findings.conflictsToMend();
    return rows == 0
        ? Optional.empty()
        : Optional.of(
            Numbers.count(rows, "row", "rows")
                + " beside the results "
                + (rows == 1 ? "says" : "say")
                + " something else than a row met before; correct the wrong one of each, see the"
                + " last pages.");
  }

  private static String same(Conflict conflict) {
    return ContradictionWords.name(conflict.first())
        + " stands in "
        + conflict.first().origin()
        + ", and in "
        + conflict.other().origin()
        + ", with other content: "
        + conflict.difference()
        + ".";
  }

  /** What to write into {@code actions.csv}. */
  static String howToSettle(Conflict conflict) {
    return "Settle it by a row in actions.csv with signal "
        + conflict.id()
        + ", a cause, and use_row "
        + place(conflict.first().origin())
        + " or "
        + place(conflict.other().origin())
        + ".";
  }

  private static String settled(Action action) {
    return " Settled"
        + action.decidedBy().map(who -> " by " + who).orElse("")
        + " on "
        + Dates.full(action.recordedAt())
        + ": "
        + action.useRow().map(Origin::toString).orElse("")
        + ", holds ("
        + action.cause().orElse("")
        + ").";
  }

  /** Why an action closes nothing. */
  static String idle(Action action, Findings findings) {
    Matter matter = action.matter();
    if (!(matter instanceof QuestionId question)) {
      return notFound("signal", matter);
    }
    if (question.check() != Check.ROWS_IN_CONFLICT) {
      return notFound("question", matter);
    }
    Set<Origin> rows = new LinkedHashSet<>();
    findings.across().conflicts().stream()
        .map(ConflictFinding::conflict)
        .filter(c -> c.id().equals(question))
        .forEach(c -> rows.addAll(List.of(c.first().origin(), c.other().origin())));
    if (rows.isEmpty()) {
      return notFound("conflict", matter);
    }
    return action
            .useRow()
            .map(row -> "use_row names " + row + ", which is no row of the conflict " + matter)
            .orElse("use_row is empty, and the conflict " + matter + " needs the row that holds")
        + ", so it closes nothing. Write "
        + rows.stream().map(ConflictWords::place).collect(Collectors.joining(" or "))
        + ".";
  }

  private static String notFound(String what, Matter matter) {
    return "the "
        + what
        + " "
        + matter
        + " is not among those found, so it closes nothing."
        + " Copy the id from findings.json.";
  }

  private static String place(Origin origin) {
    return origin.file() + ":" + origin.line();
  }
}
