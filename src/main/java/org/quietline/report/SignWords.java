package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.BlankTrack;
import org.quietline.assess.CalibrationTrack;
import org.quietline.assess.InstrumentCalibrations;
import org.quietline.assess.InstrumentCalibrations.Curve;
import org.quietline.assess.InstrumentCalibrations.Step;

/** What calibrations and blanks say of themselves, in sentences. */
final class SignWords {
  private SignWords() {}

  static String of(InstrumentCalibrations signs, Numbers numbers, String unit) {
    List<String> said = new ArrayList<>();
    if (!signs.curves().isEmpty()) {
      Curve last = signs.curves().get(signs.curves().size() - 1);
      said.add(step(last, numbers, unit));
      signs.tracks().stream().map(SignWords::track).filter(s -> !s.isEmpty()).forEach(said::add);
    }
    signs.blanks().stream().map(SignWords::blank).forEach(said::add);
    return said.isEmpty()
        ? "Nothing: no responses and no blanks are recorded."
        : String.join(" ", said);
  }

  private static String step(Curve last, Numbers numbers, String unit) {
    String calibration = "Calibration " + last.calibration().key();
    if (last.step().value().isEmpty()) {
      return calibration
          + " against the one before: cannot say, "
          + last.step().why().orElseThrow()
          + ".";
    }
    Step step = last.step().value().get();
    String interval =
        step.uncertainty()
            .value()
            .map(
                u ->
                    " (95 %: "
                        + numbers.signed(u.interval().lower())
                        + " to "
                        + numbers.signed(u.interval().upper())
                        + ")")
            .orElse(" (of unknown uncertainty)");
    String judged =
        step.limit().value().isEmpty()
            ? "whether that is a step: cannot say, " + step.limit().why().orElseThrow()
            : step.isBeyond()
                ? "more than calibrations differ by chance"
                : "no more than calibrations differ by chance";
    return calibration
        + " reads "
        + numbers.fine(step.reads())
        + " where "
        + step.before().key()
        + " read "
        + numbers.fine(step.level())
        + " "
        + unit
        + ", a change of "
        + numbers.signed(step.change())
        + interval
        + ": "
        + judged
        + ".";
  }

  /** Only a track that has left its limits is worth a sentence. */
  private static String track(CalibrationTrack track) {
    CalibrationTrack.Mark last = track.marks().get(track.marks().size() - 1);
    boolean beyond =
        last.limits()
            .value()
            .filter(l -> last.value() < l.lowerAction() || last.value() > l.upperAction())
            .isPresent();
    if (!beyond) {
      return "";
    }
    return switch (track.of()) {
      case SLOPE -> "Its slope is beyond what the calibrations before it predict.";
      case OFFSET -> "Its offset is beyond what the calibrations before it predict.";
      case RESPONSE ->
          "The response of calibrator "
              + track.calibrator().map(Numbers::written).orElse("")
              + " is beyond what the calibrations before it predict.";
    };
  }

  private static String blank(BlankTrack track) {
    String which =
        track.kind() == BlankTrack.Kind.OF_CALIBRATIONS
            ? "The blanks of the calibrations"
            : "The blanks run as results";
    BlankTrack.Mark last = track.marks().get(track.marks().size() - 1);
    return last.judged()
        .value()
        .map(
            j ->
                which
                    + (j.meanBeyond() || j.valueBeyond()
                        ? " drift: the latest, "
                        : " give no sign of a drift: the latest, ")
                    + Numbers.fixed(last.value(), 3)
                    + ", "
                    + (j.valueBeyond() ? "is" : "is not")
                    + " beyond its limits and their weighted mean "
                    + (j.meanBeyond() ? "is." : "is not."))
        .orElseGet(() -> which + ": cannot say, " + last.judged().why().orElseThrow() + ".");
  }
}
