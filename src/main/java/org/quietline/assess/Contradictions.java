package org.quietline.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.quietline.bench.Accounting;
import org.quietline.bench.Bench;
import org.quietline.bench.Check;

/** Which records cannot all be right? */
final class Contradictions {
  private Contradictions() {}

  /**
   * Holds the records against each other.
   *
   * @param asking the bench, the period and the moment
   * @param accounting what became of every row
   * @param methods the records of each method
   */
  static AcrossRecords ask(Asking asking, Accounting accounting, List<Records> methods) {
    List<Contradiction> found = new ArrayList<>();
    methods.forEach(records -> found.addAll(DateCheck.ask(records)));
    found.addAll(CalibrationContradictions.ask(asking));
    found.addAll(LotContradictions.ask(asking));
    found.addAll(SequenceContradictions.ask(asking, accounting));
    found.addAll(TimeContradictions.ask(asking));
    found.addAll(PartContradictions.ask(asking));
    found.addAll(PersonContradictions.ask(asking));
    found.addAll(ActionContradictions.ask(asking));
    found.sort(Comparator.comparing(Contradiction::check).thenComparing(c -> c.asked().when()));
    return new AcrossRecords(found, conflicts(asking), asking.bench().settings().checksOff());
  }

  private static List<ConflictFinding> conflicts(Asking asking) {
    Bench bench = asking.bench();
    return bench.conflicts().stream()
        .filter(c -> asking.isOn(Check.ROWS_IN_CONFLICT, c.first().method()))
        .map(
            c ->
                new ConflictFinding(
                    c, asking.period().contains(c.first().takenAt()), bench.settling(c)))
        .toList();
  }
}
