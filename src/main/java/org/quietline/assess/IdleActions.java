package org.quietline.assess;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Check;
import org.quietline.bench.Matter;
import org.quietline.bench.QuestionId;

/** Which actions close nothing? */
final class IdleActions {
  private final Bench bench;
  private final AcrossRecords across;
  private final List<Slip> slips;
  private final Set<Matter> signals = new HashSet<>();

  IdleActions(Bench bench, List<MethodFindings> methods, AcrossRecords across) {
    this.bench = bench;
    this.across = across;
    this.slips = methods.stream().flatMap(m -> m.slips().questions().stream()).toList();
    methods.stream().flatMap(m -> m.signals().stream()).forEach(s -> signals.add(s.id()));
  }

  /**
   * An action closes nothing when it names no cause, a signal or question that was not found, or of
   * rows in conflict none. What it says of a check that is switched off stays as it is.
   */
  boolean isIdle(Action action) {
    if (action.cause().isEmpty()) {
      return true;
    }
    if (!(action.matter() instanceof QuestionId question)) {
      return !signals.contains(action.matter());
    }
    String method = question.subject().split("/", 2)[0];
    if (!bench.settings().isOn(question.check(), method)) {
      return false;
    }
    return question.check() == Check.ROWS_IN_CONFLICT
        ? action.useRow().filter(bench.rowsIn(question)::contains).isEmpty()
        : !across.asks(question) && slips.stream().noneMatch(s -> s.isNamedBy(question));
  }
}
