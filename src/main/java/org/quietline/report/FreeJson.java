package org.quietline.report;

import java.io.IOException;
import java.util.Locale;
import org.quietline.assess.AcidityAgreement;
import org.quietline.assess.BlankTrack;
import org.quietline.assess.CalibrationTrack;
import org.quietline.assess.FreeStreams;
import org.quietline.assess.InstrumentCalibrations;
import org.quietline.assess.InstrumentCalibrations.Step;
import org.quietline.assess.NoticeRate;
import org.quietline.assess.PairFindings;
import org.quietline.assess.PairsOfPeriod;
import org.quietline.assess.RetestFindings;
import org.quietline.assess.SampleEvenness;
import org.quietline.assess.Signal;
import org.quietline.bench.Result;

/** What costs no control test in {@code findings.json}. */
final class FreeJson {
  private final JsonFields json;

  FreeJson(JsonFields json) {
    this.json = json;
  }

  void write(FreeStreams free) throws IOException {
    json.startObject("free");
    json.number("expectedNotices", free.notices().expected());
    json.number("noticesInPeriod", free.notices().observed());
    json.array("questions", free.notices().rates(), this::rate);
    json.array("calibrations", free.calibrations(), this::calibrations);
    json.array("relatedMethods", free.agreements(), this::agreement);
    json.array("retests", free.retests(), this::retests);
    json.array("samplePairs", free.pairs(), this::pairs);
    json.array("samplesAgainstControl", free.evenness(), this::evenness);
    json.array("pairPolicy", free.policy(), this::policy);
    json.array("signals", free.signals(), this::signal);
    json.endObject();
  }

  private void rate(NoticeRate rate) throws IOException {
    json.text("question", rate.question().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    json.text("of", rate.where());
    json.number("judged", rate.judged());
    json.number("chance", rate.chance());
    json.number("expected", rate.expected());
    json.number("observed", rate.observed());
  }

  private void signal(Signal signal) throws IOException {
    SignalJson.write(json, signal);
  }

  private void calibrations(InstrumentCalibrations of) throws IOException {
    json.text("instrument", of.instrument());
    json.number("withoutLine", of.withoutLine());
    json.answer("level", of.level().map(InstrumentCalibrations.Level::value));
    json.array("curves", of.curves(), this::curve);
    json.array("tracks", of.tracks(), this::track);
    json.array("blanks", of.blanks(), this::blank);
  }

  private void curve(InstrumentCalibrations.Curve curve) throws IOException {
    json.text("calibration", curve.calibration().key());
    json.text("at", curve.calibration().calibratedAt());
    json.number("slope", curve.slope());
    json.number("offset", curve.offset());
    json.object("step", curve.step(), this::step);
  }

  private void step(Step step) throws IOException {
    json.text("before", step.before().key());
    json.number("level", step.level());
    json.truth("insideCalibrators", step.insideCalibrators());
    json.number("reads", step.reads());
    json.number("change", step.change());
    json.answer(
        "standardUncertainty",
        step.uncertainty().map(InstrumentCalibrations.Uncertainty::standard));
    json.answer("lower95", step.uncertainty().map(u -> u.interval().lower()));
    json.answer("upper95", step.uncertainty().map(u -> u.interval().upper()));
    json.answer("limit", step.limit().map(InstrumentCalibrations.Limit::value));
    json.truth("beyond", step.isBeyond());
  }

  private void track(CalibrationTrack track) throws IOException {
    json.text("of", track.of().name().toLowerCase(Locale.ROOT));
    json.decimalOr("calibrator", track.calibrator(), "not of one calibrator");
    json.array(
        "marks",
        track.marks(),
        mark -> {
          json.text("calibration", mark.calibration().key());
          json.number("value", mark.value());
          json.answer("lower", mark.limits().map(l -> l.lowerAction()));
          json.answer("upper", mark.limits().map(l -> l.upperAction()));
          json.truth("beyond", mark.isBeyond());
        });
  }

  private void blank(BlankTrack track) throws IOException {
    json.text("kind", track.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    json.array(
        "marks",
        track.marks(),
        mark -> {
          json.text("at", mark.at());
          json.number("value", mark.value());
          json.answer("lower", mark.judged().map(j -> j.limits().lower()));
          json.answer("upper", mark.judged().map(j -> j.limits().upper()));
          json.answer("weightedMean", mark.judged().map(BlankTrack.Judged::weightedMean));
          json.answer("weightedLimit", mark.judged().map(BlankTrack.Judged::weightedLimit));
        });
  }

  private void agreement(AcidityAgreement a) throws IOException {
    json.text("instrument", a.instrument());
    json.text("otherMethod", a.otherMethod());
    json.number("factor", a.factor());
    json.number("unmatched", a.unmatched());
    json.answer("mean", a.centre().map(AcidityAgreement.Centre::mean));
    json.answer("lower95", a.centre().map(c -> c.interval().lower()));
    json.answer("upper95", a.centre().map(c -> c.interval().upper()));
    json.array(
        "pairs",
        a.pairs(),
        pair -> {
          json.text("sample", pair.acidNumber().sample());
          json.text("at", pair.at());
          json.number("residual", pair.residual());
          json.answer("lower", pair.limits().map(l -> l.action().lower()));
          json.answer("upper", pair.limits().map(l -> l.action().upper()));
          json.truth("takenOut", pair.takenOut());
        });
  }

  private void retests(RetestFindings r) throws IOException {
    json.text("instrument", r.instrument());
    json.number("samples", r.retests().size());
    json.number("unmatched", r.unmatched());
    json.number("sameSession", r.sameSession());
    json.number("repeated", r.repeated());
    json.number("notNumbers", r.notNumbers());
    json.answer("meanChange", r.all().map(RetestFindings.Move::mean));
    json.answer("lower95", r.all().map(m -> m.interval().lower()));
    json.answer("upper95", r.all().map(m -> m.interval().upper()));
    json.answer("chance", r.all().map(RetestFindings.Move::chance));
  }

  private void pairs(PairFindings p) throws IOException {
    json.text("instrument", p.instrument());
    json.number("pairs", p.pairs());
    json.answerText("form", p.scale().map(s -> s.form().name().toLowerCase(Locale.ROOT)));
    json.answer("constant", p.scale().map(PairFindings.Scale::constant));
    json.answer("proportional", p.scale().map(PairFindings.Scale::proportional));
    json.number("judgedInPeriod", p.judged().size());
    json.number("beyondWarning", p.beyondWarning());
    json.number("chanceOfSoManyWarnings", p.chanceOfSoManyWarnings());
    json.number("chanceOfSoManyActions", p.chanceOfSoManyActions());
    json.number("identical", p.zeros());
    json.answer("firstLessSecond", p.order().map(PairFindings.OrderEffect::mean));
    json.answer("firstLessSecondChance", p.order().map(PairFindings.OrderEffect::chance));
  }

  private void evenness(SampleEvenness e) throws IOException {
    json.text("instrument", e.instrument());
    json.text("material", e.material().key());
    json.answer("ratio", e.comparison().map(SampleEvenness.Comparison::ratio));
    json.answer("lower95", e.comparison().map(c -> c.interval().lower()));
    json.answer("upper95", e.comparison().map(c -> c.interval().upper()));
    json.answer("chance", e.comparison().map(SampleEvenness.Comparison::chance));
  }

  private void policy(PairsOfPeriod p) throws IOException {
    json.text("instrument", p.instrument());
    json.text("role", p.role().key());
    json.number("pairs", p.pairs());
    json.number("judged", p.judged());
    json.number("beyond", p.beyond().size());
    json.number("expected", p.expected());
    json.number("chanceOfSoMany", p.chanceOfSoMany());
    json.answerText(
        "standing", p.standing().map(s -> s.name().toLowerCase(Locale.ROOT).replace('_', '-')));
    json.startObject("paths");
    for (var path : p.paths().entrySet()) {
      json.number(path.getKey().name().toLowerCase(Locale.ROOT).replace('_', '-'), path.getValue());
    }
    json.endObject();
    json.texts("withoutReading", p.withoutReading().stream().map(Result::sample).toList());
  }
}
