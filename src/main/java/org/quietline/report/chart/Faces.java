package org.quietline.report.chart;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The bundled face at the size of chart text. */
final class Faces {
  /** The size of all words in charts, in points. */
  static final float SIZE = 7.8f;

  /** The ordinary face. */
  static final Font REGULAR = load("Lato-Regular.ttf");

  /** The bold face. */
  static final Font BOLD = load("Lato-Bold.ttf");

  private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);

  private Faces() {}

  private static Font load(String file) {
    try (InputStream in = Faces.class.getResourceAsStream("/org/quietline/report/fonts/" + file)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its font " + file);
      }
      return Font.createFont(Font.TRUETYPE_FONT, in).deriveFont(SIZE);
    } catch (IOException e) {
      throw new UncheckedIOException("font " + file, e);
    } catch (FontFormatException e) {
      throw new IllegalStateException("font " + file + " cannot be read", e);
    }
  }

  static double width(String text, Font face) {
    return face.getStringBounds(printable(text), CONTEXT).getWidth();
  }

  /** The text with a question mark for each character that the face lacks. */
  static String printable(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints().forEach(c -> out.appendCodePoint(REGULAR.canDisplay(c) ? c : '?'));
    return out.toString();
  }
}
