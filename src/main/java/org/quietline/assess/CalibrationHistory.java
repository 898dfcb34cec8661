package org.quietline.assess;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.quietline.assess.BlankTrack.Kind;
import org.quietline.assess.CalibrationTrack.Mark;
import org.quietline.assess.InstrumentCalibrations.Curve;
import org.quietline.assess.InstrumentCalibrations.Level;
import org.quietline.assess.InstrumentCalibrations.Response;
import org.quietline.bench.Calibration;
import org.quietline.bench.Material;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.control.ControlLimits;

/**
 * What do the calibrations say beside their lines: did the newest one move the reading at the
 * limit, and does the blank drift? Every calibration is judged by those before it alone.
 */
final class CalibrationHistory {
  /** The fewest calibrations before one that is judged: the fifth is the first. */
  static final int FEWEST_BEFORE = 4;

  private final Records records;
  private final String instrument;
  private final List<CalibrationLine> lines;

  private CalibrationHistory(Records records, String instrument) {
    this.records = records;
    this.instrument = instrument;
    this.lines = calibrations().stream().flatMap(c -> CalibrationLine.of(c).stream()).toList();
  }

  /** For each instrument that was calibrated or has blanks, in key order. */
  static List<InstrumentCalibrations> ask(Records records) {
    return records.instruments().stream()
        .map(instrument -> new CalibrationHistory(records, instrument))
        .filter(h -> !h.calibrations().isEmpty() || !h.blankResults().isEmpty())
        .map(CalibrationHistory::judge)
        .toList();
  }

  private List<Calibration> calibrations() {
    return records.calibrations().stream().filter(c -> c.instrument().equals(instrument)).toList();
  }

  private List<Result> blankResults() {
    return records.of(Role.BLANK).stream().filter(r -> r.instrument().equals(instrument)).toList();
  }

  private InstrumentCalibrations judge() {
    Answer<Level> level = level();
    StepHistory steps = new StepHistory(records, instrument, level);
    List<Curve> curves = lines.stream().map(steps::add).toList();
    List<BlankHistory> blanks = Stream.of(blanksOfCalibrations(), blanksOfResults()).toList();
    List<Signal> signals = new ArrayList<>(steps.signals());
    blanks.forEach(b -> signals.addAll(b.signals()));
    signals.sort((a, b) -> a.id().at().compareTo(b.id().at()));
    return new InstrumentCalibrations(
        instrument,
        calibrations().size() - lines.size(),
        level,
        curves,
        tracks(),
        blanks.stream().map(BlankHistory::track).filter(t -> !t.marks().isEmpty()).toList(),
        signals,
        steps.rate());
  }

  private Answer<Level> level() {
    Optional<BigDecimal> limit =
        records.method().limits().flatMap(l -> l.upper().or(() -> lowerOf(l)));
    if (limit.isPresent()) {
      return Answer.of(new Level(limit.get().doubleValue(), Level.Source.PRODUCT_LIMIT));
    }
    return records.bench().settings().materials().stream()
        .filter(m -> m.method().equals(records.method().key()))
        .flatMap(m -> assignedTo(m).stream())
        .findFirst()
        .map(v -> Answer.of(new Level(v.doubleValue(), Level.Source.ASSIGNED_VALUE)))
        .orElse(
            Answer.cannotSay("needs a product limit or a control material with an assigned value"));
  }

  private static Optional<BigDecimal> lowerOf(ProductLimits limits) {
    return limits.lower();
  }

  private static Optional<BigDecimal> assignedTo(Material material) {
    return material.assignedValue();
  }

  private List<CalibrationTrack> tracks() {
    if (lines.isEmpty()) {
      return List.of();
    }
    List<CalibrationTrack> tracks = new ArrayList<>();
    tracks.add(
        track(
            CalibrationTrack.Of.SLOPE,
            CalibrationLine::slope,
            l -> l.rounding() * Math.sqrt(l.leverageOfSlope())));
    tracks.add(
        track(
            CalibrationTrack.Of.OFFSET,
            CalibrationLine::offset,
            l -> l.rounding() * Math.sqrt(l.leverageAt(0))));
    Map<BigDecimal, BigDecimal> assigned = new TreeMap<>();
    lines.forEach(l -> l.responses().forEach(r -> assigned.put(r.assigned(), r.assigned())));
    assigned.keySet().forEach(a -> tracks.add(responses(a)));
    return tracks;
  }

  private CalibrationTrack track(
      CalibrationTrack.Of of,
      ToDoubleFunction<CalibrationLine> value,
      ToDoubleFunction<CalibrationLine> rounding) {
    Track track = new Track();
    lines.forEach(l -> track.add(l, value.applyAsDouble(l), rounding.applyAsDouble(l)));
    return new CalibrationTrack(of, Optional.empty(), track.marks);
  }

  private CalibrationTrack responses(BigDecimal assigned) {
    Track track = new Track();
    for (CalibrationLine line : lines) {
      line.responses().stream()
          .filter(r -> r.assigned().compareTo(assigned) == 0)
          .map(Response::value)
          .mapToDouble(BigDecimal::doubleValue)
          .average()
          .ifPresent(mean -> track.add(line, mean, line.rounding()));
    }
    return new CalibrationTrack(CalibrationTrack.Of.RESPONSE, Optional.of(assigned), track.marks);
  }

  /** One number of each calibration, and what those before it predict. */
  private static final class Track {
    private final List<Double> before = new ArrayList<>();
    private final List<Mark> marks = new ArrayList<>();

    void add(CalibrationLine line, double value, double rounding) {
      Answer<ControlLimits> limits =
          before.size() < FEWEST_BEFORE
              ? Answer.cannotSay(
                  "needs " + FEWEST_BEFORE + " calibrations before it, has " + before.size())
              : Answer.of(
                  ControlLimits.predictionFrom(
                      rounding, before.stream().mapToDouble(Double::doubleValue).toArray()));
      boolean provisional = before.size() < StreamControl.FEWEST_FOR_SETTLED_LIMITS;
      marks.add(new Mark(line.calibration(), value, limits, provisional));
      before.add(value);
    }
  }

  private BlankHistory blanksOfCalibrations() {
    BlankHistory history = new BlankHistory(records, instrument, Kind.OF_CALIBRATIONS);
    for (Calibration calibration : calibrations()) {
      calibration
          .blankResponse()
          .ifPresent(
              blank ->
                  history.add(
                      calibration.calibratedAt(),
                      blank.doubleValue(),
                      CalibrationLine.roundingOf(List.of(blank))));
    }
    return history;
  }

  private BlankHistory blanksOfResults() {
    BlankHistory history = new BlankHistory(records, instrument, Kind.OF_RESULTS);
    for (Result result : blankResults()) {
      OptionalDouble value = records.value(result);
      if (value.isPresent()) {
        List<BigDecimal> written =
            result.readings().stream()
                .filter(Reading.Measured.class::isInstance)
                .map(r -> ((Reading.Measured) r).value())
                .toList();
        history.add(
            result.takenAt(),
            value.getAsDouble(),
            CalibrationLine.roundingOf(written) / Math.sqrt(written.size()));
      }
    }
    return history;
  }
}
