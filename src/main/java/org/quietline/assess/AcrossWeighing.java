package org.quietline.assess;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.quietline.bench.Check;

/** Adds to a verdict what the records say against each other. */
final class AcrossWeighing {
  private AcrossWeighing() {}

  /**
   * One concern for all conflicts and one for each check with open questions, so that many of one
   * kind are one sentence. Results past a date are weighed on their own.
   */
  static Verdict added(Verdict verdict, AcrossRecords across, String method) {
    List<Concern> concerns = new ArrayList<>(verdict.concerns());
    List<ConflictFinding> conflicts = across.openConflictsOf(method);
    if (!conflicts.isEmpty()) {
      concerns.add(new Concern.RowsInConflict(conflicts));
    }
    Map<Check, List<Contradiction>> byCheck = new EnumMap<>(Check.class);
    across.openOf(method).stream()
        .filter(c -> !(c instanceof OutOfDate))
        .forEach(c -> byCheck.computeIfAbsent(c.check(), k -> new ArrayList<>()).add(c));
    byCheck.forEach((check, open) -> concerns.add(new Concern.RecordsContradict(check, open)));
    return Verdict.of(concerns);
  }
}
