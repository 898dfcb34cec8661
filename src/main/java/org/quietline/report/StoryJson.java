package org.quietline.report;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.quietline.assess.Answer;
import org.quietline.assess.Hint;
import org.quietline.assess.Hints;
import org.quietline.assess.LookBack;
import org.quietline.assess.Story;

/** Stories in {@code findings.json}. */
final class StoryJson {
  private final JsonFields json;

  StoryJson(JsonFields json) {
    this.json = json;
  }

  void write(List<Story> stories) throws IOException {
    json.array("stories", stories, this::story);
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private void story(Story story) throws IOException {
    json.text("id", story.id());
    json.text("instrument", story.instrument());
    json.text("status", story.open() ? "open" : "closed");
    json.truth("stops", story.stops());
    json.texts("signals", story.signals().stream().map(s -> s.id()).toList());
    json.text("onset", story.onset().first());
    json.textOr("lastBefore", story.onset().lastBefore(), "no control result lies before it");
    json.text("onsetFrom", word(story.onset().from()));
    json.textOr("endedBy", story.resetBy(), "no calibration ended it");
    json.array(
        "sizes",
        story.sizes(),
        size -> {
          json.text("material", size.material());
          json.number("results", size.results());
          json.number("size", size.size());
          json.number("lower95", size.interval95().lower());
          json.number("upper95", size.interval95().upper());
        });
    json.object("hints", story.hints(), this::hints);
    json.object(
        "lookBack",
        story
            .lookBack()
            .map(Answer::of)
            .orElse(Answer.cannotSay("no open signal of it stops the method")),
        this::lookBack);
  }

  private void hints(Hints hints) throws IOException {
    json.number("results", hints.results());
    json.array("ranked", hints.ranked(), this::hint);
    json.array(
        "inseparable",
        hints.inseparable(),
        pair -> {
          json.text("likelier", word(pair.likelier()));
          json.text("other", word(pair.other()));
          json.number("correlation", pair.correlation());
          json.text("nextTime", word(pair.nextTime()));
        });
  }

  private void hint(Hint hint) throws IOException {
    json.text("pattern", word(hint.pattern()));
    json.textOr("subject", hint.subject(), "the pattern names none");
    json.number("share", hint.share());
    json.number("estimate", hint.estimate().value());
    json.number("lower95", hint.estimate().interval95().lower());
    json.number("upper95", hint.estimate().interval95().upper());
    json.text("per", word(hint.estimate().per()));
    json.text("check", word(hint.check()));
    json.array(
        "results",
        hint.results(),
        place -> {
          json.text("material", place.material());
          json.text("at", place.at());
        });
  }

  private void lookBack(LookBack back) throws IOException {
    json.text("since", word(back.since()));
    json.textOr("from", back.from(), "the start of the records");
    json.textOr("lastGood", back.lastGood().map(g -> g.at()), "no control before it was good");
    json.textOr("endedBy", back.endedBy(), "everything up to now");
    json.answer("likelyError", back.assumed().map(a -> a.estimate().value()));
    json.answerText("likelyErrorPer", back.assumed().map(a -> word(a.estimate().per())));
    json.number("samples", back.batches());
    json.number("samplesWithALimitInside", back.batchesAtLimit());
    json.array("results", back.results(), this::doubted);
  }

  private void doubted(LookBack.Doubted d) throws IOException {
    json.text("at", d.at());
    json.text("sample", d.sample());
    json.text("role", d.role().key());
    json.numberOr("value", d.value(), "only a bound");
    json.answer("likelyError", d.error().map(LookBack.LikelyError::value));
    json.answer("correctedLower", d.corrected().map(c -> c.lower()));
    json.answer("correctedUpper", d.corrected().map(c -> c.upper()));
    json.truth("limitInside", d.limitInside());
    json.numberOr("margin", d.margin(), "no value or no limit");
    json.truth("pointedAt", d.pointedAt());
    json.text("file", d.file());
    json.number("line", d.line());
  }
}
