package org.quietline.bench;

import java.time.LocalDateTime;
import java.util.Optional;

/**
 * What an action answers: a signal on a control chart, or a question that the records raise. Each
 * has an id that a person copies into {@code actions.csv}; {@link Object#toString()} writes it.
 */
public sealed interface Matter permits SignalId, QuestionId {

  /**
   * Whether it is about a result.
   *
   * @param result a result
   * @return true when the id names that very result
   */
  boolean isOn(Result result);

  /**
   * Whether an action of a moment cannot speak of it, because the result was not there yet.
   *
   * @param recordedAt when the action was recorded
   * @return true when what it is about is later
   */
  boolean isTooEarly(LocalDateTime recordedAt);

  /**
   * Whether an action about it may take a result out of baselines and statistics.
   *
   * @param result a result
   * @return true for the result a signal is on, and for a sample's result that looks like a slip
   */
  boolean excludes(Result result);

  /**
   * Reads an id.
   *
   * @param text the id
   * @return empty when the text is neither the id of a signal nor that of a question
   */
  static Optional<Matter> parse(String text) {
    Optional<SignalId> signal = SignalId.parse(text);
    return signal.isPresent()
        ? Optional.of(signal.get())
        : QuestionId.parse(text).map(question -> question);
  }
}
