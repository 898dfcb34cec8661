package org.quietline.intake;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.OutsideResult;

/** The rows of {@code outside.csv}. */
final class OutsideRows implements RowKind<OutsideResult> {
  static final Layout LAYOUT =
      new Layout(
          List.of("sample", "method", "laboratory", "value"),
          List.of(
              "reported_on",
              "expanded_uncertainty",
              "coverage_factor",
              "assessment_deviation",
              "remark"),
          Set.of("expanded_uncertainty", "coverage_factor", "assessment_deviation"),
          List.of());

  private final Known<Method> methods;

  OutsideRows(Known<Method> methods) {
    this.methods = methods;
  }

  private record Key(
      String sample, String method, String laboratory, Optional<LocalDate> reportedOn) {}

  @Override
  public Layout layout() {
    return LAYOUT;
  }

  @Override
  public OutsideResult make(Row row) throws Unusable {
    String sample = row.need("sample");
    Method method = methods.need("method", row.need("method"));
    String laboratory = row.need("laboratory");
    Optional<LocalDate> reportedOn = row.day("reported_on");
    BigDecimal value = row.needNumber("value");
    Optional<BigDecimal> uncertainty = positive(row, "expanded_uncertainty");
    Optional<BigDecimal> factor = positive(row, "coverage_factor");
    Optional<BigDecimal> assessment = positive(row, "assessment_deviation");
    return row.build(
        () ->
            new OutsideResult(
                sample,
                method.key(),
                laboratory,
                reportedOn,
                value,
                uncertainty,
                factor,
                assessment,
                row.text("remark"),
                row.origin()));
  }

  private static Optional<BigDecimal> positive(Row row, String column) throws Unusable {
    Optional<BigDecimal> number = row.number(column);
    if (number.isPresent() && number.get().signum() <= 0) {
      throw new Unusable(
          column,
          number.get().toPlainString(),
          column
              + " is "
              + number.get().toPlainString()
              + ", it must be more than 0; leave it empty where it is not known.");
    }
    return number;
  }

  @Override
  public Object keyOf(OutsideResult made) {
    return new Key(made.sample(), made.method(), made.laboratory(), made.reportedOn());
  }

  @Override
  public List<Part<OutsideResult>> parts() {
    return List.of(
        new Part<>("value", o -> o.value()),
        new Part<>("expanded_uncertainty", o -> o.expandedUncertainty()),
        new Part<>("coverage_factor", o -> o.coverageFactor()),
        new Part<>("assessment_deviation", o -> o.assessmentDeviation()),
        new Part<>("remark", o -> o.remark()));
  }

  @Override
  public Origin originOf(OutsideResult made) {
    return made.origin();
  }
}
