package org.quietline.assess;

import java.util.List;
import java.util.stream.Stream;

/**
 * What a method's records say without a control test: calibrations, blanks, pairs of real samples,
 * a related method, samples measured again.
 *
 * @param calibrations the calibrations of each instrument, held against those before
 * @param agreements acid numbers held against free fatty acids of the same samples
 * @param retests retained samples measured again, by instrument
 * @param pairs the pairs of real samples at their own level, by instrument
 * @param evenness whether samples disagree while the control agrees
 * @param policy what became of the pairs of the period, by instrument and role
 * @param notices how many notices chance gives, beside those given
 */
public record FreeStreams(
    List<InstrumentCalibrations> calibrations,
    List<AcidityAgreement> agreements,
    List<RetestFindings> retests,
    List<PairFindings> pairs,
    List<SampleEvenness> evenness,
    List<PairsOfPeriod> policy,
    FreeNotices notices) {
  /** A method without any. */
  public static final FreeStreams NOTHING =
      new FreeStreams(
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          new FreeNotices(List.of()));

  /** Copies the lists. */
  public FreeStreams {
    calibrations = List.copyOf(calibrations);
    agreements = List.copyOf(agreements);
    retests = List.copyOf(retests);
    pairs = List.copyOf(pairs);
    evenness = List.copyOf(evenness);
    policy = List.copyOf(policy);
  }

  static FreeStreams ask(Records records) {
    List<InstrumentCalibrations> calibrations = CalibrationHistory.ask(records);
    List<AcidityAgreement> agreements = MethodsAgree.ask(records);
    List<RetestFindings> retests = Retests.ask(records);
    List<PairFindings> pairs = PairControl.ask(records);
    List<SampleEvenness> evenness = Heterogeneity.ask(records);
    return new FreeStreams(
        calibrations,
        agreements,
        retests,
        pairs,
        evenness,
        PairsOfPeriod.ask(records),
        FreeNotices.of(calibrations, agreements, retests, pairs, evenness));
  }

  /**
   * The signals of calibrations, blanks and related methods, for rules the bench uses.
   *
   * @return in the order of the instruments, each in time order
   */
  public List<Signal> signals() {
    return Stream.concat(
            calibrations.stream().flatMap(c -> c.signals().stream()),
            agreements.stream().flatMap(a -> a.signals().stream()))
        .toList();
  }
}
