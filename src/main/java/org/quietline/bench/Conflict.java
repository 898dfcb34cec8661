package org.quietline.bench;

/**
 * Two rows that claim to be the same result and say different things. The first stays until an
 * action chooses another one.
 *
 * @param first the result that was taken in
 * @param other the one that stands against it
 * @param difference where the two differ, as a sentence
 */
public record Conflict(Result first, Result other, String difference) {
  /** Checks that the two are about the same thing. */
  public Conflict {
    Checks.text("difference", difference);
    if (!first.takenAt().equals(other.takenAt())
        || !first.method().equals(other.method())
        || !first.instrument().equals(other.instrument())
        || !first.sample().equals(other.sample())) {
      throw new IllegalArgumentException(
          first.origin() + " and " + other.origin() + " are two results, not one");
    }
  }

  /**
   * The id by which an action settles it.
   *
   * @return the same for all rows that claim to be this result
   */
  public QuestionId id() {
    return QuestionId.of(first, Check.ROWS_IN_CONFLICT);
  }
}
