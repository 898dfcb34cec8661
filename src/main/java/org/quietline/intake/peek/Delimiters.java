package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Which sign stands between two columns: the one that cuts the lines most evenly. */
final class Delimiters {
  static final String SIGNS = ",;\t|";
  private static final int LINES = 2000;
  private static final double NEARLY = 0.9;
  private static final double FEWEST = 0.4;

  private Delimiters() {}

  /**
   * A sign that may be the one.
   *
   * @param sign the sign
   * @param width the number of fields that most lines have
   * @param lines how many lines have it
   * @param all how many lines were looked at
   */
  record Cut(char sign, int width, int lines, int all) {
    double share() {
      return (double) lines / all;
    }

    String words() {
      return switch (sign) {
        case ',' -> "a comma";
        case ';' -> "a semicolon";
        case '\t' -> "a tab";
        case '|' -> "an upright stroke";
        default -> Shown.quoted(String.valueOf(sign));
      };
    }

    String toml() {
      return Toml.text(String.valueOf(sign));
    }
  }

  /** The signs that may be meant, the likeliest first; none where the lines have one field each. */
  static List<Cut> of(List<Line> lines, String signs) {
    List<Line> filled = lines.stream().filter(line -> !line.text().isBlank()).limit(LINES).toList();
    List<Cut> cuts = new ArrayList<>();
    for (int i = 0; i < signs.length(); i++) {
      Cut cut = cut(filled, signs.charAt(i));
      if (cut.width > 1 && cut.share() >= FEWEST) {
        cuts.add(cut);
      }
    }
    cuts.sort(Comparator.comparingDouble(Cut::share).thenComparing(Cut::width).reversed());
    if (cuts.isEmpty()) {
      return cuts;
    }
    return rivals(filled, cuts);
  }

  /** A sign that cuts nearly as evenly as the best stays only if it also cuts the first row. */
  private static List<Cut> rivals(List<Line> lines, List<Cut> cuts) {
    Cut best = cuts.get(0);
    List<Cut> near =
        new ArrayList<>(
            cuts.stream()
                .filter(c -> c.share() >= NEARLY * best.share() && cutsHeader(lines, c))
                .toList());
    if (near.isEmpty()) {
      return List.of(best);
    }
    near.sort(Comparator.comparing(Cut::width).reversed());
    Cut widest = near.get(0);
    near.removeIf(c -> !c.equals(widest) && c.width * 2 <= widest.width);
    return near;
  }

  private static boolean cutsHeader(List<Line> lines, Cut cut) {
    return lines.stream()
        .map(line -> line.cut(cut.sign))
        .filter(cells -> cells.size() == cut.width)
        .findFirst()
        .filter(cells -> cells.stream().noneMatch(cell -> otherSigns(cell, cut.sign) > 1))
        .isPresent();
  }

  private static long otherSigns(String cell, char sign) {
    return cell.chars().filter(c -> c != sign && SIGNS.indexOf(c) >= 0).count();
  }

  private static Cut cut(List<Line> lines, char sign) {
    Map<Integer, Integer> widths = new LinkedHashMap<>();
    lines.forEach(line -> widths.merge(line.cut(sign).size(), 1, Integer::sum));
    return widths.entrySet().stream()
        .filter(e -> e.getKey() > 1)
        .max(
            Comparator.comparingInt((Map.Entry<Integer, Integer> e) -> e.getValue())
                .thenComparing(Map.Entry::getKey))
        .map(e -> new Cut(sign, e.getKey(), e.getValue(), lines.size()))
        .orElse(new Cut(sign, 1, lines.size(), Math.max(1, lines.size())));
  }
}
