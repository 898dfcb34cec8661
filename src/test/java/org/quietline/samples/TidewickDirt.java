package org.quietline.samples;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/** Spoils single rows the way rows are spoilt in life; ABOUT.md lists each of them. */
final class TidewickDirt {
  private static final List<String> SLIP_DAYS = List.of("2026-04-22", "2026-04-23", "2026-04-24");

  private final List<TidewickRow> rows;

  TidewickDirt(List<TidewickRow> rows) {
    this.rows = new ArrayList<>(rows);
  }

  static List<TidewickRow> spoil(List<TidewickRow> rows) {
    TidewickDirt dirt = new TidewickDirt(rows);
    dirt.change(dirt.slip(), TidewickDirt::slipped);
    dirt.change(
        dirt.product("2025-12", 2),
        r ->
            r.withReadings(
                r.readings().subList(0, 1), r.unit(), "vial dropped before the second reading"));
    dirt.change(
        dirt.product("2026-01", 1),
        r ->
            r.withReadings(
                r.readings().stream().map(TidewickDirt::perKilogram).toList(), "mg/kg", ""));
    dirt.change(dirt.product("2026-02", 6), r -> r.withTakenAt("2026-02-30T09:10"));
    dirt.change(
        dirt.product("2026-03", 4),
        r -> r.withReadings(List.of("O.18", r.readings().get(1)), r.unit(), ""));
    dirt.change(dirt.product("2026-07", 3), r -> r.withMethod("toal-glycerin"));
    dirt.change(dirt.widest("2026-08"), TidewickDirt::readAgain);
    dirt.change(
        dirt.product("2026-09", 5),
        r ->
            r.withReadings(List.of("<0.050", "<0.050"), r.unit(), "")
                .withSample("WASH-31", "wash trial, thinned"));
    return List.copyOf(dirt.rows);
  }

  /** The row after itself once more, in the file of one month. */
  static List<TidewickRow> doubled(List<TidewickRow> month) {
    List<TidewickRow> copy = new ArrayList<>(month);
    copy.add(4, month.get(3));
    return copy;
  }

  /** Whether a row is the control result one of whose readings is typed ten times too big. */
  static boolean isSlip(TidewickRow row) {
    return row.is("total-glycerin", "control")
        && SLIP_DAYS.stream().anyMatch(row.takenAt()::startsWith);
  }

  private int slip() {
    return find(TidewickDirt::isSlip).get(0);
  }

  private int product(String month, int skip) {
    YearMonth wanted = YearMonth.parse(month);
    return find(r -> r.is("total-glycerin", "product") && r.month().equals(wanted)).get(skip);
  }

  private int widest(String month) {
    YearMonth wanted = YearMonth.parse(month);
    return find(r -> r.is("total-glycerin", "product") && r.month().equals(wanted)).stream()
        .max(Comparator.comparing(i -> range(rows.get(i))))
        .orElseThrow();
  }

  private List<Integer> find(Predicate<TidewickRow> wanted) {
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      if (wanted.test(rows.get(i))) {
        found.add(i);
      }
    }
    return found;
  }

  private void change(int index, UnaryOperator<TidewickRow> how) {
    rows.set(index, how.apply(rows.get(index)));
  }

  private static TidewickRow slipped(TidewickRow row) {
    String first = new BigDecimal(row.readings().get(0)).movePointRight(1).toPlainString();
    return row.withReadings(List.of(first, row.readings().get(1)), row.unit(), row.remark());
  }

  private static TidewickRow readAgain(TidewickRow row) {
    String third =
        new BigDecimal(row.readings().get(1)).add(new BigDecimal("0.001")).toPlainString();
    return row.withReadings(
        List.of(row.readings().get(0), row.readings().get(1), third), row.unit(), "read again");
  }

  private static String perKilogram(String percent) {
    return new BigDecimal(percent).movePointRight(4).toPlainString();
  }

  private static BigDecimal range(TidewickRow row) {
    return new BigDecimal(row.readings().get(0))
        .subtract(new BigDecimal(row.readings().get(1)))
        .abs();
  }
}
