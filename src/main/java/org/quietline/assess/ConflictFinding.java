package org.quietline.assess;

import java.util.Optional;
import org.quietline.bench.Action;
import org.quietline.bench.Conflict;

/**
 * Two rows that claim to be the same result, and what became of them.
 *
 * @param conflict the two rows
 * @param inPeriod whether the result falls in the period under review
 * @param decision the action that chose the row that holds, if any
 */
public record ConflictFinding(Conflict conflict, boolean inPeriod, Optional<Action> decision) {
  /**
   * Whether nobody has chosen yet.
   *
   * @return true while the first row stays only because it was met first
   */
  public boolean open() {
    return decision.isEmpty();
  }
}
