package org.quietline.intake.peek;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which decimal mark the numbers of a file have.
 *
 * @param setting what to write as {@code decimal}; empty where it has to be asked
 * @param found in words
 * @param why what says so
 */
record DecimalMark(Optional<String> setting, String found, String why) {

  static DecimalMark of(List<Column> numeric, char delimiter) {
    Map<NumberShape, Integer> counts = new EnumMap<>(NumberShape.class);
    Map<NumberShape, String> examples = new LinkedHashMap<>();
    for (Column column : numeric) {
      for (String cell : column.filled()) {
        NumberShape shape = NumberShape.of(cell);
        counts.merge(shape, 1, Integer::sum);
        examples.putIfAbsent(shape, cell);
      }
    }
    return new Weighing(counts, examples, delimiter).weigh();
  }

  private record Weighing(
      Map<NumberShape, Integer> counts, Map<NumberShape, String> examples, char delimiter) {

    DecimalMark weigh() {
      int points = count(NumberShape.POINT);
      int commas = count(NumberShape.COMMA);
      int openPoints = count(NumberShape.POINT_OR_THOUSANDS);
      int openCommas = count(NumberShape.COMMA_OR_THOUSANDS);
      if (points + commas + openPoints + openCommas == 0) {
        return new DecimalMark(Optional.of("."), "none", "no number has a fraction");
      }
      if (points > 0 && commas > 0) {
        return new DecimalMark(
            Optional.of("either"),
            "a point or a comma",
            seen(NumberShape.POINT) + " and " + seen(NumberShape.COMMA) + " can be nothing else");
      }
      if (points > 0 && openCommas == 0) {
        return new DecimalMark(Optional.of("."), "a point", seen(NumberShape.POINT));
      }
      if (commas > 0 && openPoints == 0) {
        return new DecimalMark(Optional.of(","), "a comma", seen(NumberShape.COMMA));
      }
      if (delimiter == ',' && commas + openCommas == 0) {
        return new DecimalMark(
            Optional.of("."),
            "a point",
            "the sheet is cut at commas and no number holds one, so a decimal comma is out");
      }
      return open();
    }

    private DecimalMark open() {
      String comma = seen(NumberShape.COMMA_OR_THOUSANDS);
      String point = seen(NumberShape.POINT_OR_THOUSANDS);
      String both = comma.isEmpty() || point.isEmpty() ? comma + point : comma + " and " + point;
      return new DecimalMark(
          Optional.empty(), "open", both + " may hold a decimal mark or a thousands mark");
    }

    private int count(NumberShape shape) {
      return counts.getOrDefault(shape, 0);
    }

    private String seen(NumberShape shape) {
      int n = count(shape);
      return n == 0 ? "" : Shown.counted(n, "number") + " like " + examples.getOrDefault(shape, "");
    }
  }
}
