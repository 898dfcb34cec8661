package org.quietline.report;

import java.io.IOException;
import java.util.Locale;
import org.quietline.assess.Signal;
import org.quietline.bench.Action;

/** A signal in {@code findings.json}. */
final class SignalJson {
  private SignalJson() {}

  static void write(JsonFields json, Signal signal) throws IOException {
    json.text("id", signal.id());
    json.text("rule", signal.id().rule().key());
    json.text("weight", signal.weight().name().toLowerCase(Locale.ROOT));
    json.text("at", signal.id().at());
    json.number("value", signal.value());
    json.number("limit", signal.limit());
    json.numberOr("size", signal.size(), "a rule about spread, or of one response");
    json.texts("pattern", signal.points());
    json.text("status", signal.open() ? "open" : "closed");
    json.textOr(
        "cause",
        signal.closing().flatMap(Action::cause),
        signal.open() ? "no cause is recorded" : "an action on the result took it out");
  }
}
