package org.quietline.samples;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Draws the calibrations, control results and product results of one method. */
final class TidewickResults {
  /** From this day a third person tests. */
  private static final LocalDate THIRD_PERSON = LocalDate.of(2026, 2, 2);

  private static final List<String> REMARKS =
      List.of("sample warm on arrival", "cuvette wiped, read again", "after second wash", "hazy");

  private final TidewickMethod method;
  private final Noise noise;
  private final List<Double> offsets = new ArrayList<>();
  private final List<TidewickRow> rows = new ArrayList<>();
  private final List<List<String>> calibrations = new ArrayList<>();

  TidewickResults(TidewickMethod method, long seed) {
    this.method = method;
    this.noise = new Noise(seed);
  }

  List<TidewickRow> rows() {
    return List.copyOf(rows);
  }

  List<List<String>> calibrations() {
    return List.copyOf(calibrations);
  }

  void calibrateAndControl() {
    for (int i = 0; i < method.calibrated().size(); i++) {
      LocalDate day = method.calibrated().get(i);
      offsets.add(noise.normal(method.calibration()));
      calibrations.add(calibration(i, day));
      for (LocalDate control : controlDays(i)) {
        LocalDateTime at = control.atTime(method.hour(), 0).plusMinutes(noise.between(32, 50));
        rows.add(row(at, "control", method.material(), method.assigned(), oneOfTwo(), ""));
      }
    }
  }

  void test(LocalDate day, String sample) {
    double truth =
        method.productMean() + noise.normal(method.productDeviation()) + method.plantedIn(sample);
    LocalDateTime at = day.atTime(method.productHour(), 0).plusMinutes(noise.between(12, 195));
    double chance = noise.uniform();
    String remark = chance < 0.06 ? REMARKS.get(noise.between(0, REMARKS.size() - 1)) : "";
    rows.add(row(at, "product", sample, truth, anyone(day), remark));
  }

  private List<String> calibration(int index, LocalDate day) {
    LocalDateTime at = day.atTime(method.hour(), 0).plusMinutes(noise.between(5, 24));
    double blank = 0.042 + noise.normal(0.0015);
    boolean newMake =
        method.key().equals("total-glycerin") && !day.isBefore(TidewickMethod.STEP_FROM);
    double slope = method.slope() * (newMake ? 1 + TidewickMethod.STEP / method.assigned() : 1);
    List<String> fields =
        new ArrayList<>(
            List.of(name(index), method.key(), method.instrument(), at.toString(), text(blank, 3)));
    for (String assigned : method.calibrators()) {
      double response = blank + slope * Double.parseDouble(assigned) + noise.normal(0.002);
      fields.add(assigned);
      fields.add(text(response, 3));
    }
    fields.add(TidewickLots.inUse(method.key(), day, "control"));
    fields.add(oneOfTwo());
    fields.add("");
    return List.copyOf(fields);
  }

  /** The day of the calibration and each week after it, a day more or less. */
  private List<LocalDate> controlDays(int index) {
    LocalDate start = method.calibrated().get(index);
    boolean last = index + 1 == method.calibrated().size();
    boolean young = last && method.key().equals("free-fatty-acid");
    LocalDate end = last ? TidewickDays.LAST.plusDays(4) : method.calibrated().get(index + 1);
    List<LocalDate> days = new ArrayList<>(List.of(start));
    for (int week = 1; week <= 4 && !young; week++) {
      LocalDate plan = start.plusWeeks(week);
      LocalDate moved = plan.plusDays(noise.between(-1, 1));
      LocalDate day = TidewickDays.isOpen(moved) ? moved : plan;
      if (TidewickDays.isOpen(day) && plan.plusDays(4).isBefore(end)) {
        days.add(day);
      }
    }
    return days;
  }

  private TidewickRow row(
      LocalDateTime at, String role, String sample, double truth, String operator, String remark) {
    int window = window(at.toLocalDate());
    double level = truth + offsets.get(window) + method.planted(at) + noise.normal(method.day());
    double spread = method.readingOf(operator);
    return new TidewickRow(
        at.toString(),
        YearMonth.from(at),
        method.key(),
        method.instrument(),
        role,
        sample,
        List.of(
            text(level + noise.normal(spread), method.decimals()),
            text(level + noise.normal(spread), method.decimals())),
        method.unit(),
        name(window),
        TidewickLots.inUse(method.key(), at.toLocalDate(), role),
        operator,
        remark);
  }

  private int window(LocalDate day) {
    int found = 0;
    for (int i = 0; i < method.calibrated().size(); i++) {
      if (!method.calibrated().get(i).isAfter(day)) {
        found = i;
      }
    }
    return found;
  }

  private String oneOfTwo() {
    return noise.uniform() < 0.6 ? "RO" : "ML";
  }

  private String anyone(LocalDate day) {
    double chance = noise.uniform();
    if (!day.isBefore(THIRD_PERSON) && chance < 0.32) {
      return "TB";
    }
    return oneOfTwo();
  }

  private String name(int index) {
    return String.format(Locale.ROOT, "%s-C%02d", method.letters(), index + 1);
  }

  static String text(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }
}
