package org.quietline.intake;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.quietline.bench.Accounting.Conversion;
import org.quietline.bench.Accounting.NumberAside;
import org.quietline.bench.Check;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Unit;

/** The rows of the sheets in {@code readings}: one row one result, or one row one reading. */
final class ResultRows implements RowKind<Result> {
  /** Where a field stands in {@link Layout#names()}. */
  private static final int TAKEN_AT = 0;

  private static final int METHOD = 1;
  private static final int INSTRUMENT = 2;
  private static final int ROLE = 3;
  private static final int SAMPLE = 4;
  private static final int UNIT = 6;
  private static final int CALIBRATION = 7;
  private static final int REAGENT_LOT = 8;
  private static final int OPERATOR = 9;
  private static final int REMARK = 10;
  private static final int SESSION = 11;
  private static final int TEMPERATURE = 12;
  private static final int SEQUENCE = 13;

  /**
   * The odd number nearest to 2 to the 64th over the golden ratio (Knuth, multiplicative hashing).
   */
  private static final long GOLDEN = 0x9E37_79B9_7F4A_7C15L;

  private static final Reading MISSING = new Reading.Missing();
  private static final String READING = "reading_#";
  private static final List<String> OPTIONAL =
      List.of(
          "unit",
          "calibration",
          "reagent_lot",
          "operator",
          "remark",
          "session",
          "temperature_c",
          "sequence");
  static final Layout LAYOUT =
      new Layout(
          List.of("taken_at", "method", "instrument", "role", "sample", "reading_1"),
          OPTIONAL,
          Set.of("unit", "calibration"),
          List.of(READING));

  /** One row a reading: the rows of one result are told by the column {@code result}. */
  static final Layout LAYOUT_OF_READINGS =
      new Layout(
          List.of("taken_at", "method", "instrument", "role", "sample", "reading"),
          Stream.concat(OPTIONAL.stream(), Stream.of("result", "reading_number")).toList(),
          Set.of("unit", "calibration"),
          List.of());

  private final SettingsReader.Found found;
  private final Optional<CalibrationRows> calibrations;
  private final Memo<Under> methods = new Memo<>(this::under);
  private final Memo<String> instruments;
  private final Memo<Role> roles = new Memo<>(ResultRows::role);
  private final List<Memo<Optional<String>>> shared =
      Stream.generate(() -> new Memo<>(ResultRows::optional)).limit(4).toList();
  private final Map<String, Unit> unitOf = new HashMap<>();
  private final Map<List<String>, Conversion> conversions = new LinkedHashMap<>();
  private final List<NumberAside> numbersAside = new ArrayList<>();

  /** Without calibrations to look in, the calibration a row names is taken as it stands. */
  ResultRows(SettingsReader.Found found, Optional<CalibrationRows> calibrations) {
    this.found = found;
    this.calibrations = calibrations;
    this.instruments = new Memo<>(key -> found.instruments().need("instrument", key).key());
  }

  /** A method, with what units and control samples mean under it. */
  private record Under(Method method, Memo<Written> units, Memo<String> materials) {}

  /** The unit of a row, and the factor to the method's. */
  private record Written(Unit unit, BigDecimal factor) {}

  private record Key(
      LocalDateTime takenAt, String method, String instrument, Role role, String sample) {}

  @Override
  public Layout layout() {
    return LAYOUT;
  }

  @Override
  public Layout layoutOfReadings() {
    return LAYOUT_OF_READINGS;
  }

  @Override
  public Result make(Row row) throws Unusable {
    String time = Row.needed("taken_at", row.at(TAKEN_AT));
    LocalDateTime takenAt = row.header().times().time("taken_at", time);
    Under under = methods.get(Row.needed("method", row.at(METHOD)));
    String method = under.method.key();
    String instrument = instruments.get(Row.needed("instrument", row.at(INSTRUMENT)));
    Role role = roles.get(Row.needed("role", row.at(ROLE)));
    String sample = sample(Row.needed("sample", row.at(SAMPLE)), role, under);
    List<Reading> written = readings(row);
    Written unit = under.units.get(row.at(UNIT));
    Optional<String> calibration = shared.get(0).get(row.at(CALIBRATION));
    if (calibration.isPresent() && calibrations.isPresent()) {
      calibrations.get().check(calibration.get(), method, instrument);
    }
    Optional<String> lot = shared.get(1).get(row.at(REAGENT_LOT));
    Optional<String> operator = shared.get(2).get(row.at(OPERATOR));
    Optional<String> session = shared.get(3).get(row.at(SESSION));
    String temperature = row.at(TEMPERATURE);
    Optional<BigDecimal> temperatureC =
        temperature.isEmpty() ? Optional.empty() : row.number("temperature_c");
    return row.build(
        () ->
            new Result(
                takenAt,
                method,
                instrument,
                role,
                sample,
                converted(written, unit.factor),
                written,
                unit.unit,
                calibration,
                lot,
                operator,
                optional(row.at(REMARK)),
                session,
                temperatureC,
                optional(row.at(SEQUENCE)),
                row.origin()));
  }

  private static Optional<String> optional(String text) {
    return text.isEmpty() ? Optional.empty() : Optional.of(text);
  }

  private Under under(String key) throws Unusable {
    Method method = found.methods().need("method", key);
    return new Under(
        method,
        new Memo<>(unit -> written(unit, method)),
        new Memo<>(
            sample -> Materials.need(found.materials(), "sample", method.key(), sample).key()));
  }

  private Written written(String text, Method method) throws Unusable {
    if (text.isEmpty() && found.unitRequired()) {
      throw new Unusable(
          "unit",
          "",
          "No unit is written, and bench.toml says unit-required; write "
              + method.unit()
              + " or a unit that converts to it.");
    }
    Unit unit = text.isEmpty() ? method.unit() : new Unit(text);
    return new Written(
        unit,
        unit.factorTo(method.unit()).orElseThrow(() -> UnitWords.doesNotConvert(unit, method)));
  }

  private static List<Reading> converted(List<Reading> written, BigDecimal factor) {
    return factor.compareTo(BigDecimal.ONE) == 0
        ? written
        : written.stream().map(reading -> reading.times(factor)).toList();
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

  private static String sample(String sample, Role role, Under under) throws Unusable {
    if (sample.indexOf('/') >= 0) {
      throw new Unusable(
          "sample",
          sample,
          Excerpt.quoted(sample)
              + " holds a stroke (/), which a sample may not; write a hyphen in its place.");
    }
    return role == Role.CONTROL ? under.materials.get(sample) : sample;
  }

  /** A gap before a reading stays a missing reading; those behind the last one are left out. */
  private static List<Reading> readings(Row row) throws Unusable {
    if (!row.gathered().isEmpty()) {
      return row.gathered();
    }
    Header header = row.header();
    Decimal decimal = header.form().decimal();
    Reading[] readings = new Reading[header.numbered()];
    int last = 0;
    for (int i = 1; i <= readings.length; i++) {
      String text = header.numbered(i).of(row.cells());
      readings[i - 1] =
          text.isEmpty() ? MISSING : NumberText.reading(header.numberedName(i), text, decimal);
      last = readings[i - 1] instanceof Reading.Missing ? last : i;
    }
    if (last == 0) {
      throw noReading("reading_1");
    }
    return List.of(last == readings.length ? readings : Arrays.copyOf(readings, last));
  }

  /** Why a result without any reading is none. */
  static Unusable noReading(String field) {
    return new Unusable(field, "", "The row has no reading at all; write at least one.");
  }

  @Override
  public void refused(Row row, String sentence) {
    String instrument = row.at(INSTRUMENT);
    String sequence = row.at(SEQUENCE);
    if (!instrument.isEmpty() && !sequence.isEmpty()) {
      numbersAside.add(new NumberAside(instrument, sequence));
    }
  }

  /** The running numbers of rows that were set aside, in the order in which they were met. */
  List<NumberAside> numbersAside() {
    return numbersAside;
  }

  @Override
  public void taken(Result made) {
    Unit to = unitOf.computeIfAbsent(made.method(), this::methodUnit);
    Unit from = made.writtenUnit();
    if (!from.equals(to)) {
      conversions.merge(
          List.of(made.method(), from.symbol()),
          new Conversion(made.method(), from, to, from.factorTo(to).orElseThrow(), 1),
          (one, more) -> new Conversion(one.method(), from, to, one.factor(), one.results() + 1));
    }
  }

  private Unit methodUnit(String method) {
    return found.methods().get(method).orElseThrow().unit();
  }

  /**
   * The conversions that the results needed whose readings were written in another unit, in the
   * order of the methods, then of the units' symbols.
   */
  List<Conversion> conversions() {
    List<String> order = List.copyOf(found.methods().keys());
    return conversions.values().stream()
        .sorted(
            Comparator.comparing((Conversion c) -> order.indexOf(c.method()))
                .thenComparing(c -> c.from().symbol()))
        .toList();
  }

  @Override
  public long neighbourhoodOf(Result made) {
    return made.takenAt().toLocalDate().toEpochDay();
  }

  @Override
  public int keyHash(Result made) {
    LocalDateTime at = made.takenAt();
    long hash = mixed(at.toLocalDate().toEpochDay(), at.toLocalTime().toSecondOfDay());
    hash = mixed(hash, made.sample().hashCode());
    return (int) mixed(hash, 31 * made.method().hashCode() + made.instrument().hashCode());
  }

  /**
   * Times and running numbers grow together; adding up their hashes gives the same sum too often.
   */
  private static long mixed(long hash, int more) {
    long product = (hash ^ more) * GOLDEN;
    return product ^ (product >>> Integer.SIZE);
  }

  @Override
  public boolean isSameKey(Result one, Result other) {
    return one.takenAt().equals(other.takenAt())
        && one.sample().equals(other.sample())
        && one.role() == other.role()
        && one.method().equals(other.method())
        && one.instrument().equals(other.instrument());
  }

  @Override
  public Object keyOf(Result made) {
    return new Key(made.takenAt(), made.method(), made.instrument(), made.role(), made.sample());
  }

  @Override
  public List<Part<Result>> parts() {
    return List.of(
        new Part<>("readings", r -> r.writtenReadings()),
        new Part<>("unit", r -> r.writtenUnit().symbol()),
        new Part<>("calibration", r -> r.calibration()),
        new Part<>("reagent_lot", r -> r.reagentLot()),
        new Part<>("operator", r -> r.operator()),
        new Part<>("remark", r -> r.remark()),
        new Part<>("session", r -> r.session()),
        new Part<>("temperature_c", r -> r.temperatureC()),
        new Part<>("sequence", r -> r.sequence()));
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
