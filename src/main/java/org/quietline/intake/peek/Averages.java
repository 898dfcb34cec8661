package org.quietline.intake.peek;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/** Whether a column is the mean of others: an exported average is no reading. */
final class Averages {
  private static final int FEWEST_ROWS = 3;

  private Averages() {}

  /** Whether, in every row that can be compared, a column is the rounded mean of the others. */
  static boolean isMean(Column column, List<Column> of) {
    if (of.size() < 2) {
      return false;
    }
    int compared = 0;
    boolean moved = false;
    for (int row = 0; row < column.cells().size(); row++) {
      Optional<BigDecimal> shown = number(column.cells().get(row));
      int at = row;
      List<BigDecimal> parts =
          of.stream().flatMap(c -> number(c.cells().get(at)).stream()).toList();
      if (shown.isPresent() && parts.size() == of.size()) {
        if (!isRounded(parts, shown.get())) {
          return false;
        }
        compared++;
        moved |= parts.stream().anyMatch(p -> p.compareTo(parts.get(0)) != 0);
      }
    }
    return compared >= FEWEST_ROWS && moved;
  }

  private static boolean isRounded(List<BigDecimal> parts, BigDecimal shown) {
    BigDecimal sum = parts.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
    BigDecimal mean = sum.divide(BigDecimal.valueOf(parts.size()), MathContext.DECIMAL64);
    BigDecimal step = BigDecimal.ONE.movePointLeft(shown.scale());
    BigDecimal half = step.divide(BigDecimal.valueOf(2), MathContext.DECIMAL64);
    return mean.subtract(shown).abs().setScale(15, RoundingMode.HALF_EVEN).compareTo(half) <= 0;
  }

  private static Optional<BigDecimal> number(String text) {
    boolean plain = NumberShape.of(text).isNumber() && text.matches("[+-]?[\\d.,]+");
    return plain ? Optional.of(new BigDecimal(text.replace(',', '.'))) : Optional.empty();
  }
}
