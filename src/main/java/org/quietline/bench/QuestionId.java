package org.quietline.bench;

import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.Set;

/**
 * The name of a question that a check asks: what it is about, and which check asks it. Written
 * {@code subject/check}; the subject of a result is {@code method/instrument/sample/time}.
 *
 * @param subject what it is about, never blank
 * @param check the check
 */
public record QuestionId(String subject, Check check) implements Matter {
  private static final Set<Check> OF_TIME =
      Set.of(
          Check.TIME_IN_FUTURE,
          Check.TIME_OUT_OF_STEP,
          Check.TIME_DOES_NOT_EXIST,
          Check.ACTION_BEFORE_RESULT);

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
    return new QuestionId(subjectOf(result), check);
  }

  private static String subjectOf(Result result) {
    return String.join(
        "/", result.method(), result.instrument(), result.sample(), result.takenAt().toString());
  }

  /**
   * Whether an action of a moment is too early to answer it: it would speak of a result that was
   * not there yet. A question about the time itself can be answered at any moment.
   *
   * @param recordedAt when the action was recorded
   * @return true when the result it names is later
   */
  @Override
  public boolean isTooEarly(LocalDateTime recordedAt) {
    if (OF_TIME.contains(check)) {
      return false;
    }
    try {
      String at = subject.substring(subject.lastIndexOf('/') + 1);
      return recordedAt.isBefore(LocalDateTime.parse(at));
    } catch (DateTimeParseException e) {
      return false;
    }
  }

  /**
   * Whether it is a slip in a sample's result. What a question takes out of statistics is never a
   * control: a control leaves by the signal it gave.
   */
  @Override
  public boolean excludes(Result result) {
    return check.kind() == Check.Kind.SLIP && result.role() != Role.CONTROL && isOn(result);
  }

  @Override
  public boolean isOn(Result result) {
    return subject.endsWith(result.takenAt().toString()) && subject.equals(subjectOf(result));
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
