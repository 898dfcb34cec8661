package org.quietline.report;

import java.io.IOException;
import java.util.Locale;
import org.quietline.assess.Signal;
import org.quietline.bench.Action;

/** A signal in {@code findings.json}. */
final class SignalJson {
  private SignalJson() {}

  /** A sum is in deviations, a blank in what it was read in. */
  private static String unit(Signal signal) {
    return switch (signal.id().rule()) {
      case CUMULATIVE_SUM_BEYOND_LIMIT -> "deviations";
      case BLANK_DRIFTING -> "as the blank is read, or deviations where its weighted mean broke it";
      default -> "the method's unit";
    };
  }

  static void write(JsonFields json, Signal signal) throws IOException {
    json.text("id", signal.id());
    json.text("rule", signal.id().rule().key());
    json.text("weight", signal.weight().name().toLowerCase(Locale.ROOT));
    json.text("at", signal.id().at());
    json.number("value", signal.value());
    json.number("limit", signal.limit());
    json.text("unitOfValue", unit(signal));
    json.numberOr("size", signal.size(), "a rule about spread, or of one response");
    json.texts("pattern", signal.points());
    json.text("status", signal.open() ? "open" : "closed");
    json.textOr(
        "cause",
        signal.closing().flatMap(Action::cause),
        signal.open() ? "no cause is recorded" : "an action on the result took it out");
  }
}
