package org.quietline.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.quietline.assess.Concern;
import org.quietline.assess.Drift;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Signal;
import org.quietline.assess.StreamFindings;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.report.Block.Step;

/** What to do about a method, the most pressing first. */
final class Steps {
  /** The most steps a page lists. */
  static final int MOST = 6;

  private static final int MOST_IDS = 8;
  private static final String NOW = "now";
  private static final String NEXT = "at the next session";

  private final Map<String, Step> steps = new LinkedHashMap<>();

  private Steps() {}

  /** The steps of one method, at most {@link #MOST} and at least one. */
  static List<Step> of(MethodFindings findings) {
    Steps steps = new Steps();
    findings.verdict().concerns().forEach(steps::add);
    findings.drift().forEach(steps::routine);
    if (steps.steps.isEmpty()) {
      steps.put(
          findings.drift().isEmpty()
              ? "Measure a control each week."
              : "Measure a control after the next calibration, and each week until then.",
          NEXT,
          false);
    }
    List<Step> all = new ArrayList<>(steps.steps.values());
    if (all.size() <= MOST) {
      return all;
    }
    int more = all.size() - MOST + 1;
    List<Step> first = new ArrayList<>(all.subList(0, MOST - 1));
    boolean pressing = all.subList(MOST - 1, all.size()).stream().anyMatch(Step::pressing);
    first.add(
        new Step(
            "Then go through the other " + more + " things asked above.", "", "next", pressing));
    return first;
  }

  private void put(String what, String by, boolean pressing) {
    steps.putIfAbsent(what, new Step(what, "", by, pressing));
  }

  private void add(Concern concern) {
    if (concern instanceof Concern.OpenStopSignals c) {
      put(
          "Report no result of this method until the cause is found and mended and a control is good.",
          NOW,
          true);
      record(c.open(), NOW, true);
    } else if (concern instanceof Concern.OpenNotices c) {
      record(c.open(), NEXT, false);
    } else if (concern instanceof Concern.CalibrationExpired c) {
      recalibrate(c.drift(), NOW);
      put("Report no result of this method until then.", NOW, true);
    } else if (concern instanceof Concern.RecalibrateNow c) {
      recalibrate(c.drift(), NOW);
      put("Look again at results near a limit " + since(c.drift()) + ".", NOW, true);
    } else if (concern instanceof Concern.RecalibrateEarly c) {
      recalibrate(c.drift(), "by " + Dates.full(c.lastSafeDay()));
    } else if (concern instanceof Concern.DriftUnknown c && c.drift().calibration().isEmpty()) {
      put(
          "Write the calibrations of " + c.drift().instrument() + " into calibrations.csv.",
          NEXT,
          false);
    } else if (concern instanceof Concern.DriftUnknown c) {
      put(
          "Measure a control on " + c.drift().instrument() + ", so that drift can be judged.",
          NEXT,
          false);
    } else if (concern instanceof Concern.UsedPastDate c) {
      put(
          "Decide on "
              + Numbers.count(c.results().size(), "result", "results")
              + " made past a date; retest what was or will be released on them.",
          NOW,
          true);
    } else {
      addMilder(concern);
    }
  }

  private void addMilder(Concern concern) {
    if (concern instanceof Concern.PersonDiffers c) {
      put(
          "Let " + c.person().person() + " and another person test one sample side by side.",
          NEXT,
          false);
    } else if (concern instanceof Concern.PairsDisagree c) {
      put(
          "Look for the cause of distant pairs on "
              + c.pairs().instrument()
              + ": bubbles, vials, mixing, timing.",
          NEXT,
          false);
    } else if (concern instanceof Concern.TooFewResults c && isChosen(c.stream())) {
      put("Choose a baseline of at least 15 results in bench.toml.", NEXT, false);
    } else if (concern instanceof Concern.TooFewResults c) {
      put("Measure " + control(c.stream()) + " each week until 15 results are there.", NEXT, false);
    } else if (concern instanceof Concern.NoStopRules) {
      put("Put stop-rules back into [chart] in bench.toml.", NEXT, false);
    } else if (concern instanceof Concern.PairsIdentical c) {
      put(
          "Find out whether second readings on "
              + c.replicates().instrument()
              + " are taken or copied.",
          NEXT,
          false);
    } else if (concern instanceof Concern.Biased c) {
      put(
          "Check the assigned value of "
              + c.stream().material().key()
              + " and the calibrators; compare with an outside laboratory.",
          NEXT,
          false);
    } else if (concern instanceof Concern.LooksLikeSlips c) {
      Step step = SlipWords.step(c.open(), NEXT);
      steps.putIfAbsent(step.detail(), step);
    } else if (concern instanceof Concern.RowsInConflict c) {
      ask(
          "Choose the rows that hold, in actions.csv (use_row); the last pages show both.",
          ConflictWords.ids(c.open()));
    } else if (concern instanceof Concern.RecordsContradict c) {
      ask(ContradictionWords.step(c.check()), ContradictionWords.ids(c.open()));
    } else if (concern instanceof Concern.OpenFreeSignals c) {
      record(c.open(), c.weight() == Weight.STOP ? NOW : NEXT, c.weight() == Weight.STOP);
    } else if (concern instanceof Concern.FreeNotice c) {
      put(FreeWords.step(c.notice()), NEXT, false);
    } else if (concern instanceof Concern.LimitsDoNotFit) {
      put(
          "Look for the cause, then choose limits that fit: limits-from in bench.toml.",
          NEXT,
          false);
    } else {
      put("Measure a control before the next result is relied on.", NOW, true);
    }
  }

  private void ask(String what, String ids) {
    steps.putIfAbsent(what, new Step(what, ids, NEXT, false));
  }

  private static String since(Drift drift) {
    return drift
        .lastSafeDay()
        .value()
        .map(day -> "tested after " + Dates.full(day))
        .orElse("since the last good control");
  }

  private void record(List<Signal> open, String by, boolean pressing) {
    String ids =
        open.stream().limit(MOST_IDS).map(s -> s.id().toString()).collect(Collectors.joining("\n"));
    int more = open.size() - MOST_IDS;
    String detail = ids + (more > 0 ? " and " + more + " more in findings.json" : "");
    String what =
        open.size() == 1
            ? "Find the cause of the signal and record it in actions.csv."
            : "Find the cause of each signal and record it in actions.csv.";
    steps.putIfAbsent(detail, new Step(what, detail, by, pressing));
  }

  private void recalibrate(Drift drift, String by) {
    put(
        "Check the control as found, recalibrate " + drift.instrument() + ", check it as left.",
        by,
        NOW.equals(by));
  }

  private void routine(Drift drift) {
    boolean asked =
        drift.decision() == Drift.Decision.RECALIBRATE_NOW
            || drift.decision() == Drift.Decision.RECALIBRATE_BY
            || drift.decision() == Drift.Decision.EXPIRED;
    if (!asked && drift.expires().isPresent()) {
      LocalDate day = drift.expires().get();
      recalibrate(drift, "by " + Dates.full(day));
    }
  }

  private static boolean isChosen(StreamFindings stream) {
    return stream
        .baseline()
        .value()
        .map(b -> b.chosen() || b.results() < stream.counted())
        .orElse(false);
  }

  private static String control(StreamFindings stream) {
    return "control " + Reasons.name(stream);
  }
}
