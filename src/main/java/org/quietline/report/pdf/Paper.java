package org.quietline.report.pdf;

/** A size of paper. */
public enum Paper {
  /** ISO 216 A4, 210 by 297 mm. */
  A4(595.276, 841.89),
  /** US Letter, 8.5 by 11 inches. */
  LETTER(612, 792);

  /** The margin on all sides: 18 mm in points. */
  static final double MARGIN = 18 / 25.4 * 72;

  private final double width;
  private final double height;

  Paper(double width, double height) {
    this.width = width;
    this.height = height;
  }

  double width() {
    return width;
  }

  double height() {
    return height;
  }

  /** The width between the margins. */
  double textWidth() {
    return width - 2 * MARGIN;
  }
}
