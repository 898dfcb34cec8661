package org.quietline.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.quietline.assess.Concern;
import org.quietline.assess.Drift;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.StreamFindings;
import org.quietline.assess.Verdict;
import org.quietline.bench.Calibration;
import org.quietline.report.Block.MethodRow;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Place;
import org.quietline.report.Block.Signatures;
import org.quietline.report.Block.Step;
import org.quietline.report.Block.Title;

/** The first page: one row a method, what is open, what came in, who signs. */
final class FrontPage {
  /** With more methods than this there is room for one step a method only. */
  private static final int FEW_METHODS = 3;

  private static final int STEPS_OF_A_HOLD = 3;

  private FrontPage() {}

  static Page of(Findings findings) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Title(
            Dates.period(findings.period()),
            findings.bench() + " · as of " + Dates.full(findings.now()),
            Optional.empty()));
    blocks.add(Paragraph.lead(answer(findings)));
    IntakeWords.alarms(findings)
        .forEach(words -> blocks.add(Paragraph.body(words).in(Colour.ACCENT)));
    findings.methods().forEach(m -> blocks.add(row(m, findings)));
    blocks.add(FrontFacts.of(findings));
    blocks.add(
        new Signatures(
            List.of(
                new Place(
                    "Tested",
                    "I made or checked these tests, and I know of no row that should be here and"
                        + " is not."),
                new Place(
                    "Reviewed",
                    "I have read every page, and what it asks for is done or decided. Signing"
                        + " releases no batch."))));
    return new Page("At a glance", blocks);
  }

  /** How many methods stand where, gravest first. */
  static String answer(Findings findings) {
    if (findings.methods().isEmpty()) {
      return "The bench has no method that could be judged.";
    }
    List<String> parts = new ArrayList<>();
    add(parts, findings, Verdict.Level.HOLD, "is on hold", "are on hold");
    add(parts, findings, Verdict.Level.WATCH, "needs watching", "need watching");
    add(parts, findings, Verdict.Level.STEADY, "is steady", "are steady");
    String all = Numbers.count(findings.methods().size(), "method", "methods");
    return "Of " + all + ", " + String.join(", ", parts) + ".";
  }

  private static void add(
      List<String> parts, Findings findings, Verdict.Level level, String one, String many) {
    long n = findings.methods().stream().filter(m -> m.verdict().level() == level).count();
    if (n > 0) {
      parts.add(Numbers.count(n, one, many));
    }
  }

  private static MethodRow row(MethodFindings method, Findings findings) {
    List<String> reasons = Reasons.of(method, findings);
    int more = reasons.size() - 1;
    String reason =
        reasons.get(0)
            + (more == 0
                ? ""
                : " " + Numbers.count(more, "more reason", "more reasons") + " on its page.");
    List<Step> steps = Steps.of(method);
    LocalDate today = findings.now().toLocalDate();
    List<Paragraph> calibration =
        method.drift().isEmpty()
            ? List.of(ink("No calibration is recorded."))
            : method.drift().stream().flatMap(d -> calibration(d, today).stream()).toList();
    Optional<StreamFindings> stream = liveliest(method);
    Optional<Miniature> picture = stream.flatMap(s -> Pictures.miniature(s, findings.now()));
    return new MethodRow(
        method.method().title(),
        MethodPage.badge(method.verdict(), ""),
        reason,
        calibration,
        picture,
        pictureWords(method, stream, picture, findings),
        steps.subList(0, Math.min(steps.size(), stepsShown(method, findings))));
  }

  private static int stepsShown(MethodFindings method, Findings findings) {
    boolean room = findings.methods().size() <= FEW_METHODS;
    return room && method.verdict().level() == Verdict.Level.HOLD ? STEPS_OF_A_HOLD : 1;
  }

  /** The stream of the gravest concern, else the one with the most results. */
  private static Optional<StreamFindings> liveliest(MethodFindings method) {
    Optional<StreamFindings> concerned =
        method.verdict().concerns().stream()
            .flatMap(
                c -> c instanceof Concern.OpenStopSignals s ? Stream.of(s.stream()) : Stream.of())
            .findFirst();
    return concerned.or(
        () ->
            method.streams().stream()
                .reduce((a, b) -> b.points().size() > a.points().size() ? b : a));
  }

  private static String pictureWords(
      MethodFindings method,
      Optional<StreamFindings> stream,
      Optional<Miniature> picture,
      Findings findings) {
    if (picture.isEmpty()) {
      return "No control result in 12 months.";
    }
    String others =
        method.streams().size() > 1 ? ", 1 of " + method.streams().size() + " streams" : "";
    int n = stream.map(s -> Pictures.shown(s, findings.now().minusMonths(12)).size()).orElse(0);
    String name = stream.map(others.isEmpty() ? s -> s.material().key() : Reasons::name).orElse("");
    return name + ", 12 months, n = " + n + others;
  }

  /** What is left of a calibration, and the last day on which it is safe. */
  static List<Paragraph> calibration(Drift drift, LocalDate today) {
    Optional<Calibration> calibration = drift.calibration();
    if (calibration.isEmpty()) {
      return List.of(ink("No calibration of " + drift.instrument() + " is recorded."));
    }
    String name = " on calibration " + calibration.get().key() + ", " + drift.instrument();
    boolean expired = drift.decision() == Drift.Decision.EXPIRED;
    Paragraph left =
        ink(
            drift.expires().map(day -> left(day, today, name)).orElse("No end of validity set")
                + ".");
    return expired ? List.of(left.in(Colour.ACCENT)) : List.of(left, safe(drift, today));
  }

  private static String left(LocalDate expires, LocalDate today, String name) {
    long days = Dates.days(today, expires);
    if (days < 0) {
      String ago = Numbers.count(-days, "day", "days") + " past the end of validity";
      return ago + name + ", " + Dates.full(expires);
    }
    return Numbers.count(days, "day", "days") + " left" + name + ", to " + Dates.full(expires);
  }

  private static Paragraph safe(Drift drift, LocalDate today) {
    boolean early =
        drift.decision() == Drift.Decision.RECALIBRATE_BY
            || drift.decision() == Drift.Decision.RECALIBRATE_NOW;
    return drift
        .lastSafeDay()
        .value()
        .map(
            day ->
                ink("Last safe day " + Dates.full(day) + (day.isBefore(today) ? ", past." : "."))
                    .in(safeColour(early)))
        .orElseGet(
            () -> ink("Last safe day: cannot say, " + drift.lastSafeDay().why().orElse("") + "."));
  }

  private static Colour safeColour(boolean early) {
    return early ? Colour.ACCENT : Colour.INK;
  }

  private static Paragraph ink(String text) {
    return Paragraph.small(text).in(Colour.INK);
  }
}
