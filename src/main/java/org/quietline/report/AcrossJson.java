package org.quietline.report;

import java.io.IOException;
import java.util.Optional;
import org.quietline.assess.ConflictFinding;
import org.quietline.assess.Contradiction;
import org.quietline.assess.Findings;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.InConflict;
import org.quietline.bench.Action;
import org.quietline.bench.CheckOff;
import org.quietline.bench.Conflict;
import org.quietline.bench.Origin;

/** The parts of {@code findings.json} about records that are held against each other. */
final class AcrossJson {
  private static final String NO_CAUSE = "no cause is recorded";

  private final JsonFields json;

  AcrossJson(JsonFields json) {
    this.json = json;
  }

  /** What became of rows beside those taken in or set aside. */
  void intake(Accounting accounting) throws IOException {
    json.array(
        "copies",
        accounting.copies(),
        copy -> {
          place(copy.copy());
          json.text("firstFile", copy.first().file());
          json.number("firstLine", copy.first().line());
          json.number("rows", copy.rows());
        });
    json.array(
        "conversions",
        accounting.conversions(),
        made -> {
          json.text("method", made.method());
          json.text("from", made.from());
          json.text("to", made.to());
          json.decimalOr("factor", Optional.of(made.factor()), "");
          json.number("results", made.results());
        });
  }

  /** Conflicts, contradictions and the checks that are switched off. */
  void across(Findings findings) throws IOException {
    json.array("conflicts", findings.across().conflicts(), this::conflict);
    json.array("conflictsToMend", ConflictWords.toMend(findings), this::toMend);
    json.array("contradictions", findings.contradictions(), this::contradiction);
    json.array("checksOff", findings.across().checksOff(), this::checkOff);
  }

  private void conflict(ConflictFinding found) throws IOException {
    Conflict conflict = found.conflict();
    json.text("id", conflict.id());
    json.text("status", found.open() ? "open" : "settled");
    json.truth("inPeriod", found.inPeriod());
    json.text("file", conflict.other().origin().file());
    json.number("line", conflict.other().origin().line());
    json.text("firstFile", conflict.first().origin().file());
    json.number("firstLine", conflict.first().origin().line());
    json.text("difference", conflict.difference());
    json.text("sentence", ConflictWords.sentence(found));
    json.textOr(
        "useRow", found.decision().flatMap(Action::useRow), "nobody has chosen; the first counts");
    json.textOr("decidedBy", found.decision().flatMap(Action::decidedBy), "nobody is named");
    json.textOr("cause", found.decision().flatMap(Action::cause), NO_CAUSE);
  }

  private void toMend(InConflict conflict) throws IOException {
    place(conflict.origin());
    json.text("firstFile", conflict.first().file());
    json.number("firstLine", conflict.first().line());
    json.text("field", conflict.field());
    json.text("text", conflict.text());
    json.text("firstText", conflict.firstText());
    json.text("sentence", conflict);
  }

  private void contradiction(Contradiction found) throws IOException {
    json.text("id", found.id());
    json.text("check", found.check().key());
    json.textOr("method", found.asked().method(), "it concerns the whole bench");
    json.text("at", found.asked().when());
    json.text("status", found.open() ? "open" : "answered");
    json.truth("inPeriod", found.asked().inPeriod());
    json.text("sentence", ContradictionWords.sentence(found));
    json.text("whatToDo", ContradictionWords.whatToDo(found.check()));
    json.array("places", found.asked().origins(), this::place);
    json.textOr("cause", found.asked().answer().flatMap(Action::cause), NO_CAUSE);
    json.textOr("decidedBy", found.asked().answer().flatMap(Action::decidedBy), "nobody is named");
  }

  private void checkOff(CheckOff off) throws IOException {
    json.text("check", off.check().key());
    json.textOr("method", off.method(), "for all methods");
    json.text("reason", off.reason());
  }

  private void place(Origin origin) throws IOException {
    json.text("file", origin.file());
    json.number("line", origin.line());
  }
}
