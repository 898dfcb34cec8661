package org.quietline.report;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.quietline.assess.Answer;
import org.quietline.assess.Capability;
import org.quietline.assess.Concern;
import org.quietline.assess.Drift;
import org.quietline.assess.Findings;
import org.quietline.assess.LotLife;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutOfDate;
import org.quietline.assess.PersonPairs;
import org.quietline.assess.Replicates;
import org.quietline.assess.Signal;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.StreamFindings.Baseline;
import org.quietline.bench.Accounting;
import org.quietline.bench.ChartSettings.RestartAt;
import org.quietline.bench.Method.ProductLimits;

/**
 * {@code findings.json}: everything a review found, for other programs.
 *
 * <p>UTF-8, keys in a fixed order, numbers at full double precision. What cannot be said is {@code
 * null} with a {@code …Note} beside it. The same findings give the same bytes. Numbers are in the
 * method's unit.
 */
public final class FindingsJson {
  private static final int SCHEMA = 1;

  private final JsonFields json;

  private FindingsJson(JsonFields json) {
    this.json = json;
  }

  /**
   * Writes findings.
   *
   * @param findings the findings
   * @param out where to; it is flushed and left open
   * @throws IOException when writing fails
   */
  public static void write(Findings findings, OutputStream out) throws IOException {
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));
    printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
    try (JsonGenerator generator = new JsonFactory().createGenerator(out, JsonEncoding.UTF8)) {
      generator.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
      generator.setPrettyPrinter(printer);
      new FindingsJson(new JsonFields(generator)).root(findings);
      generator.writeRaw('\n');
    }
  }

  private void root(Findings findings) throws IOException {
    json.startObject();
    json.number("schema", SCHEMA);
    json.text("bench", findings.bench());
    json.text("from", findings.period().from());
    json.text("to", findings.period().to());
    json.text("now", findings.now().truncatedTo(ChronoUnit.MINUTES));
    json.text("settingsFingerprint", findings.settingsFingerprint());
    json.text("dataFingerprint", findings.dataFingerprint());
    intake(findings.accounting());
    json.array(
        "idleActions",
        findings.idleActions(),
        action -> {
          json.text("file", action.origin().file());
          json.number("line", action.origin().line());
          json.text("signal", action.matter());
          json.text("reason", IntakeWords.idle(action, findings));
        });
    new AcrossJson(json).across(findings);
    json.array("methods", findings.methods(), found -> method(found, findings));
    json.endObject();
  }

  private void intake(Accounting accounting) throws IOException {
    json.startObject("intake");
    json.number("rows", accounting.rows());
    json.number("takenIn", accounting.takenIn());
    json.number("metBefore", accounting.metBefore());
    json.number("setAside", accounting.rowsAside());
    json.number("inConflict", accounting.rowsInConflict());
    json.array(
        "files",
        accounting.files(),
        file -> {
          json.text("file", file.file());
          json.text("sha256", file.sha256());
          json.number("rows", file.rows());
        });
    json.array("aside", accounting.aside(), this::aside);
    json.array("settingsAside", accounting.settingsAside(), this::aside);
    new AcrossJson(json).intake(accounting);
    json.endObject();
  }

  private void aside(Accounting.SetAside aside) throws IOException {
    json.text("file", aside.file());
    json.number("line", aside.line());
    json.text("field", aside.field());
    json.text("text", aside.text());
    json.text("reason", aside.reason());
    json.number("rows", aside.rows());
  }

  private void method(MethodFindings found, Findings all) throws IOException {
    json.text("method", found.method().key());
    json.text("unit", found.method().unit());
    json.text("verdict", found.verdict().level().key());
    Reasons words = new Reasons(found, all);
    json.array("reasons", found.verdict().concerns(), concern -> reason(words, concern));
    json.array("replicates", found.replicates(), this::replicates);
    json.array("people", found.people(), this::person);
    json.array("streams", found.streams(), this::stream);
    json.array("drift", found.drift(), this::drift);
    new BatchJson(json).precision(found.precision());
    capability(found);
    json.array("outOfDate", found.outOfDate(), this::outOfDate);
    json.startObject("dates");
    json.number("resultsInPeriod", found.dates().results());
    json.number("withoutCalibration", found.dates().withoutCalibration());
    json.number("withoutReagentDate", found.dates().withoutReagentDate());
    json.array("reagentLots", found.dates().lots(), this::lot);
    json.endObject();
    new SlipJson(json).write(found.slips());
    new FreeJson(json).write(found.free());
    new StoryJson(json).write(found.stories());
    new BatchJson(json).batches(found.batches());
  }

  private void reason(Reasons words, Concern concern) throws IOException {
    json.text("level", concern.level().key());
    json.text("reason", words.sentence(concern));
  }

  private void replicates(Replicates replicates) throws IOException {
    json.text("instrument", replicates.instrument());
    json.text("role", replicates.role().key());
    json.text("kind", replicates.kind().key());
    json.number("results", replicates.pairs());
    json.number("leftOut", replicates.leftOut());
    json.number("repeatabilityDeviation", replicates.deviation());
    json.number("degreesOfFreedom", replicates.degreesOfFreedom());
    json.number("lower95", replicates.interval().lower());
    json.number("upper95", replicates.interval().upper());
    json.number("repeatabilityLimit", replicates.limit());
    json.number("pairsInPeriod", replicates.pairsInPeriod());
    json.number("beyondInPeriod", replicates.beyondInPeriod().size());
    json.number("chanceOfSoMany", replicates.chanceOfSoMany());
  }

  private void person(PersonPairs person) throws IOException {
    json.text("person", person.person());
    json.text("instrument", person.instrument());
    json.text("role", person.role().key());
    json.number("pairs", person.pairs());
    json.number("repeatabilityDeviation", person.deviation());
    json.number("othersPairs", person.othersPairs());
    json.number("othersDeviation", person.othersDeviation());
    json.number("chance", person.chance());
    json.truth("differs", person.differs());
  }

  private void stream(StreamFindings stream) throws IOException {
    json.text("instrument", stream.instrument());
    json.text("material", stream.material().key());
    json.number("results", stream.counted());
    json.number("resultsInPeriod", stream.pointsInPeriod());
    json.object("baseline", stream.baseline(), this::baseline);
    json.object("limits", stream.baseline(), this::limits);
    json.answer("expectedFalseSignals", stream.price().expectedStops());
    json.number("beyondWarning", stream.beyondWarning());
    json.array("signals", stream.signals(), this::signal);
    new StreamJson(json).write(stream);
    json.array("points", stream.points(), this::point);
    json.object(
        "bias",
        stream.bias(),
        bias -> {
          json.number("value", bias.difference());
          json.number("standardUncertainty", bias.standardUncertainty());
          json.truth("significant", bias.significant());
        });
  }

  private void baseline(Baseline baseline) throws IOException {
    json.number("results", baseline.results());
    json.text("from", baseline.from());
    json.text("to", baseline.to());
    json.text("chosenBy", baseline.chosen() ? "a person" : "first results");
    json.truth("provisional", baseline.provisional());
    json.number("centre", baseline.centre());
    json.number("deviation", baseline.deviation());
    json.number("meanMovingRange", baseline.meanMovingRange());
    json.number("sampleDeviation", baseline.sampleDeviation());
  }

  private void limits(Baseline baseline) throws IOException {
    json.text("from", baseline.limitsFrom().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    json.number("lowerAction", baseline.limits().lowerAction());
    json.number("lowerWarning", baseline.limits().lowerWarning());
    json.number("upperWarning", baseline.limits().upperWarning());
    json.number("upperAction", baseline.limits().upperAction());
    json.number("movingRangeUpper", baseline.limits().movingRangeUpper());
    json.answer("readingsRangeUpper", baseline.readingsRangeUpper());
    json.number("weightedLower", baseline.weightedLower());
    json.number("weightedUpper", baseline.weightedUpper());
  }

  private void point(StreamFindings.Point point) throws IOException {
    json.text("at", point.at());
    json.numberOr("value", point.value(), "only a bound");
    json.numberOr("apart", point.range(), "no pair of numbers");
    json.numberOr("weightedMean", point.weightedMean(), "no limits, or not counted");
    json.textOr("calibration", point.calibration(), NO_CALIBRATION);
    json.truth("inBaseline", point.inBaseline());
    json.object(
        "judgedBy",
        point.judgedBy().map(Answer::of).orElse(Answer.cannotSay("there were no limits")),
        new StreamJson(json)::inForce);
    json.texts("since", point.since().stream().map(RestartAt::key).toList());
    json.truth("restarted", point.restarted());
    json.truth("excluded", point.excluded());
    json.text("file", point.file());
    json.number("line", point.line());
  }

  private void signal(Signal signal) throws IOException {
    SignalJson.write(json, signal);
  }

  private static final String NO_CALIBRATION = "no calibration is recorded";

  private void drift(Drift drift) throws IOException {
    json.text("instrument", drift.instrument());
    json.textOr("calibration", drift.calibration().map(c -> c.key()), NO_CALIBRATION);
    json.textOr("calibratedAt", drift.calibration().map(c -> c.calibratedAt()), NO_CALIBRATION);
    json.textOr("expires", drift.expires(), "no calibration-valid-days is set, or no calibration");
    json.number("windows", drift.windows());
    json.number("results", drift.deviations().size());
    json.answer("referenceUncertainty", drift.referenceUncertainty());
    json.answer("slopePerDay", drift.line().map(Drift.Line::slopePerDay));
    json.answer("slopeLower95", drift.line().map(l -> l.slope().lower()));
    json.answer("slopeUpper95", drift.line().map(l -> l.slope().upper()));
    json.answer("biasNow", drift.line().map(Drift.Line::biasNow));
    json.answer("biasAtExpiry", drift.line().map(Drift.Line::biasAtExpiry));
    json.answer("largestHiddenDrift", drift.line().map(Drift.Line::largestHidden));
    json.answer("chanceBeyondNow", drift.chanceBeyondNow());
    json.answer("chanceBeyondAtExpiry", drift.chanceBeyondAtExpiry());
    json.answerText("lastSafeDay", drift.lastSafeDay());
    json.text("decision", drift.decision().key());
    json.answer("pooledResults", drift.pool().map(p -> (double) p.results()));
    json.answer("pooledWindows", drift.pool().map(p -> (double) p.windows()));
    json.answer("followedToDay", drift.pool().map(Drift.Pool::followedTo));
    json.answer("residualDeviation", drift.pool().map(Drift.Pool::residualDeviation));
    json.answerText("driftForm", drift.pool().map(p -> p.form().key()));
    json.answerText("driftFormFrom", drift.pool().map(p -> p.formFrom().key()));
    json.answer(
        "chanceOfShare",
        drift
            .pool()
            .value()
            .filter(p -> p.chanceOfShare().isPresent())
            .map(p -> Answer.of(p.chanceOfShare().getAsDouble()))
            .orElse(Answer.cannotSay("needs control results at two levels above zero")));
    json.answer("averageBiasAtExpiry", drift.pool().map(p -> p.average().bias()));
    json.answer(
        "nextChanceBeyondAtExpiry",
        drift.pool().value().isEmpty()
            ? Answer.cannotSay(drift.pool().why().orElseThrow())
            : chance(drift.pool().value().get().next()));
    json.answer("windowsChecked", drift.count().map(c -> (double) c.checked()));
    json.answer("windowsOutside", drift.count().map(c -> (double) c.outside()));
    json.answer("reliabilityLower95", drift.count().map(c -> Math.min(c.byRate(), c.byShare())));
    json.answerText("testsToSettle", drift.settling().map(s -> joined(s.days())));
  }

  private static Answer<Double> chance(Answer<Drift.Ahead> ahead) {
    return ahead.value().isPresent() && ahead.value().get().chanceBeyond().isEmpty()
        ? Answer.cannotSay("no allowable-bias is set for this method")
        : ahead.map(a -> a.chanceBeyond().orElseThrow());
  }

  private static String joined(List<LocalDate> days) {
    return days.stream().map(LocalDate::toString).collect(Collectors.joining(", "));
  }

  private void capability(MethodFindings found) throws IOException {
    json.object("capability", found.capability(), c -> capability(found, c));
  }

  private void capability(MethodFindings found, Capability capability) throws IOException {
    Optional<ProductLimits> limits = found.method().limits();
    json.number("results", capability.batches().size());
    json.number("leftOut", capability.leftOut());
    json.decimalOr(
        "limit",
        limits.flatMap(FindingsJson::onlyLimit),
        "there are two, lowerLimit and upperLimit");
    json.decimalOr("lowerLimit", limits.flatMap(ProductLimits::lower), "none is set");
    json.decimalOr("upperLimit", limits.flatMap(ProductLimits::upper), "none is set");
    json.number("mean", capability.mean());
    json.number("deviation", capability.deviation());
    json.number("beyond", capability.beyond());
    json.number("onlyABoundBeyond", capability.censoredBeyond());
    json.number("usedAsBounds", capability.bounds());
    json.text("shape", capability.shape().key());
    json.numberOr("shapeChance", capability.normalChance(), "some results are only a bound");
    json.answer("ppk", capability.index().map(Capability.Index::ppk));
    json.answer("ppkLower95", capability.index().map(Capability.Index::lower95));
    json.answer(
        "expectedBeyondPerMillion",
        capability.index().map(Capability.Index::expectedBeyondPerMillion));
    json.answer(
        "atMostBeyondPerMillion", capability.index().map(Capability.Index::atMostBeyondPerMillion));
    json.answer("shareBeyondLower95", capability.index().map(i -> i.beyond95().lower()));
    json.answer("shareBeyondUpper95", capability.index().map(i -> i.beyond95().upper()));
    json.answer("measurementShare", capability.measurementShare());
  }

  /** The limit itself where there is one; where there are two, both stand under their own names. */
  private static Optional<BigDecimal> onlyLimit(ProductLimits limits) {
    if (limits.lower().isPresent() && limits.upper().isPresent()) {
      return Optional.empty();
    }
    return limits.upper().or(limits::lower);
  }

  private void lot(LotLife life) throws IOException {
    String undated = "reagents.csv gives no date that ends this lot";
    json.text("lot", life.lot());
    json.textOr("lastDay", life.until().map(LotLife.Until::lastDay), undated);
    json.textOr("by", life.until().map(u -> u.by().key()), undated);
    if (life.until().isPresent()) {
      json.number("daysLeft", life.until().get().daysLeft());
    } else {
      json.nothing("daysLeft", undated);
    }
  }

  private void outOfDate(OutOfDate late) throws IOException {
    json.text("kind", late.kind().key());
    json.text("id", late.id());
    json.text("status", late.open() ? "open" : "answered");
    json.text("what", late.what());
    json.text("lastDay", late.lastDay());
    json.number("daysPast", late.daysPast());
    json.text("at", late.result().takenAt());
    json.text("instrument", late.result().instrument());
    json.text("role", late.result().role().key());
    json.text("sample", late.result().sample());
    json.text("file", late.result().origin().file());
    json.number("line", late.result().origin().line());
    json.truth("inPeriod", late.inPeriod());
  }
}
