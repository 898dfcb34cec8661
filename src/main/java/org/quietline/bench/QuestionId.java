package org.quietline.bench;

import java.util.Optional;

/**
 * The name of a question that a check asks: what it is about, and which check asks it. Written
 * {@code subject/check}; the subject of a result is {@code method/instrument/sample/time}.
 *
 * @param subject what it is about, never blank
 * @param check the check
 */
public record QuestionId(String subject, Check check) implements Matter {
  /** Checks the subject. */
  public QuestionId {
    subject = subject.strip();
    Checks.text("subject", subject);
  }

  /**
   * Names a question about a result.
   *
   * @param result the result
   * @param check the check
   * @return the id
   */
  public static QuestionId of(Result result, Check check) {
    return new QuestionId(
        String.join(
            "/",
            result.method(),
            result.instrument(),
            result.sample(),
            result.takenAt().toString()),
        check);
  }

  /**
   * Reads what {@link #toString()} writes.
   *
   * @param text the id
   * @return empty when the text is no id of a question
   */
  public static Optional<QuestionId> parse(String text) {
    String id = text.strip();
    int cut = id.lastIndexOf('/');
    if (cut < 0 || id.substring(0, cut).isBlank()) {
      return Optional.empty();
    }
    return Check.parse(id.substring(cut + 1))
        .map(check -> new QuestionId(id.substring(0, cut), check));
  }

  @Override
  public String toString() {
    return subject + "/" + check.key();
  }
}
