package org.quietline.report.pdf;

import java.util.ArrayList;
import java.util.List;
import org.quietline.report.Block.Size;
import org.quietline.report.Colour;
import org.quietline.report.pdf.Item.Run;

/** Sets text in lines. */
final class Setter {
  /** The size of titles and of the gravest verdict. */
  static final double TITLE = 21;

  /** The size of answers and questions. */
  static final double LARGE = 11.5;

  /** The size of ordinary text. */
  static final double BODY = 9.5;

  /** The size of notes. */
  static final double SMALL = 8;

  /** The most lines of a text that is set in one piece, so that a piece always fits on a sheet. */
  private static final int MOST_LINES = 12;

  private final Fonts fonts;

  Setter(Fonts fonts) {
    this.fonts = fonts;
  }

  static double points(Size size) {
    return switch (size) {
      case LEAD -> LARGE;
      case BODY -> BODY;
      case SMALL -> SMALL;
    };
  }

  /** The distance of baselines at a size. */
  static double leading(double size) {
    return size * (size > LARGE ? 1.15 : 1.36);
  }

  /** How text looks. */
  record Look(Face face, double size, Colour colour, Role role) {}

  double width(String text, Look look) {
    return fonts.width(fonts.printable(text), look.face(), look.size());
  }

  /** The lines of a text within a width; a word wider than that is broken. */
  List<String> lines(String text, Look look, double width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String bound : Bonds.of(fonts.printable(text).strip()).split("\\s+", -1)) {
      String word = Bonds.loosened(bound);
      String longer = line.isEmpty() ? word : line + " " + word;
      if (fits(longer, look, width)) {
        line = longer;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line);
      }
      line = word;
      while (line.length() > 1 && !fits(line, look, width)) {
        int cut = cut(line, look, width);
        lines.add(line.substring(0, cut));
        line = line.substring(cut);
      }
    }
    lines.add(line);
    return lines;
  }

  private boolean fits(String text, Look look, double width) {
    return text.isEmpty() || fonts.width(text, look.face(), look.size()) <= width;
  }

  /** How much of a long word fits, at least one character; after a stroke or hyphen if near. */
  private int cut(String word, Look look, double width) {
    int cut = 1;
    while (cut < word.length() && fits(word.substring(0, cut + 1), look, width)) {
      cut++;
    }
    for (int i = cut; i > cut / 2; i--) {
      char before = word.charAt(i - 1);
      if (before == '/' || before == '-' || before == '_') {
        return i;
      }
    }
    boolean split = cut > 1 && Character.isHighSurrogate(word.charAt(cut - 1));
    return split ? cut - 1 : cut;
  }

  /** One line, its baseline one capital under the top. */
  Run line(String text, Look look, double x, double top) {
    String printable = fonts.printable(text);
    double width = fonts.width(printable, look.face(), look.size());
    double baseline = top + look.size() * 0.8;
    return new Run(
        x, baseline, width, printable, look.face(), look.size(), look.colour(), look.role());
  }

  /** A line that ends at the right edge. */
  Run rightLine(String text, Look look, double right, double top) {
    Run run = line(text, look, 0, top);
    return run.moved(right - run.width(), 0);
  }

  /** As many lines of a text as may stand in one piece; the last one shows where it was cut. */
  private List<String> fewLines(String text, Look look, double width) {
    List<String> lines = lines(text, look, width);
    if (lines.size() <= MOST_LINES) {
      return lines;
    }
    List<String> few = new ArrayList<>(lines.subList(0, MOST_LINES));
    few.set(MOST_LINES - 1, shortened(lines.get(MOST_LINES - 1) + " …", look, width));
    return few;
  }

  /** A text in lines from a top; the height is {@link #height}. */
  List<Item> text(String text, Look look, double x, double top, double width) {
    List<Item> runs = new ArrayList<>();
    double y = top;
    for (String line : fewLines(text, look, width)) {
      if (!line.isEmpty()) {
        runs.add(line(line, look, x, y));
      }
      y += leading(look.size());
    }
    return runs;
  }

  /** A text in lines that end at a right edge. */
  List<Item> rightText(String text, Look look, double right, double top, double width) {
    List<Item> runs = new ArrayList<>();
    double y = top;
    for (String line : fewLines(text, look, width)) {
      runs.add(rightLine(line, look, right, y));
      y += leading(look.size());
    }
    return runs;
  }

  /** The height of a text within a width. */
  double height(String text, Look look, double width) {
    return fewLines(text, look, width).size() * leading(look.size());
  }

  /** The text cut to a width, with dots where it was cut. */
  String shortened(String text, Look look, double width) {
    String printable = fonts.printable(text);
    if (fits(printable, look, width)) {
      return printable;
    }
    int end = printable.length();
    while (end > 1 && !fits(printable.substring(0, end).stripTrailing() + "…", look, width)) {
      end--;
    }
    return printable.substring(0, end).stripTrailing() + "…";
  }
}
