package org.quietline.assess;

import java.util.List;
import org.quietline.bench.CheckOff;
import org.quietline.bench.Matter;
import org.quietline.bench.Role;

/**
 * What shows only when the bench's records are held against each other.
 *
 * @param contradictions records that cannot all be right, in the order of their checks, then of
 *     time; answered ones stay listed
 * @param conflicts rows that claim to be the same result, in the order in which they were met
 * @param checksOff the checks that a person switched off, with the reasons
 */
public record AcrossRecords(
    List<Contradiction> contradictions, List<ConflictFinding> conflicts, List<CheckOff> checksOff) {
  /** Nothing to ask. */
  public static final AcrossRecords NOTHING = new AcrossRecords(List.of(), List.of(), List.of());

  /** Copies the lists. */
  public AcrossRecords {
    contradictions = List.copyOf(contradictions);
    conflicts = List.copyOf(conflicts);
    checksOff = List.copyOf(checksOff);
  }

  /**
   * The questions nobody has answered that concern no single method.
   *
   * @return those of the period
   */
  public List<Contradiction> openOfBench() {
    return contradictions.stream()
        .filter(c -> c.open() && c.asked().inPeriod() && c.asked().method().isEmpty())
        .toList();
  }

  /**
   * The questions nobody has answered that concern a method.
   *
   * @param method the method's key
   * @return those of the period
   */
  public List<Contradiction> openOf(String method) {
    return contradictions.stream()
        .filter(c -> c.open() && c.asked().inPeriod())
        .filter(c -> c.asked().method().filter(method::equals).isPresent())
        .toList();
  }

  /**
   * The conflicts of a method that nobody has settled.
   *
   * @param method the method's key
   * @return those of the period
   */
  public List<ConflictFinding> openConflictsOf(String method) {
    return conflicts.stream()
        .filter(c -> c.open() && c.conflict().first().method().equals(method))
        .filter(c -> c.inPeriod() || c.conflict().first().role() == Role.CONTROL)
        .toList();
  }

  /** The results of a method made past a date, in time order. */
  List<OutOfDate> outOfDate(String method) {
    return contradictions.stream()
        .filter(OutOfDate.class::isInstance)
        .map(OutOfDate.class::cast)
        .filter(o -> o.result().method().equals(method))
        .toList();
  }

  /** Whether there is a question of this id. */
  boolean asks(Matter matter) {
    return contradictions.stream().anyMatch(c -> c.id().equals(matter));
  }
}
