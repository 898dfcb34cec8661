package org.quietline.report;

import java.io.IOException;
import java.util.OptionalInt;
import org.quietline.assess.Answer;
import org.quietline.assess.Diagnosis;
import org.quietline.assess.InForce;
import org.quietline.assess.Price;
import org.quietline.assess.Revision;
import org.quietline.assess.StreamFindings;

/** The limits of a stream in {@code findings.json}: next, price, diagnosis, revisions. */
final class StreamJson {
  private final JsonFields json;

  StreamJson(JsonFields json) {
    this.json = json;
  }

  void write(StreamFindings stream) throws IOException {
    json.textOr("choiceNotUsed", stream.choiceNotUsed(), "every chosen baseline is in force");
    json.object(
        "nextLimits",
        stream
            .next()
            .map(Answer::of)
            .orElse(Answer.cannotSay("nothing is known beforehand, and too few results")),
        this::inForce);
    price(stream.price());
    json.object("diagnosis", stream.diagnosis(), this::diagnosis);
    json.array("revisions", stream.revisions(), this::revision);
    json.object("proposedRevision", stream.proposal(), this::revision);
  }

  void inForce(InForce limits) throws IOException {
    json.text("origin", limits.origin().key());
    json.number("results", limits.results());
    json.textOr("borrowedFrom", limits.from(), "from no other material");
    json.number("centre", limits.centre());
    json.number("lowerAction", limits.lowerAction());
    json.number("lowerWarning", limits.lowerWarning());
    json.number("upperWarning", limits.upperWarning());
    json.number("upperAction", limits.upperAction());
  }

  private void price(Price price) throws IOException {
    json.number("stopSignalsInPeriod", price.stopsSeen());
    json.numberOr("testsPerWeek", price.testsPerWeek(), "needs 3 results within three months");
    json.number("resultsBetweenRestarts", price.betweenRestarts());
    if (price.delays().value().isPresent()) {
      json.array("delays", price.delays().value().get(), this::delay);
    } else {
      json.nothing("delays", price.delays().why().orElse(""));
    }
  }

  private void delay(Price.Delay delay) throws IOException {
    json.number("shift", delay.shift());
    json.number("deviations", delay.deviations());
    json.truth("allowableBias", delay.allowance());
    json.number("chanceWithinFour", delay.withinFour());
    results("halfWithin", delay.half());
    results("nineTenthsWithin", delay.nineTenths());
  }

  private void results(String name, double results) throws IOException {
    if (Double.isInfinite(results)) {
      json.nothing(name, "over 500 results");
    } else {
      json.number(name, (long) results);
    }
  }

  private void diagnosis(Diagnosis d) throws IOException {
    json.text("pattern", d.pattern().key());
    json.number("results", d.results());
    json.number("calibrations", d.calibrations());
    json.number("deviationRatio", d.deviationRatio());
    json.number("lag1", d.lag1());
    json.number("vonNeumannRatio", d.vonNeumann());
    json.number("chanceSoSmall", d.chanceSoSmall());
    json.number("chanceSoLarge", d.chanceSoLarge());
    String untold = "calibrations cannot be told apart, or one result each";
    json.numberOr("chanceCalibrations", d.chanceCalibrations(), untold);
    json.numberOr("calibrationsOverWithinLower95", d.calibrationsLower(), untold);
    json.numberOr("calibrationsOverWithinUpper95", d.calibrationsUpper(), untold);
    OptionalInt needed = d.calibrationsNeeded();
    if (needed.isPresent()) {
      json.number("calibrationsNeeded", needed.getAsInt());
    } else {
      json.nothing("calibrationsNeeded", "this is not what is missing");
    }
  }

  private void revision(Revision r) throws IOException {
    json.text("from", r.from());
    json.text("to", r.to());
    json.textOr("approvedBy", r.approvedBy(), "nobody is named");
    json.textOr("reason", r.reason(), "none is given");
    json.number("oldResults", r.old().results());
    json.number("oldMean", r.old().mean());
    json.number("oldDeviation", r.old().deviation());
    json.number("newResults", r.fresh().results());
    json.number("newMean", r.fresh().mean());
    json.number("newDeviation", r.fresh().deviation());
    json.number("varianceRatio", r.ratio());
    json.number("varianceRatioChance", r.ratioChance());
    json.number("t", r.t());
    json.number("tChance", r.tChance());
    json.text("advice", r.advice().key());
  }
}
