package org.quietline.assess;

import java.util.Optional;
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
 * @param open whether no cause is recorded
 * @param closing the action that names its cause, if any
 */
public record Signal(
    SignalId id,
    Weight weight,
    double value,
    double limit,
    boolean open,
    Optional<Action> closing) {}
