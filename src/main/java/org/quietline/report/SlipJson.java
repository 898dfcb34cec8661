package org.quietline.report;

import java.io.IOException;
import org.quietline.assess.Slip;
import org.quietline.assess.Slip.Candidate;
import org.quietline.assess.Slips;
import org.quietline.bench.Action;

/** Numbers that look like a slip, in {@code findings.json}. */
final class SlipJson {
  private static final String ONE_SAMPLE = "no other sample is concerned";
  private final JsonFields json;

  SlipJson(JsonFields json) {
    this.json = json;
  }

  void write(Slips slips) throws IOException {
    json.array("slips", slips.questions(), this::slip);
    json.startObject("slipsJudged");
    json.number("resultsInPeriod", slips.inPeriod());
    json.number("judged", slips.judged());
    json.endObject();
  }

  private void slip(Slip slip) throws IOException {
    json.text("id", slip.id());
    json.text("at", slip.result().takenAt());
    json.text("instrument", slip.result().instrument());
    json.text("role", slip.result().role().key());
    json.text("sample", slip.result().sample());
    json.text("written", SlipWords.written(slip.result()));
    json.textOr("withSample", slip.partner().map(p -> p.sample()), ONE_SAMPLE);
    json.textOr("withTakenAt", slip.partner().map(p -> p.takenAt()), ONE_SAMPLE);
    json.array("candidates", slip.candidates(), this::candidate);
    json.startObject("evidence");
    evidence(slip.evidence());
    json.endObject();
    json.truth("inPeriod", slip.inPeriod());
    json.text("status", slip.open() ? "open" : "closed");
    json.textOr(
        "cause",
        slip.closing().flatMap(Action::cause),
        slip.excluded() ? "an action took the result out" : "no answer is recorded");
    json.text("file", slip.result().origin().file());
    json.number("line", slip.result().origin().line());
  }

  private void candidate(Candidate candidate) throws IOException {
    json.text("what", candidate.what().key());
    if (candidate.reading().isPresent()) {
      json.number("reading", candidate.reading().getAsInt());
    } else {
      json.nothing("reading", "it is about the whole result");
    }
    if (candidate.partnerReading().isPresent()) {
      json.number("withReading", candidate.partnerReading().getAsInt());
    }
    json.number("factor", candidate.factor());
    json.numberOr("value", candidate.value(), "the records do not show what was meant");
  }

  private void evidence(Slip.Evidence evidence) throws IOException {
    if (evidence instanceof Slip.Distance distance) {
      json.text("source", distance.source().key());
      json.number("results", distance.results());
      json.number("expected", distance.expected());
      json.number("deviationsAway", distance.apart());
      json.number("limit", distance.limit());
    } else if (evidence instanceof Slip.Coincidence coincidence) {
      json.text("source", "row-before");
      json.number("chance", coincidence.chance());
    }
  }
}
