package org.quietline.report.pdf;

import com.lowagie.text.pdf.BaseFont;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The two bundled faces, embedded as subsets. One object serves one file. */
final class Fonts {
  private final BaseFont regular;
  private final BaseFont bold;

  Fonts() {
    regular = load("Lato-Regular.ttf", 1);
    bold = load("Lato-Bold.ttf", 2);
  }

  private static BaseFont load(String file, long seed) {
    try (InputStream in = Fonts.class.getResourceAsStream("/org/quietline/report/fonts/" + file)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its font " + file);
      }
      BaseFont font =
          BaseFont.createFont(
              file, BaseFont.IDENTITY_H, BaseFont.EMBEDDED, false, in.readAllBytes(), null, true);
      font.setSubset(true);
      font.setIncludeCidSet(false);
      font.setSecureRandom(new FixedRandom(seed));
      return font;
    } catch (IOException e) {
      throw new UncheckedIOException("font " + file, e);
    }
  }

  BaseFont base(Face face) {
    return face == Face.BOLD ? bold : regular;
  }

  double width(String text, Face face, double size) {
    return base(face).getWidthPoint(text, (float) size);
  }

  /**
   * The text with a question mark for each character the faces lack, which would otherwise vanish,
   * and a space for each control character.
   */
  String printable(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              if (Character.isISOControl(c)) {
                out.append(' ');
              } else {
                boolean both = regular.charExists(c) && bold.charExists(c);
                out.appendCodePoint(both ? c : '?');
              }
            });
    return out.toString();
  }
}
