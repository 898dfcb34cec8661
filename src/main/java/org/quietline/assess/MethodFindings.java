package org.quietline.assess;

import java.util.List;
import java.util.stream.Stream;
import org.quietline.bench.Method;

/**
 * What a review found about one method.
 *
 * @param method the method
 * @param verdict the verdict and its reasons
 * @param replicates how readings agree, one entry an instrument and role that has pairs
 * @param people how the pairs of each person compare with the others', one entry a person
 * @param streams the control streams, one entry an instrument and material
 * @param drift the current calibration of each instrument
 * @param precision how precise the method is on its control materials
 * @param capability what the process is capable of against the method's limit
 * @param outOfDate results made past a calibration's or a reagent's date, in time order
 * @param dates for how many results of the period that could be checked
 * @param slips numbers that look like a slip of the pen
 * @param free what the records say without a control test
 * @param stories signals of one origin, told together
 * @param batches what rests on precision and bias: uncertainty, outside comparisons, releases
 */
public record MethodFindings(
    Method method,
    Verdict verdict,
    List<Replicates> replicates,
    List<PersonPairs> people,
    List<StreamFindings> streams,
    List<Drift> drift,
    Precision precision,
    Answer<Capability> capability,
    List<OutOfDate> outOfDate,
    DateCoverage dates,
    Slips slips,
    FreeStreams free,
    List<Story> stories,
    Batches batches) {
  /** Copies the lists. */
  public MethodFindings {
    replicates = List.copyOf(replicates);
    people = List.copyOf(people);
    streams = List.copyOf(streams);
    drift = List.copyOf(drift);
    outOfDate = List.copyOf(outOfDate);
    stories = List.copyOf(stories);
  }

  /**
   * Findings of a method whose records say nothing without a control test.
   *
   * @param method the method
   * @param verdict the verdict and its reasons
   * @param replicates how readings agree
   * @param people how the pairs of each person compare with the others'
   * @param streams the control streams
   * @param drift the current calibration of each instrument
   * @param precision how precise the method is
   * @param capability what the process is capable of
   * @param outOfDate results made past a date
   * @param dates for how many results of the period that could be checked
   * @param slips numbers that look like a slip of the pen
   */
  public MethodFindings(
      Method method,
      Verdict verdict,
      List<Replicates> replicates,
      List<PersonPairs> people,
      List<StreamFindings> streams,
      List<Drift> drift,
      Precision precision,
      Answer<Capability> capability,
      List<OutOfDate> outOfDate,
      DateCoverage dates,
      Slips slips) {
    this(
        method,
        verdict,
        replicates,
        people,
        streams,
        drift,
        precision,
        capability,
        outOfDate,
        dates,
        slips,
        FreeStreams.NOTHING,
        List.of(),
        Batches.NONE);
  }

  /**
   * Every signal of the method, of control streams and of those that cost no test.
   *
   * @return control streams first
   */
  public List<Signal> signals() {
    return Stream.concat(
            streams.stream().flatMap(s -> s.signals().stream()), free.signals().stream())
        .toList();
  }
}
