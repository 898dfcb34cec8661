package org.quietline.intake;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.quietline.bench.Calibration;
import org.quietline.bench.Calibration.Calibrator;
import org.quietline.bench.Instrument;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;

/** The rows of {@code calibrations.csv}. */
final class CalibrationRows implements RowKind<Calibration> {
  private static final String ASSIGNED = "calibrator_#_assigned";
  private static final String RESPONSE = "calibrator_#_response";
  static final Layout LAYOUT =
      new Layout(
          List.of("calibration", "method", "instrument", "calibrated_at"),
          List.of("blank_response", "reagent_lot", "operator", "remark"),
          Set.of("blank_response"),
          List.of(ASSIGNED, RESPONSE));

  private final Known<Method> methods;
  private final Known<Instrument> instruments;
  private final Map<String, List<Calibration>> byId = new LinkedHashMap<>();
  private final Map<String, String> refused = new LinkedHashMap<>();

  CalibrationRows(Known<Method> methods, Known<Instrument> instruments) {
    this.methods = methods;
    this.instruments = instruments;
  }

  private record Key(String id, String method, String instrument) {}

  @Override
  public Layout layout() {
    return LAYOUT;
  }

  @Override
  public Calibration make(Row row) throws Unusable {
    String id = row.need("calibration");
    Method method = methods.need("method", row.need("method"));
    Instrument instrument = instruments.need("instrument", row.need("instrument"));
    LocalDateTime at = row.needTime("calibrated_at");
    Optional<BigDecimal> blank = row.number("blank_response");
    List<Calibrator> calibrators = calibrators(row);
    Calibration made =
        row.build(
            () ->
                new Calibration(
                    id,
                    method.key(),
                    instrument.key(),
                    at,
                    blank,
                    calibrators,
                    row.text("reagent_lot"),
                    row.text("operator"),
                    row.text("remark"),
                    row.origin()));
    byId.computeIfAbsent(id, i -> new ArrayList<>()).add(made);
    return made;
  }

  private static List<Calibrator> calibrators(Row row) throws Unusable {
    List<Calibrator> calibrators = new ArrayList<>();
    for (int i = 1; i <= row.header().numbered(); i++) {
      String assignedColumn = ASSIGNED.replace("#", Integer.toString(i));
      String responseColumn = RESPONSE.replace("#", Integer.toString(i));
      Optional<BigDecimal> assigned = row.number(assignedColumn);
      Optional<BigDecimal> response = row.number(responseColumn);
      if (assigned.isPresent()) {
        calibrators.add(new Calibrator(assigned.get(), response));
      } else if (response.isPresent()) {
        throw new Unusable(
            responseColumn,
            response.get().toPlainString(),
            responseColumn
                + " is given without "
                + assignedColumn
                + "; write what the calibrator is worth.");
      }
    }
    return calibrators;
  }

  @Override
  public void refused(Row row, String sentence) {
    row.text("calibration")
        .ifPresent(
            id ->
                refused.putIfAbsent(
                    id, "its row in " + row.origin() + ", was set aside: " + sentence));
  }

  @Override
  public Object keyOf(Calibration made) {
    return new Key(made.key(), made.method(), made.instrument());
  }

  @Override
  public List<Part<Calibration>> parts() {
    return List.of(
        new Part<>("calibrated_at", c -> c.calibratedAt()),
        new Part<>("blank_response", c -> c.blankResponse()),
        new Part<>("calibrators", c -> c.calibrators().stream().map(this::show).toList()),
        new Part<>("reagent_lot", c -> c.reagentLot()),
        new Part<>("operator", c -> c.operator()),
        new Part<>("remark", c -> c.remark()));
  }

  private String show(Calibrator calibrator) {
    return calibrator.assigned() + ":" + RowText.of(calibrator.response());
  }

  @Override
  public Origin originOf(Calibration made) {
    return made.origin();
  }

  /** Checks that the calibration a row names is one of its method and instrument. */
  void check(String id, String method, String instrument) throws Unusable {
    List<Calibration> named = byId.getOrDefault(id, List.of());
    for (Calibration calibration : named) {
      if (calibration.isFor(method, instrument)) {
        return;
      }
    }
    if (refused.containsKey(id)) {
      throw problem(id, " cannot be used: " + refused.get(id));
    } else if (named.isEmpty()) {
      throw problem(id, " is not in calibrations.csv" + NearestName.hint(id, byId.keySet()) + ".");
    } else {
      Calibration other = named.get(0);
      throw problem(
          id,
          " is a calibration of "
              + other.method()
              + " on "
              + other.instrument()
              + ", not of "
              + method
              + " on "
              + instrument
              + "; name the right one or leave the field empty.");
    }
  }

  private static Unusable problem(String id, String rest) {
    return new Unusable("calibration", id, Excerpt.quoted(id) + rest);
  }
}
