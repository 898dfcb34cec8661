package org.quietline.report;

import java.io.IOException;
import java.util.function.Function;
import org.quietline.assess.Answer;
import org.quietline.assess.Batches;
import org.quietline.assess.CostAdvice;
import org.quietline.assess.OutsideDifference;
import org.quietline.assess.OutsideScore;
import org.quietline.assess.PairedAgreement;
import org.quietline.assess.PairedComparison;
import org.quietline.assess.Precision;
import org.quietline.assess.Release;
import org.quietline.assess.Uncertainty;
import org.quietline.assess.VarianceSplit;
import org.quietline.stats.Interval;

/**
 * Precision, uncertainty, outside comparisons and releases of one method in {@code findings.json}.
 */
final class BatchJson {
  private final JsonFields json;

  BatchJson(JsonFields json) {
    this.json = json;
  }

  void precision(Precision precision) throws IOException {
    Answer<VarianceSplit> leading = precision.leading();
    json.startObject("precision");
    json.answer("repeatability", precision.repeatability());
    json.answer("betweenResults", flat(leading, VarianceSplit::betweenResults));
    json.answer(
        "betweenCalibrations", flat(leading, s -> s.deviation(VarianceSplit.Source.CALIBRATION)));
    json.answer("intermediate", precision.intermediate());
    json.array("splits", precision.splits(), this::split);
    json.endObject();
  }

  private static <T> Answer<Double> flat(
      Answer<T> answer, java.util.function.Function<T, Answer<Double>> step) {
    return answer.value().isPresent()
        ? step.apply(answer.value().get())
        : Answer.cannotSay(answer.why().orElseThrow());
  }

  private void split(Precision.Split split) throws IOException {
    json.text("instrument", split.instrument());
    json.text("material", split.material());
    json.answer("level", split.split().map(VarianceSplit::level));
    if (split.split().value().isEmpty()) {
      return;
    }
    VarianceSplit found = split.split().value().get();
    json.number("readings", found.readings());
    json.number("results", found.results());
    json.number("sessions", found.sessions());
    json.number("calibrations", found.calibrations());
    json.array(
        "parts",
        found.parts(),
        part -> {
          json.text("between", part.source().name().toLowerCase(java.util.Locale.ROOT) + "s");
          json.number("groups", part.groups());
          json.number("deviation", part.deviation());
          json.number("lower95", part.interval95().lower());
          json.number("upper95", part.interval95().upper());
        });
    Interval interval = found.reported().interval95();
    json.number("reportedDeviation", found.reported().deviation());
    json.number("reportedLower95", interval.lower());
    json.number("reportedUpper95", interval.upper());
    json.number("reportedDegreesOfFreedom", found.reported().degreesOfFreedom());
    json.array(
        "averaging",
        found.averaging(),
        set -> {
          json.number("readings", set.readings());
          json.number("sessions", set.sessions());
          json.number("calibrations", set.calibrations());
          json.number("deviation", set.deviation());
        });
  }

  void batches(Batches batches) throws IOException {
    json.array("uncertainty", batches.uncertainty(), this::uncertainty);
    json.array("outside", batches.outside(), this::outside);
    json.array("comparisons", batches.comparisons(), this::comparison);
    json.array("costsOfDeciding", batches.costs(), this::costs);
    json.array("release", batches.releases(), this::release);
  }

  private void uncertainty(Uncertainty uncertainty) throws IOException {
    json.text("instrument", uncertainty.instrument());
    json.answer("standardUncertainty", uncertainty.budget().map(Uncertainty.Budget::standard));
    if (uncertainty.budget().value().isEmpty()) {
      return;
    }
    Uncertainty.Budget budget = uncertainty.budget().value().get();
    json.number("degreesOfFreedom", budget.degreesOfFreedom());
    json.number("coverageFactor", budget.coverageFactor());
    json.number("expandedUncertainty", budget.expanded());
    json.text("material", budget.material());
    json.number("level", budget.level());
    json.number("calibrations", budget.calibrations());
    json.number("results", budget.results());
    json.text("from", budget.from());
    json.text("to", budget.to());
    json.array(
        "parts",
        budget.parts(),
        part -> {
          json.text("kind", part.kind().key());
          json.number("uncertainty", part.uncertainty());
        });
  }

  private void outside(OutsideScore score) throws IOException {
    OutsideDifference difference = score.difference();
    json.text("sample", difference.sample());
    json.text("instrument", difference.instrument());
    json.text("laboratory", difference.laboratory());
    json.textOr("reportedOn", difference.reportedOn(), "outside.csv gives no day");
    json.number("own", difference.own());
    json.number("outside", difference.outside());
    json.number("difference", difference.difference());
    json.numberOr(
        "standardUncertainty",
        difference.stated(),
        "the laboratory states no expanded uncertainty with its coverage factor");
    json.answer("en", score.en());
    json.answer("zeta", score.zeta());
    boolean primed = score.round().value().map(OutsideScore.Round::primed).orElse(false);
    json.answer(primed ? "zPrime" : "z", score.round().map(OutsideScore.Round::score));
  }

  private void comparison(PairedComparison comparison) throws IOException {
    json.text("of", comparison.kind().key());
    json.text("first", comparison.one());
    json.text("second", comparison.other());
    json.number("samples", comparison.pairs());
    json.number("meanDifference", comparison.mean());
    json.answer("lower95", comparison.intervals().map(i -> i.of95().lower()));
    json.answer("upper95", comparison.intervals().map(i -> i.of95().upper()));
    json.numberOr("margin", comparison.margin(), "no allowable-bias is set for this method");
    json.answerText("verdict", comparison.verdict().map(ComparisonSection::word));
    if (comparison.needed().isPresent()) {
      json.number("samplesNeeded", comparison.needed().getAsInt());
    } else {
      json.nothing("samplesNeeded", "not known, or no number of samples would show them alike");
    }
    json.answer("lowerLimitOfAgreement", comparison.agreement().map(a -> a.limits().lower()));
    json.answer("upperLimitOfAgreement", comparison.agreement().map(a -> a.limits().upper()));
    line("deming", comparison.agreement(), PairedAgreement::deming);
    line("passingBablok", comparison.agreement(), PairedAgreement::passingBablok);
  }

  private void line(
      String name,
      Answer<PairedAgreement> agreement,
      Function<PairedAgreement, Answer<PairedAgreement.Line>> which)
      throws IOException {
    Answer<PairedAgreement.Line> line =
        agreement.value().isPresent()
            ? which.apply(agreement.value().get())
            : Answer.cannotSay(agreement.why().orElseThrow());
    json.object(
        name,
        line,
        l -> {
          json.number("slope", l.slope());
          json.number("slopeLower95", l.ofSlope().lower());
          json.number("slopeUpper95", l.ofSlope().upper());
          json.number("intercept", l.intercept());
          json.number("interceptLower95", l.ofIntercept().lower());
          json.number("interceptUpper95", l.ofIntercept().upper());
        });
  }

  private void costs(Answer<CostAdvice> answer) throws IOException {
    json.object(
        "advice",
        answer,
        advice -> {
          json.text("instrument", advice.instrument());
          json.number("batches", advice.batches());
          json.number("mean", advice.mean());
          json.number("deviation", advice.deviation());
          json.number("standardUncertainty", advice.uncertainty());
          json.number("costOfBadRelease", advice.costs().badRelease().doubleValue());
          json.number("costOfRework", advice.costs().rework().doubleValue());
          json.array("options", advice.options(), this::option);
        });
  }

  private void option(CostAdvice.Option option) throws IOException {
    json.text("option", option.kind().key());
    json.number("distance", option.distance());
    json.number("badReleased", option.badReleased());
    json.number("goodHeld", option.goodHeld());
    json.number("cost", option.cost());
  }

  void release(Release release) throws IOException {
    json.text("sample", release.sample());
    json.text("instrument", release.instrument());
    json.numberOr("value", release.value(), release.judged().why().orElse(""));
    json.number("results", release.results().size());
    json.answer("standardUncertainty", release.judged().map(Release.Judged::uncertainty));
    json.answer("degreesOfFreedom", release.judged().map(Release.Judged::degreesOfFreedom));
    json.answer("sharedUncertainty", release.judged().map(Release.Judged::sharedUncertainty));
    json.answer("chanceConforming", release.judged().map(Release.Judged::chance));
    json.answer("guardBand", release.judged().map(Release.Judged::guardBand));
    json.answerText("decision", release.decision().map(Release.Decision::key));
    json.array(
        "heldBy",
        release.held(),
        held -> {
          json.text("reason", held.kind().key());
          json.text("what", held.what());
        });
    if (release.judged().value().isEmpty()) {
      return;
    }
    Release.Judged judged = release.judged().value().get();
    json.array(
        "waysOut",
        judged.ways(),
        way -> {
          json.text("way", way.way().key());
          json.number("standardUncertainty", way.uncertainty());
          json.number("chanceWithin", way.within());
          json.number("chanceBeyond", way.beyond());
        });
    json.numberOr("breakEvenChance", judged.breakEven(), "no costs are set under [release]");
  }
}
