package org.quietline.intake;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.bench.Check;
import org.quietline.bench.Instrument;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Unit;

/** The rows of the sheets in {@code readings}: one row, one result. */
final class ResultRows implements RowKind<Result> {
  private static final String READING = "reading_#";
  private static final Layout LAYOUT =
      new Layout(
          List.of("taken_at", "method", "instrument", "role", "sample", "reading_1"),
          List.of(
              "unit",
              "calibration",
              "reagent_lot",
              "operator",
              "remark",
              "session",
              "temperature_c",
              "sequence"),
          Set.of("unit", "calibration"),
          List.of(READING));
  private static final List<String> UNITS = List.of("% mass", "g/kg", "mg/g", "mg/kg", "ppm");

  private final SettingsReader.Found found;
  private final Optional<CalibrationRows> calibrations;

  /** Without calibrations to look in, the calibration a row names is taken as it stands. */
  ResultRows(SettingsReader.Found found, Optional<CalibrationRows> calibrations) {
    this.found = found;
    this.calibrations = calibrations;
  }

  private record Key(
      LocalDateTime takenAt, String method, String instrument, Role role, String sample) {}

  @Override
  public Layout layout() {
    return LAYOUT;
  }

  @Override
  public Result make(Row row) throws Unusable {
    LocalDateTime takenAt = row.needTime("taken_at");
    Method method = found.methods().need("method", row.need("method"));
    Instrument instrument = found.instruments().need("instrument", row.need("instrument"));
    Role role = role(row.need("role"));
    String sample = sample(row.need("sample"), role, method);
    List<Reading> written = readings(row);
    Unit unit = row.text("unit").map(Unit::new).orElse(method.unit());
    BigDecimal factor = unit.factorTo(method.unit()).orElseThrow(() -> badUnit(unit, method));
    Optional<String> calibration = row.text("calibration");
    if (calibration.isPresent() && calibrations.isPresent()) {
      calibrations.get().check(calibration.get(), method.key(), instrument.key(), takenAt);
    }
    Optional<BigDecimal> temperature = row.number("temperature_c");
    return row.build(
        () ->
            new Result(
                takenAt,
                method.key(),
                instrument.key(),
                role,
                sample,
                written.stream().map(reading -> reading.times(factor)).toList(),
                written,
                unit,
                calibration,
                row.text("reagent_lot"),
                row.text("operator"),
                row.text("remark"),
                row.text("session"),
                temperature,
                row.text("sequence"),
                row.origin()));
  }

  private static Role role(String word) throws Unusable {
    List<String> roles = Arrays.stream(Role.values()).map(Role::key).toList();
    return Role.parse(word)
        .orElseThrow(
            () ->
                new Unusable(
                    "role",
                    word,
                    Excerpt.quoted(word) + " is no role" + NearestName.hint(word, roles) + "."));
  }

  private String sample(String sample, Role role, Method method) throws Unusable {
    if (sample.indexOf('/') >= 0) {
      throw new Unusable(
          "sample",
          sample,
          Excerpt.quoted(sample)
              + " holds a stroke (/), which a sample may not; write a hyphen in its place.");
    }
    if (role == Role.CONTROL) {
      Materials.need(found.materials(), "sample", method.key(), sample);
    }
    return sample;
  }

  /** A gap before a reading stays a missing reading; those behind the last one are left out. */
  private static List<Reading> readings(Row row) throws Unusable {
    List<Reading> readings = new ArrayList<>();
    int last = 0;
    for (int i = 1; i <= row.header().numbered(); i++) {
      String column = READING.replace("#", Integer.toString(i));
      Reading reading = NumberText.reading(column, row.text(column).orElse(""));
      readings.add(reading);
      last = reading instanceof Reading.Missing ? last : i;
    }
    if (last == 0) {
      throw new Unusable("reading_1", "", "The row has no reading at all; write at least one.");
    }
    return readings.subList(0, last);
  }

  private static Unusable badUnit(Unit unit, Method method) {
    List<String> usable = new ArrayList<>(List.of(method.unit().symbol()));
    UNITS.stream()
        .filter(u -> !usable.contains(u) && new Unit(u).factorTo(method.unit()).isPresent())
        .forEach(usable::add);
    return new Unusable(
        "unit",
        unit.symbol(),
        Excerpt.quoted(unit.symbol())
            + " does not convert to the unit of "
            + method.key()
            + "; write "
            + String.join(" or ", usable)
            + ", or leave the field empty where it is "
            + method.unit()
            + ".");
  }

  @Override
  public Object keyOf(Result made) {
    return new Key(made.takenAt(), made.method(), made.instrument(), made.role(), made.sample());
  }

  @Override
  public List<Part<Result>> parts() {
    return List.of(
        new Part<>("readings", r -> RowText.of(r.writtenReadings())),
        new Part<>("unit", r -> r.writtenUnit().symbol()),
        new Part<>("calibration", r -> RowText.of(r.calibration())),
        new Part<>("reagent_lot", r -> RowText.of(r.reagentLot())),
        new Part<>("operator", r -> RowText.of(r.operator())),
        new Part<>("remark", r -> RowText.of(r.remark())),
        new Part<>("session", r -> RowText.of(r.session())),
        new Part<>("temperature_c", r -> RowText.of(r.temperatureC())),
        new Part<>("sequence", r -> RowText.of(r.sequence())));
  }

  @Override
  public Optional<QuestionId> conflictId(Result first) {
    return Optional.of(QuestionId.of(first, Check.ROWS_IN_CONFLICT));
  }

  @Override
  public Origin originOf(Result made) {
    return made.origin();
  }
}
