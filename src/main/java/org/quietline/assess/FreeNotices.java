package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;

/**
 * What the questions that cost no reagent may be expected to give by chance alone in the period,
 * beside what they gave. Source of the idea: common practice, the sum over charts of points times
 * false-alarm rate.
 *
 * @param rates one a question and what it was asked of, those without a judged point included
 */
public record FreeNotices(List<NoticeRate> rates) {
  /** Copies the list. */
  public FreeNotices {
    rates = List.copyOf(rates);
  }

  static FreeNotices of(
      List<InstrumentCalibrations> calibrations,
      List<AcidityAgreement> agreements,
      List<RetestFindings> retests,
      List<PairFindings> pairs,
      List<SampleEvenness> evenness) {
    List<NoticeRate> rates = new ArrayList<>();
    for (InstrumentCalibrations of : calibrations) {
      rates.add(of.steps());
      of.blanks().forEach(b -> rates.add(b.rate()));
    }
    agreements.forEach(a -> rates.add(a.rate()));
    retests.forEach(r -> rates.add(r.rate()));
    pairs.forEach(p -> rates.addAll(List.of(p.rate(), p.orderRate())));
    evenness.forEach(e -> rates.add(e.rate()));
    return new FreeNotices(rates);
  }

  /** Puts all five questions. */
  static FreeNotices ask(Records records) {
    return of(
        CalibrationHistory.ask(records),
        MethodsAgree.ask(records),
        Retests.ask(records),
        PairControl.ask(records),
        Heterogeneity.ask(records));
  }

  /**
   * The notices to expect in the period by chance alone.
   *
   * @return the sum over all questions
   */
  public double expected() {
    return rates.stream().mapToDouble(NoticeRate::expected).sum();
  }

  /**
   * The notices given in the period.
   *
   * @return the sum over all questions
   */
  public int observed() {
    return rates.stream().mapToInt(NoticeRate::observed).sum();
  }
}
