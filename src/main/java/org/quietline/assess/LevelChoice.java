package org.quietline.assess;

import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.Drift.FormFrom;
import org.quietline.bench.DriftForm;
import org.quietline.stats.Interval;

/**
 * Whether drift adds an amount or takes a share of the level, by the control results of two levels.
 *
 * <p>Both forms, each with a scatter that is the same at all levels or a share of them, are given
 * the same chance before the results, and compared by the density that each gives the results with
 * lines, spreads and scatter averaged over. Where neither is known with 95 %, the one is taken by
 * which results may be carried farther at expiry, at the level where that is most. Source: Box and
 * Tiao, Bayesian Inference in Statistical Analysis (1973), 2.8; Kass and Raftery, JASA 90 (1995)
 * 773–795.
 *
 * @param form the form taken, with the likelier scatter
 * @param from why
 * @param chanceOfShare the chance that drift takes a share, if it was asked of the results
 */
record LevelChoice(LevelForm form, FormFrom from, OptionalDouble chanceOfShare) {
  private static final double KNOWN = 0.95;

  /**
   * How well results bear out a form.
   *
   * @param reach how far from zero results may be carried at expiry, at the level where it is most
   */
  private record Borne(LevelForm form, double logEvidence, double reach) {
    /** Either of two scatters: the form with the likelier, and how well both together are borne. */
    Borne or(Borne other) {
      Borne likelier = other.logEvidence > logEvidence ? other : this;
      double less = Math.min(logEvidence, other.logEvidence) - likelier.logEvidence;
      return new Borne(
          likelier.form, likelier.logEvidence + Math.log1p(Math.exp(less)), likelier.reach);
    }
  }

  /** Chooses, unless a person has. */
  static LevelChoice of(DriftPoints points, Optional<DriftForm> set, DriftModel.Scale scale) {
    FormFrom without = set.isPresent() ? FormFrom.SETTING : FormFrom.ONE_LEVEL;
    boolean several =
        points.used().stream().mapToDouble(p -> p.reference().value()).distinct().count() > 1;
    boolean positive = points.all().stream().allMatch(p -> p.reference().value() > 0);
    if (!positive) {
      boolean missed = several || set.equals(Optional.of(DriftForm.PROPORTIONAL));
      return new LevelChoice(
          LevelForm.ALIKE, missed ? FormFrom.NO_SHARES : without, OptionalDouble.empty());
    }
    if (!several) {
      return new LevelChoice(
          new LevelForm(set.orElse(DriftForm.ADDITIVE), DriftForm.ADDITIVE),
          without,
          OptionalDouble.empty());
    }
    Optional<Borne> amount = borne(points, DriftForm.ADDITIVE, scale);
    Optional<Borne> share = borne(points, DriftForm.PROPORTIONAL, scale);
    return amount.isEmpty() || share.isEmpty()
        ? new LevelChoice(
            new LevelForm(set.orElse(DriftForm.ADDITIVE), DriftForm.ADDITIVE),
            set.isPresent() ? FormFrom.SETTING : FormFrom.UNDECIDED,
            OptionalDouble.empty())
        : chosen(set, amount.get(), share.get());
  }

  private static LevelChoice chosen(Optional<DriftForm> set, Borne amount, Borne share) {
    double chance = 1 / (1 + Math.exp(amount.logEvidence() - share.logEvidence()));
    boolean known = chance >= KNOWN || chance <= 1 - KNOWN;
    boolean takeShare =
        set.map(f -> f == DriftForm.PROPORTIONAL)
            .orElse(known ? chance >= KNOWN : share.reach() > amount.reach());
    return new LevelChoice(
        takeShare ? share.form() : amount.form(),
        set.isPresent() ? FormFrom.SETTING : known ? FormFrom.DATA : FormFrom.UNDECIDED,
        OptionalDouble.of(chance));
  }

  /** What results say of drift of one form, with the likelier scatter. */
  private static Optional<Borne> borne(
      DriftPoints points, DriftForm drift, DriftModel.Scale scale) {
    Optional<Borne> one = borne(points, new LevelForm(drift, DriftForm.ADDITIVE), scale);
    Optional<Borne> other = borne(points, new LevelForm(drift, DriftForm.PROPORTIONAL), scale);
    return one.flatMap(a -> other.map(a::or));
  }

  private static Optional<Borne> borne(DriftPoints points, LevelForm form, DriftModel.Scale scale) {
    return DriftModel.of(points, form, scale)
        .value()
        .map(
            m -> {
              Interval end = m.line().at(scale.span()).interval(KNOWN);
              double reach =
                  largestScale(points, form)
                      * Math.max(Math.abs(end.lower()), Math.abs(end.upper()));
              return new Borne(form, m.logEvidence(), reach);
            });
  }

  private static double largestScale(DriftPoints points, LevelForm form) {
    MaterialReference level = points.reference().orElseThrow();
    return points.used().stream().mapToDouble(p -> form.scale(p, level)).max().orElse(1);
  }
}
