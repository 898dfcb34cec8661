package org.quietline.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Verdict;
import org.quietline.bench.Method;
import org.quietline.report.Block.Badge;
import org.quietline.report.Block.Checklist;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Step;
import org.quietline.report.Block.Title;

/** The page of one method. */
final class MethodPage {
  private MethodPage() {}

  static Page of(MethodFindings findings, Findings all) {
    Method method = findings.method();
    List<Step> steps = Steps.of(findings);
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Title(
            method.title(),
            instruments(findings) + method.unit(),
            Optional.of(badge(findings.verdict(), note(steps.get(0))))));
    List<String> reasons = Reasons.of(findings, all);
    blocks.add(Paragraph.lead(reasons.get(0)));
    reasons.subList(1, reasons.size()).forEach(r -> blocks.add(Paragraph.body(r)));
    blocks.addAll(ControlSection.of(findings, all.chart(), all.period()));
    blocks.addAll(StorySection.of(findings));
    blocks.addAll(DriftSection.of(findings, all.now().toLocalDate()));
    blocks.addAll(AgreementSection.of(findings));
    blocks.addAll(FreeSection.of(findings));
    blocks.addAll(BatchSection.of(findings));
    blocks.addAll(CostSection.of(findings));
    blocks.addAll(ComparisonSection.of(findings));
    blocks.addAll(CapabilitySection.of(findings));
    blocks.addAll(oneNote(DatesSection.of(findings, all.across()), SlipSection.of(findings)));
    blocks.add(new Heading("What to do"));
    blocks.add(new Checklist(steps));
    return new Page(method.title(), blocks);
  }

  /** Where two sections are a note each, one note. */
  private static List<Block> oneNote(List<Block> first, List<Block> second) {
    if (first.size() == 1
        && second.size() == 1
        && first.get(0) instanceof Paragraph one
        && second.get(0) instanceof Paragraph other) {
      return List.of(
          new Paragraph(one.text() + " " + other.text(), one.size(), one.colour(), one.strong()));
    }
    return Stream.of(first, second).flatMap(List::stream).toList();
  }

  /** A verdict as printed. */
  static Badge badge(Verdict verdict, String note) {
    Emphasis emphasis =
        switch (verdict.level()) {
          case STEADY -> Emphasis.CALM;
          case WATCH -> Emphasis.RAISED;
          case HOLD -> Emphasis.GRAVE;
        };
    return new Badge(
        verdict.level().key(), emphasis, verdict.level() == Verdict.Level.STEADY ? "" : note);
  }

  private static String note(Step first) {
    return first.pressing() ? "act " + first.by() : first.by();
  }

  private static String instruments(MethodFindings findings) {
    Set<String> names = new LinkedHashSet<>();
    findings.streams().forEach(s -> names.add(s.instrument()));
    findings.drift().forEach(d -> names.add(d.instrument()));
    return names.isEmpty() ? "" : String.join(", ", names) + " · ";
  }
}
