package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import org.quietline.bench.Accounting;
import org.quietline.bench.Action;
import org.quietline.bench.ChartSettings;

/**
 * Everything a review found: the value that pages, files and the screen are made from.
 *
 * @param bench the bench's name
 * @param period the days under review; everything recorded up to its last day is used
 * @param now the moment the review speaks from: the end of the period or the latest row, whichever
 *     is earlier
 * @param chart how control charts are made on this bench
 * @param accounting what became of every row
 * @param methods the findings of each method, in the order of the settings
 * @param idleActions actions that close nothing: without a cause, or for a signal that was not
 *     found
 * @param across what shows only when records are held against each other
 * @param settingsFingerprint the first 8 hexadecimal digits of the SHA-256 of the settings file
 * @param dataFingerprint the first 8 hexadecimal digits of the SHA-256 over all files read
 */
public record Findings(
    String bench,
    Period period,
    LocalDateTime now,
    ChartSettings chart,
    Accounting accounting,
    List<MethodFindings> methods,
    List<Action> idleActions,
    AcrossRecords across,
    String settingsFingerprint,
    String dataFingerprint) {
  /** Copies the list. */
  public Findings {
    methods = List.copyOf(methods);
    idleActions = List.copyOf(idleActions);
  }

  /**
   * Findings of a bench whose records do not contradict each other.
   *
   * @param bench the bench's name
   * @param period the days under review
   * @param now the moment the review speaks from
   * @param chart how control charts are made on this bench
   * @param accounting what became of every row
   * @param methods the findings of each method
   * @param idleActions actions that close nothing
   * @param settingsFingerprint of the settings file
   * @param dataFingerprint of the files read
   */
  public Findings(
      String bench,
      Period period,
      LocalDateTime now,
      ChartSettings chart,
      Accounting accounting,
      List<MethodFindings> methods,
      List<Action> idleActions,
      String settingsFingerprint,
      String dataFingerprint) {
    this(
        bench,
        period,
        now,
        chart,
        accounting,
        methods,
        idleActions,
        AcrossRecords.NOTHING,
        settingsFingerprint,
        dataFingerprint);
  }

  /**
   * The records that cannot all be right.
   *
   * @return in the order of their checks, then of time
   */
  public List<Contradiction> contradictions() {
    return across.contradictions();
  }

  /**
   * Rows in conflict that no action can settle, only a corrected sheet: calibrations, lots, outside
   * results.
   *
   * @return how many
   */
  public long conflictsToMend() {
    return accounting.conflicts().stream()
        .filter(c -> c.id().isEmpty())
        .mapToLong(Accounting.InConflict::rows)
        .sum();
  }

  /**
   * Whether a person has nothing to do.
   *
   * @return true when every method is steady, every setting and every sheet could be used, no sheet
   *     changed while it was read, every action closes something, and no question about the whole
   *     bench is open
   */
  public boolean steady() {
    return accounting.settingsAside().isEmpty()
        && accounting.unreadFiles().isEmpty()
        && accounting.changedFiles().isEmpty()
        && idleActions.isEmpty()
        && across.openOfBench().isEmpty()
        && conflictsToMend() == 0
        && across.conflicts().stream().noneMatch(ConflictFinding::open)
        && methods.stream().allMatch(m -> m.verdict().level() == Verdict.Level.STEADY);
  }
}
