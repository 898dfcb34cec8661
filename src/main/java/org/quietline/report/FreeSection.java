package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.AcidityAgreement;
import org.quietline.assess.Answer;
import org.quietline.assess.BlankTrack;
import org.quietline.assess.CalibrationTrack;
import org.quietline.assess.FreeNotices;
import org.quietline.assess.FreeStreams;
import org.quietline.assess.InstrumentCalibrations;
import org.quietline.assess.InstrumentCalibrations.Curve;
import org.quietline.assess.InstrumentCalibrations.Step;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.NoticeRate.Question;
import org.quietline.assess.PairFindings;
import org.quietline.assess.RetestFindings;
import org.quietline.assess.SampleEvenness;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;

/** "What do the records say without a control test?" */
final class FreeSection {
  private final FreeStreams free;
  private final Numbers numbers;
  private final FreeWords words;
  private final List<Row> rows = new ArrayList<>();

  private FreeSection(MethodFindings findings) {
    this.free = findings.free();
    this.numbers = new Numbers(findings.method().decimals());
    this.words = new FreeWords(findings);
  }

  /** The section of one method; nothing where there are no such records. */
  static List<Block> of(MethodFindings findings) {
    FreeSection section = new FreeSection(findings);
    section.free.calibrations().forEach(section::calibrations);
    section.free.agreements().forEach(section::agreement);
    section.free.retests().forEach(section::retests);
    section.free.pairs().forEach(section::pairs);
    section.free.evenness().forEach(section::evenness);
    if (section.rows.isEmpty()) {
      return List.of();
    }
    return List.of(
        new Heading("What do the records say without a control test?"),
        new Table(
            List.of(Column.words("", 0.22), Column.answers("", 0.17), Column.words("", 0.61)),
            section.rows,
            false),
        Paragraph.small(notices(section.free.notices())));
  }

  private static String notices(FreeNotices notices) {
    return "By chance expect "
        + Numbers.uncertainty(notices.expected())
        + " of these to stand out in the period; "
        + notices.observed()
        + " did. A row that stands out is a question, not a verdict.";
  }

  private void add(Question question, String instrument, String answer, String words, boolean out) {
    rows.add(
        new Row(
            List.of(FreeWords.question(question) + ", " + instrument, answer, words),
            out ? Colour.ACCENT : Colour.INK));
  }

  private void cannotSay(Question question, String instrument, Answer<?> answer) {
    add(question, instrument, "cannot say", answer.why().orElse(""), false);
  }

  private void calibrations(InstrumentCalibrations of) {
    if (!of.curves().isEmpty()) {
      Curve last = of.curves().get(of.curves().size() - 1);
      if (last.step().value().isPresent()) {
        step(of, last, last.step().value().get());
      } else {
        cannotSay(Question.CALIBRATION_STEP, of.instrument(), last.step());
      }
      tracks(of);
    }
    of.blanks().forEach(b -> blank(of.instrument(), b));
  }

  private void step(InstrumentCalibrations of, Curve curve, Step step) {
    String reads =
        "what read "
            + numbers.fine(step.level())
            + " before "
            + curve.calibration().key()
            + " reads "
            + numbers.fine(step.reads())
            + step.uncertainty()
                .value()
                .map(
                    u ->
                        " (95 % of the change: "
                            + numbers.signed(u.interval().lower())
                            + " to "
                            + numbers.signed(u.interval().upper())
                            + ")")
                .orElse("");
    String limit =
        step.limit()
            .value()
            .map(
                l ->
                    "; a change beyond "
                        + numbers.fine(l.value())
                        + " is more than calibrations before it differ by")
            .orElse("; limit: cannot say, " + step.limit().why().orElse(""));
    long earlier =
        of.curves().stream()
            .filter(c -> c.step().value().filter(Step::isBeyond).isPresent())
            .count();
    long judged =
        of.curves().stream()
            .filter(c -> c.step().value().flatMap(s -> s.limit().value()).isPresent())
            .count();
    String history = earlier == 0 ? "" : "; steps so far: " + earlier + " of " + judged + " judged";
    add(
        Question.CALIBRATION_STEP,
        of.instrument(),
        numbers.signed(step.change()),
        reads + limit + history + ".",
        step.isBeyond());
  }

  /** Slope, offset and responses of the latest calibration against those before. */
  private void tracks(InstrumentCalibrations of) {
    List<String> beyond = new ArrayList<>();
    List<String> within = new ArrayList<>();
    for (CalibrationTrack track : of.tracks()) {
      if (track.marks().isEmpty()) {
        continue;
      }
      CalibrationTrack.Mark last = track.marks().get(track.marks().size() - 1);
      String name =
          switch (track.of()) {
            case SLOPE -> "slope";
            case OFFSET -> "offset";
            case RESPONSE ->
                "response at " + track.calibrator().map(Numbers::written).orElse("a calibrator");
          };
      String value = name + " " + Numbers.figures(last.value(), 3);
      if (last.limits().value().isPresent()) {
        (last.isBeyond() ? beyond : within).add(value);
      }
    }
    if (beyond.isEmpty() && within.isEmpty()) {
      return;
    }
    rows.add(
        new Row(
            List.of(
                "calibrators, " + of.instrument(),
                beyond.isEmpty() ? "as before" : "changed",
                (beyond.isEmpty()
                        ? ""
                        : "beyond what earlier calibrations predict: "
                            + String.join(", ", beyond)
                            + (within.isEmpty() ? "" : "; "))
                    + (within.isEmpty() ? "" : "within: " + String.join(", ", within))
                    + "."),
            beyond.isEmpty() ? Colour.INK : Colour.ACCENT));
  }

  private void blank(String instrument, BlankTrack track) {
    if (track.marks().isEmpty()) {
      return;
    }
    BlankTrack.Mark last = track.marks().get(track.marks().size() - 1);
    if (last.judged().value().isEmpty()) {
      cannotSay(Question.BLANK_DRIFTING, instrument, last.judged());
      return;
    }
    BlankTrack.Judged judged = last.judged().value().get();
    add(
        Question.BLANK_DRIFTING,
        instrument,
        Numbers.figures(last.value(), 3),
        (track.kind() == BlankTrack.Kind.OF_CALIBRATIONS
                ? "response of the calibration of "
                : "result of ")
            + Dates.full(last.at())
            + "; those before it predict "
            + Numbers.figures(judged.limits().lower(), 3)
            + " to "
            + Numbers.figures(judged.limits().upper(), 3)
            + (judged.meanBeyond() ? "; the weighted mean of blanks is beyond its limit" : "")
            + ", n = "
            + track.marks().size()
            + ".",
        judged.isBeyond());
  }

  private void agreement(AcidityAgreement a) {
    if (a.pairs().isEmpty()) {
      return;
    }
    AcidityAgreement.Pair last = a.pairs().get(a.pairs().size() - 1);
    String where =
        a.centre()
            .value()
            .map(
                c ->
                    "acid number less "
                        + Numbers.figures(a.factor(), 5)
                        + " times "
                        + a.otherMethod()
                        + "; mean "
                        + numbers.signed(c.mean())
                        + ", n = "
                        + c.pairs())
            .orElse("cannot say, " + a.centre().why().orElse(""));
    String limits =
        last.limits()
            .value()
            .map(
                l ->
                    "; predicted "
                        + numbers.signed(l.action().lower())
                        + " to "
                        + numbers.signed(l.action().upper()))
            .orElse("; limits: cannot say, " + last.limits().why().orElse(""));
    add(
        Question.METHODS_DISAGREE,
        a.instrument(),
        numbers.signed(last.residual()),
        where + limits + ".",
        last.isBeyond());
  }

  private void retests(RetestFindings r) {
    if (r.retests().isEmpty()) {
      return;
    }
    if (r.all().value().isEmpty()) {
      cannotSay(Question.RETESTS_MOVED, r.instrument(), r.all());
      return;
    }
    RetestFindings.Move move = r.all().value().get();
    String between =
        move.between()
            .value()
            .map(b -> "; deviation between sessions " + Numbers.uncertainty(b.deviation()))
            .orElse("");
    add(
        Question.RETESTS_MOVED,
        r.instrument(),
        numbers.signed(move.mean()),
        words.move(move) + between + ".",
        move.moved());
  }

  private void pairs(PairFindings p) {
    long beyond = p.judged().stream().filter(PairFindings.Judged::isBeyond).count();
    if (!p.judged().isEmpty()) {
      add(
          Question.PAIR_BEYOND,
          p.instrument(),
          beyond + " of " + p.judged().size() + " beyond",
          "the 99.73 % limit at their level; beyond the 95 % limit "
              + p.beyondWarning()
              + (p.resolution() == PairFindings.Resolution.COARSE
                  ? "; readings are coarse beside their scatter ("
                      + Numbers.percent(p.zeros())
                      + " of pairs do not differ)"
                  : "")
              + ".",
          p.chanceOfSoManyActions() < UNLIKELY);
    }
    if (p.order().value().isPresent()) {
      PairFindings.OrderEffect order = p.order().value().get();
      add(
          Question.ORDER_OF_READINGS,
          p.instrument(),
          numbers.signed(order.mean()),
          words.order(order) + ".",
          order.tells());
    }
  }

  private static final double UNLIKELY = 0.01;

  private void evenness(SampleEvenness e) {
    if (e.comparison().value().isEmpty()) {
      cannotSay(Question.SAMPLES_UNEVEN, e.instrument(), e.comparison());
      return;
    }
    SampleEvenness.Comparison c = e.comparison().value().get();
    add(
        Question.SAMPLES_UNEVEN,
        e.instrument(),
        "× " + Numbers.figures(c.ratio(), 2),
        FreeWords.evenness(c) + ", " + e.material().key() + ".",
        c.uneven());
  }
}
