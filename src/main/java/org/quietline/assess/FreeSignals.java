package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.Optional;
import org.quietline.bench.Action;
import org.quietline.bench.Rule;
import org.quietline.bench.SignalId;

/** The signals of streams that are no control streams, by what the bench uses and has answered. */
final class FreeSignals {
  private final Records records;
  private final String instrument;
  private final String subject;
  private final Rule rule;

  FreeSignals(Records records, String instrument, String subject, Rule rule) {
    this.records = records;
    this.instrument = instrument;
    this.subject = subject;
    this.rule = rule;
  }

  private SignalId id(LocalDateTime at) {
    return new SignalId(records.method().key(), instrument, subject, at, rule);
  }

  /** A signal; empty where the bench does not use the rule. */
  Optional<Signal> of(LocalDateTime at, double value, double limit) {
    SignalId id = id(at);
    Optional<Action> closing = records.bench().closing(id);
    return records
        .bench()
        .settings()
        .chart()
        .weightOf(rule)
        .map(weight -> new Signal(id, weight, value, limit, closing.isEmpty(), closing));
  }

  /** Whether an action on such a signal took its point out of what later ones are judged by. */
  boolean isTakenOut(LocalDateTime at) {
    SignalId id = id(at);
    return records.bench().actions().stream()
        .anyMatch(
            a -> a.excludeResult() && a.matter().equals(id) && !id.isTooEarly(a.recordedAt()));
  }
}
