package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.bench.Action;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.bench.SignalId;

/**
 * A rule broken on a stream. Source of the word: ISO 7870-1, out-of-control signal.
 *
 * @param id which rule which result broke
 * @param weight whether it stops the method
 * @param value the number that broke the rule: the result, the weighted mean or the range
 * @param limit the limit it broke
 * @param points when the results were taken that make the pattern, the one that broke the rule last
 * @param size how far from the centre the pattern lies, in the method's unit with its sign; empty
 *     for a rule about spread
 * @param open whether no cause is recorded
 * @param closing the action that names its cause, if any
 */
public record Signal(
    SignalId id,
    Weight weight,
    double value,
    double limit,
    List<LocalDateTime> points,
    OptionalDouble size,
    boolean open,
    Optional<Action> closing) {
  /** Copies the list. */
  public Signal {
    points = List.copyOf(points);
  }

  /**
   * A signal of one result, of a size that is not said.
   *
   * @param id which rule which result broke
   * @param weight whether it stops the method
   * @param value the number that broke the rule
   * @param limit the limit it broke
   * @param open whether no cause is recorded
   * @param closing the action that names its cause, if any
   */
  public Signal(
      SignalId id,
      Weight weight,
      double value,
      double limit,
      boolean open,
      Optional<Action> closing) {
    this(id, weight, value, limit, List.of(id.at()), OptionalDouble.empty(), open, closing);
  }
}
