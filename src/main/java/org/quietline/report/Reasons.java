package org.quietline.report;

import java.time.LocalDate;
import java.util.List;
import org.quietline.assess.Concern;
import org.quietline.assess.Drift;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.OutOfDate;
import org.quietline.assess.PairsOfPeriod;
import org.quietline.assess.PersonPairs;
import org.quietline.assess.Replicates;
import org.quietline.assess.Signal;
import org.quietline.assess.StreamFindings;
import org.quietline.bench.Calibration;
import org.quietline.bench.Method;

/** Concerns as sentences: what was seen, its size, compared with what. */
final class Reasons {
  private final MethodFindings findings;
  private final Method method;
  private final LocalDate today;
  private final Numbers numbers;
  private final int pointsInPeriod;

  Reasons(MethodFindings findings, Findings all) {
    this.findings = findings;
    method = findings.method();
    today = all.now().toLocalDate();
    numbers = new Numbers(method.decimals());
    pointsInPeriod = findings.streams().stream().mapToInt(StreamFindings::pointsInPeriod).sum();
  }

  /** All reasons of a verdict, gravest first; never empty. */
  static List<String> of(MethodFindings findings, Findings all) {
    Reasons reasons = new Reasons(findings, all);
    List<Concern> concerns = findings.verdict().concerns();
    return concerns.isEmpty()
        ? List.of(reasons.steady())
        : concerns.stream().map(reasons::sentence).toList();
  }

  private String steady() {
    return "No signal under the rules stated, on "
        + Numbers.count(pointsInPeriod, "control result", "control results")
        + " of the period; slow moves show late.";
  }

  /** One sentence for one concern. */
  String sentence(Concern concern) {
    if (concern instanceof Concern.OpenStopSignals c) {
      return open(c.stream(), c.open(), "stop signal", "stop signals");
    } else if (concern instanceof Concern.OpenNotices c) {
      return open(c.stream(), c.open(), "notice", "notices");
    } else if (concern instanceof Concern.CalibrationExpired c) {
      return expired(c.drift());
    } else if (concern instanceof Concern.RecalibrateNow c) {
      return now(c.drift());
    } else if (concern instanceof Concern.RecalibrateEarly c) {
      return early(c);
    } else if (concern instanceof Concern.DriftUnknown c) {
      return unknown(c.drift());
    } else if (concern instanceof Concern.UsedPastDate c) {
      return pastDate(c.results());
    } else if (concern instanceof Concern.PersonDiffers c) {
      return person(c.person());
    } else if (concern instanceof Concern.PairsDisagree c) {
      return pairs(c.pairs());
    } else if (concern instanceof Concern.TooFewResults c) {
      return tooFew(c.stream());
    } else if (concern instanceof Concern.NoRecentControls c) {
      return "No control result on "
          + c.instrument()
          + " since "
          + Dates.full(c.last())
          + ": nothing can be said about results made there since.";
    } else if (concern instanceof Concern.NoStopRules) {
      return "No stop rule in use watches the level of results (bench.toml, [chart]), so no shift can hold"
          + " this method.";
    } else if (concern instanceof Concern.PairsIdentical c) {
      return identical(c.replicates());
    } else if (concern instanceof Concern.Biased c) {
      return biased(c.stream());
    } else if (concern instanceof Concern.LooksLikeSlips c) {
      return SlipWords.open(c.open(), method);
    } else if (concern instanceof Concern.OpenFreeSignals c) {
      return FreeWords.open(c, method);
    } else if (concern instanceof Concern.FreeNotice c) {
      return new FreeWords(findings).notice(c.notice());
    } else if (concern instanceof Concern.LimitsDoNotFit c) {
      return name(c.stream())
          + ": "
          + LimitsWords.diagnosis(c.stream().diagnosis().value().orElseThrow());
    } else if (concern instanceof Concern.RowsInConflict c) {
      return ConflictWords.reason(c.open());
    } else if (concern instanceof Concern.RecordsContradict c) {
      return ContradictionWords.reason(c);
    }
    String where =
        concern instanceof Concern.NoControls c
            ? c.instrument().map(i -> " on " + i).orElse("")
            : "";
    return "There is no control result"
        + where
        + ", so nothing can be said about "
        + (where.isEmpty() ? "this method." : "results made there.");
  }

  private static String identical(Replicates pairs) {
    return "All "
        + pairs.pairs()
        + " pairs of "
        + pairs.instrument()
        + " ("
        + pairs.role().key()
        + ") are twice the same number: copied, or read too coarsely to show how readings agree.";
  }

  private String open(StreamFindings stream, List<Signal> open, String one, String many) {
    Signal latest = open.get(open.size() - 1);
    String count = Numbers.count(open.size(), one, many);
    String verb = open.size() == 1 ? " is open for " : " are open for ";
    String which = open.size() == 1 ? "" : "the latest ";
    return count
        + verb
        + name(stream)
        + ", "
        + which
        + "of "
        + Dates.full(RuleWords.day(latest))
        + ": "
        + RuleWords.seen(latest, method)
        + "; no cause is recorded.";
  }

  private String expired(Drift drift) {
    String end =
        drift
            .expires()
            .map(
                day ->
                    " ended on "
                        + Dates.full(day)
                        + ", "
                        + Numbers.count(Dates.days(day, today), "day", "days")
                        + " ago")
            .orElse(" is past its validity");
    return calibration(drift) + end + ", and results need a calibration in force.";
  }

  private String now(Drift drift) {
    String allowed =
        drift.allowance().isPresent()
            ? "the allowance of " + numbers.fine(drift.allowance().getAsDouble()) + " " + unit()
            : "the allowance";
    String size =
        drift
            .line()
            .value()
            .map(
                line ->
                    "the control is off by "
                        + numbers.signed(line.biasNow())
                        + " (95 %: "
                        + numbers.signed(line.now().lower())
                        + " to "
                        + numbers.signed(line.now().upper())
                        + ")")
            .orElse("the control is off");
    Double chance = drift.chanceBeyondNow().value().orElse(1.0);
    if (chance <= 0.5) {
      return drift
              .lastSafeDay()
              .value()
              .map(
                  day ->
                      "The last safe day of " + lowerCalibration(drift) + " was " + Dates.full(day))
              .orElse(calibration(drift) + " has no safe day left")
          + ": "
          + size
          + ", and the chance of being beyond "
          + allowed
          + " is "
          + Numbers.percent(chance)
          + ".";
    }
    return calibration(drift)
        + " has more likely than not carried results beyond "
        + allowed
        + ": "
        + size
        + ".";
  }

  private String early(Concern.RecalibrateEarly early) {
    Drift drift = early.drift();
    String size =
        drift
            .line()
            .value()
            .map(line -> "the control moves by " + slope(line) + " a day, and ")
            .orElse("");
    String allowed =
        drift.allowance().isPresent()
            ? numbers.fine(drift.allowance().getAsDouble()) + " " + unit()
            : "the allowance";
    return calibration(drift)
        + " will not last to its date: "
        + size
        + "staying within "
        + allowed
        + " is safe to "
        + Dates.full(early.lastSafeDay())
        + " only.";
  }

  private static String slope(Drift.Line line) {
    return Numbers.signedLike(
        line.slopePerDay(), (line.slope().upper() - line.slope().lower()) / 2);
  }

  private String unknown(Drift drift) {
    if (drift.calibration().isEmpty()) {
      return "No calibration of "
          + drift.instrument()
          + " is recorded, so nothing can be said about its drift.";
    }
    String why =
        drift
            .line()
            .value()
            .map(line -> undecided(drift, line))
            .or(() -> drift.line().why())
            .orElse("the data do not settle it");
    return "Whether " + lowerCalibration(drift) + " lasts, cannot be said: " + why + ".";
  }

  private String undecided(Drift drift, Drift.Line line) {
    if (drift.allowance().isEmpty()) {
      return drift.lastSafeDay().why().orElse("no allowance is set");
    }
    String chances =
        drift
            .chanceBeyondNow()
            .value()
            .map(
                now ->
                    ", and the chance of being beyond "
                        + numbers.fine(drift.allowance().getAsDouble())
                        + " is "
                        + Numbers.percent(now)
                        + " today"
                        + drift
                            .chanceBeyondAtExpiry()
                            .value()
                            .map(then -> " and " + Numbers.percent(then) + " at expiry")
                            .orElse(""))
            .orElse("");
    return restsOn(drift)
        + " the control is off by "
        + numbers.signed(line.biasNow())
        + " (95 %: "
        + numbers.signed(line.now().lower())
        + " to "
        + numbers.signed(line.now().upper())
        + ") "
        + unit()
        + chances;
  }

  /** What the line rests on: the results of the window, and those of earlier ones beside them. */
  private static String restsOn(Drift drift) {
    String own = Numbers.count(drift.deviations().size(), "control result", "control results");
    return drift
        .pool()
        .value()
        .filter(p -> p.windows() > 1)
        .map(
            p ->
                "from "
                    + own
                    + " of this window and those of earlier ones, "
                    + p.results()
                    + " of "
                    + p.windows()
                    + " windows in all,")
        .orElse("from " + own);
  }

  private String pastDate(List<OutOfDate> results) {
    OutOfDate first = results.get(0);
    String count =
        results.size() == 1
            ? "1 result was made past a date: "
            : results.size() + " results were made past a date, the first being ";
    return count
        + first.result().sample()
        + " on "
        + Dates.full(first.result().takenAt())
        + ", "
        + Numbers.count(first.daysPast(), "day", "days")
        + " after "
        + Reasons.what(first)
        + ".";
  }

  /** What was past its date: "calibration C-31 ended". */
  static String what(OutOfDate past) {
    return switch (past.kind()) {
      case CALIBRATION_VALIDITY -> "calibration " + past.what() + " ended";
      case REAGENT_EXPIRY -> "reagent lot " + past.what() + " expired";
      case REAGENT_SHELF_LIFE -> "the shelf life of opened reagent lot " + past.what() + " ended";
      case REAGENT_WARMTH ->
          "the shelf life of opened reagent lot " + past.what() + ", shortened by warmth, ended";
      case REAGENT_FROZEN ->
          "the last day before reagent lot " + past.what() + " stood below 0 °C, which was";
    };
  }

  private String person(PersonPairs person) {
    return "The "
        + person.role().key()
        + " pairs of "
        + person.person()
        + " on "
        + person.instrument()
        + " are further apart than those of the others: deviation "
        + Numbers.uncertainty(person.deviation())
        + " against "
        + Numbers.uncertainty(person.othersDeviation())
        + " "
        + unit()
        + ", from "
        + person.pairs()
        + " and "
        + person.othersPairs()
        + " pairs (chance "
        + Numbers.percent(person.chance())
        + ").";
  }

  private static String pairs(PairsOfPeriod pairs) {
    return pairs.beyond().size()
        + " of "
        + Numbers.count(pairs.judged(), "pair", "pairs")
        + " of the period ("
        + pairs.role().key()
        + ", "
        + pairs.instrument()
        + ") are further apart than the pairs before them allow, where chance expects "
        + Numbers.fixed(pairs.expected(), 1)
        + " (chance of so many: "
        + Numbers.percent(pairs.chanceOfSoMany())
        + ").";
  }

  private static String tooFew(StreamFindings stream) {
    String count = name(stream) + " has " + Numbers.count(stream.counted(), "result", "results");
    if (stream.baseline().why().isPresent() && stream.next().isPresent()) {
      return count
          + "; its limits are wide, from what was known beforehand (of its own it "
          + stream.baseline().why().get()
          + "), and settle with 15.";
    }
    if (stream.baseline().why().isPresent()) {
      return count + ", and no limits yet (" + stream.baseline().why().get() + ").";
    }
    int base = stream.baseline().value().map(b -> b.results()).orElse(0);
    return base == stream.counted()
        ? count + "; its limits are provisional and wide until it has 15."
        : count
            + ", but its baseline only "
            + base
            + "; from fewer than 15, limits are provisional.";
  }

  private String biased(StreamFindings stream) {
    String assigned =
        stream.material().assignedValue().map(Numbers::written).map(v -> " " + v).orElse("");
    return stream
        .bias()
        .value()
        .map(
            bias ->
                name(stream)
                    + " reads "
                    + numbers.fine(Math.abs(bias.difference()))
                    + " "
                    + unit()
                    + (bias.difference() < 0 ? " below" : " above")
                    + " its assigned value"
                    + assigned
                    + ", more than chance explains (standard uncertainty of the difference "
                    + Numbers.uncertainty(bias.standardUncertainty())
                    + ").")
        .orElse(name(stream) + " reads off its assigned value.");
  }

  private String unit() {
    return method.unit().symbol();
  }

  /** A stream by its name: "QC-TG-A on PM-1". */
  static String name(StreamFindings stream) {
    return stream.material().key() + " on " + stream.instrument();
  }

  private static String calibration(Drift drift) {
    return "Calibration " + key(drift) + " on " + drift.instrument();
  }

  private static String lowerCalibration(Drift drift) {
    return "calibration " + key(drift) + " on " + drift.instrument();
  }

  private static String key(Drift drift) {
    return drift.calibration().map(Calibration::key).orElse("(not recorded)");
  }
}
