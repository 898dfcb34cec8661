package org.quietline.bench;

import java.util.Optional;

/**
 * What an action answers: a signal on a control chart, or a question that the records raise. Each
 * has an id that a person copies into {@code actions.csv}; {@link Object#toString()} writes it.
 */
public sealed interface Matter permits SignalId, QuestionId {

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
