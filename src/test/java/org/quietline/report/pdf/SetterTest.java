package org.quietline.report.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.report.Colour;
import org.quietline.report.pdf.Setter.Look;

class SetterTest {
  private final Setter setter = new Setter(new Fonts());
  private final Look look = new Look(Face.REGULAR, 9.5, Colour.INK, Role.TEXT);

  @Test
  void linesFitAndLoseNoWord() {
    String text = "One dot is one result, the mean of two readings, and strips are calibrations.";
    List<String> lines = setter.lines(text, look, 120);
    assertTrue(lines.size() > 2);
    lines.forEach(l -> assertTrue(setter.width(l, look) <= 120, l));
    assertEquals(text, String.join(" ", lines));
  }

  @Test
  void aWordThatIsTooLongIsBrokenAfterAStroke() {
    String id = "total-glycerin/PM-1/QC-TG-A/2026-10-14T09:12/beyond-action-limit";
    List<String> lines = setter.lines(id, look, 100);
    lines.forEach(l -> assertTrue(setter.width(l, look) <= 100, l));
    assertEquals(id, String.join("", lines));
    assertTrue(lines.get(0).endsWith("/") || lines.get(0).endsWith("-"), lines.toString());
    List<String> solid = setter.lines("x".repeat(80), look, 100);
    assertEquals("x".repeat(80), String.join("", solid));
  }

  @Test
  void aWidthThatHoldsNothingStillEnds() {
    assertEquals(List.of("a", "b", "c"), setter.lines("abc", look, 0.5));
  }

  @Test
  void aNumberStaysWithItsUnitAndADayWithItsMonth() {
    for (double width = 40; width < 240; width += 3) {
      for (String line :
          setter.lines(
              "below 0.24 % mass to 3 November 2026 with n = 65 at 5 % each", look, width)) {
        assertFalse(line.startsWith("%") || line.startsWith("mass"), line);
        assertFalse(line.startsWith("November") || line.endsWith(" n"), line);
        assertFalse(line.indexOf('\u00A0') >= 0, line);
      }
    }
  }

  @Test
  void figuresAreTabular() {
    double one = setter.width("1", look);
    for (char digit = '0'; digit <= '9'; digit++) {
      assertEquals(one, setter.width(String.valueOf(digit), look), 1e-9);
    }
  }

  @Test
  void whatTheFacesLackBecomesAQuestionMark() {
    Fonts fonts = new Fonts();
    assertEquals("Бak? ? ok", fonts.printable("Бak中 \uD83D\uDE00 ok"));
    assertEquals("a b c", fonts.printable("a\tb\nc"));
    String used = "− ± ≤ ≥ × √ Σ σ λ χ ² · – … µ °";
    assertEquals(used, fonts.printable(used));
  }

  @Test
  void aShortenedTextShowsThatItWasCut() {
    String cut = setter.shortened("A bench with a name that runs on", look, 80);
    assertTrue(cut.endsWith("…") && setter.width(cut, look) <= 80, cut);
    assertEquals("short", setter.shortened("short", look, 80));
    assertEquals("A…", setter.shortened("A bench", look, 1));
  }
}
