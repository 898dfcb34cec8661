package org.quietline.assess;

import java.util.Optional;
import java.util.function.Function;

/**
 * The answer to a question: known, or why it cannot be given and what it needs.
 *
 * @param <T> what is asked for
 */
public sealed interface Answer<T> {

  /**
   * The value, if it is known.
   *
   * @return empty when it cannot be said
   */
  Optional<T> value();

  /**
   * Why it cannot be said.
   *
   * @return empty when it is known
   */
  Optional<String> why();

  /**
   * The same answer about something computed from the value.
   *
   * @param <R> what is computed
   * @param step the computation
   * @return known where this is known
   */
  <R> Answer<R> map(Function<? super T, ? extends R> step);

  /**
   * Makes a known answer.
   *
   * @param <T> what is asked for
   * @param value the value
   * @return the answer
   */
  static <T> Answer<T> of(T value) {
    return new Known<>(value);
  }

  /**
   * Makes an answer that cannot be given.
   *
   * @param <T> what is asked for
   * @param why the reason and what would settle it, such as "needs 8 results, has 5"
   * @return the answer
   */
  static <T> Answer<T> cannotSay(String why) {
    return new CannotSay<>(why);
  }

  /**
   * A known answer.
   *
   * @param known the value
   * @param <T> what is asked for
   */
  record Known<T>(T known) implements Answer<T> {
    @Override
    public Optional<T> value() {
      return Optional.of(known);
    }

    @Override
    public Optional<String> why() {
      return Optional.empty();
    }

    @Override
    public <R> Answer<R> map(Function<? super T, ? extends R> step) {
      return new Known<>(step.apply(known));
    }
  }

  /**
   * An answer that cannot be given.
   *
   * @param reason why, and what would settle it
   * @param <T> what is asked for
   */
  record CannotSay<T>(String reason) implements Answer<T> {
    @Override
    public Optional<T> value() {
      return Optional.empty();
    }

    @Override
    public Optional<String> why() {
      return Optional.of(reason);
    }

    @Override
    public <R> Answer<R> map(Function<? super T, ? extends R> step) {
      return new CannotSay<>(reason);
    }
  }
}
