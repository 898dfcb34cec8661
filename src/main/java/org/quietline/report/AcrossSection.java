package org.quietline.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.quietline.assess.Contradiction;
import org.quietline.assess.Findings;
import org.quietline.bench.Accounting.Conversion;
import org.quietline.bench.Action;
import org.quietline.bench.Check;
import org.quietline.bench.CheckOff;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;

/** What the records say against each other, on the last pages. */
final class AcrossSection {
  /** More sentences of one kind than this are left to the list of what to settle. */
  static final int MOST_OF_A_KIND = 8;

  private static final int MOST_CONFLICTS = 60;

  private AcrossSection() {}

  static List<Block> of(Findings findings) {
    List<Block> blocks = new ArrayList<>();
    blocks.addAll(conflicts(findings));
    blocks.addAll(contradictions(findings));
    blocks.addAll(checksOff(findings));
    blocks.addAll(conversions(findings));
    return blocks;
  }

  private static List<Block> conflicts(Findings findings) {
    List<String> sentences = ConflictWords.sentences(findings);
    if (sentences.isEmpty()) {
      return List.of();
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("Which rows claim to be the same one?"));
    sentences.stream().limit(MOST_CONFLICTS).forEach(s -> blocks.add(ink(s)));
    if (sentences.size() > MOST_CONFLICTS) {
      blocks.add(
          ink("And " + (sentences.size() - MOST_CONFLICTS) + " more, all in findings.json."));
    }
    return blocks;
  }

  private static List<Block> contradictions(Findings findings) {
    if (findings.contradictions().isEmpty()) {
      return List.of();
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("Which records contradict each other?"));
    blocks.add(
        Paragraph.small(
            "Nothing was corrected. Mend the record, or answer the question by a row in actions.csv"
                + " with its id as signal and a cause."));
    Map<Check, List<Contradiction>> byCheck = new EnumMap<>(Check.class);
    findings
        .contradictions()
        .forEach(c -> byCheck.computeIfAbsent(c.check(), k -> new ArrayList<>()).add(c));
    byCheck.forEach((check, found) -> blocks.addAll(kind(check, found)));
    return blocks;
  }

  /** Those of one check: open ones, those of the period first, then the answered ones. */
  private static List<Block> kind(Check check, List<Contradiction> found) {
    List<Block> blocks = new ArrayList<>();
    List<Contradiction> open = new ArrayList<>();
    found.stream().filter(c -> c.open() && c.asked().inPeriod()).forEach(open::add);
    found.stream().filter(c -> c.open() && !c.asked().inPeriod()).forEach(open::add);
    open.stream().limit(MOST_OF_A_KIND).forEach(c -> blocks.add(ink(open(c))));
    if (open.size() > MOST_OF_A_KIND) {
      blocks.add(ink(more(open.size(), check, "open")));
    }
    if (!open.isEmpty()) {
      blocks.add(Paragraph.small(ContradictionWords.whatToDo(check)));
    }
    List<Contradiction> answered = found.stream().filter(c -> !c.open()).toList();
    answered.stream().limit(MOST_OF_A_KIND).forEach(c -> blocks.add(Paragraph.small(answered(c))));
    if (answered.size() > MOST_OF_A_KIND) {
      blocks.add(Paragraph.small(more(answered.size(), check, "answered")));
    }
    return blocks;
  }

  private static String more(int all, Check check, String how) {
    return "And "
        + (all - MOST_OF_A_KIND)
        + " more of "
        + check.key()
        + " that are "
        + how
        + ", all in findings.json.";
  }

  private static String open(Contradiction found) {
    return ContradictionWords.sentence(found) + " Id: " + found.id();
  }

  private static String answered(Contradiction found) {
    return ContradictionWords.sentence(found)
        + found.asked().answer().map(AcrossSection::by).orElse("");
  }

  private static String by(Action answer) {
    return " Answered"
        + answer.decidedBy().map(who -> " by " + who).orElse("")
        + " on "
        + Dates.full(answer.recordedAt())
        + ": "
        + answer.cause().orElse("")
        + ".";
  }

  private static List<Block> checksOff(Findings findings) {
    if (findings.across().checksOff().isEmpty()) {
      return List.of();
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("Which checks are switched off?"));
    findings.across().checksOff().forEach(off -> blocks.add(ink(sentence(off))));
    return blocks;
  }

  /** A check that is switched off, with its reason. */
  static String sentence(CheckOff off) {
    return off.check().key()
        + off.method().map(m -> ", for " + m).orElse(", for all methods")
        + ": "
        + off.reason();
  }

  private static List<Block> conversions(Findings findings) {
    List<Conversion> conversions = findings.accounting().conversions();
    if (conversions.isEmpty()) {
      return List.of();
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("Which readings were converted?"));
    conversions.forEach(c -> blocks.add(ink(sentence(c))));
    return blocks;
  }

  private static String sentence(Conversion conversion) {
    return conversion.method()
        + ": "
        + Numbers.count(conversion.results(), "result", "results")
        + " written in "
        + conversion.from()
        + ", multiplied by "
        + conversion.factor().toPlainString()
        + " to "
        + conversion.to()
        + ".";
  }

  private static Paragraph ink(String text) {
    return Paragraph.small(text).in(Colour.INK);
  }
}
