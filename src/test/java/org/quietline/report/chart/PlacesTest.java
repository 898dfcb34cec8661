package org.quietline.report.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.report.Chart.Axis;
import org.quietline.report.Chart.Upright;
import org.quietline.report.Colour;

class PlacesTest {
  private static final Frame FRAME =
      new Frame(
          new Rectangle2D.Double(40, 20, 200, 100),
          new Axis(0, 30, List.of()),
          new Axis(-1, 1, List.of()));

  private static Upright upright(double x, String label) {
    return new Upright(x, label, Colour.GREY, false);
  }

  @Test
  void aFrameTakesValuesToPoints() {
    assertEquals(140, FRAME.px(15), 1e-9);
    assertEquals(20, FRAME.py(1), 1e-9);
    assertEquals(95, FRAME.py(-0.5), 1e-9);
  }

  @Test
  void aLetterStandsAboveItsRingWhereThatIsFree() {
    Rectangle2D place = Places.freest(100, 60, 4, 5, FRAME, List.of());
    assertTrue(place.getMaxY() <= 56);
    assertEquals(100, place.getCenterX(), 1e-9);
  }

  @Test
  void aLetterLeavesWhatIsTaken() {
    Rectangle2D above = new Rectangle2D.Double(80, 30, 40, 26);
    Rectangle2D place = Places.freest(100, 60, 4, 5, FRAME, List.of(above));
    assertFalse(place.intersects(above));
    Rectangle2D atTheTop = Places.freest(100, 22, 4, 5, FRAME, List.of());
    assertTrue(FRAME.area().contains(atTheTop));
  }

  @Test
  void wordsOverLinesThatAreFarApartStandInOneRow() {
    List<Places.Over> places =
        Places.over(List.of(upright(28, "expiry"), upright(5, "today")), FRAME, 320);
    assertEquals(List.of(0, 0), places.stream().map(Places.Over::row).toList());
    assertEquals("today", places.get(0).upright().label());
  }

  @Test
  void wordsOverNeighbouringLinesNeverTouch() {
    List<Places.Over> places =
        Places.over(
            List.of(
                upright(15, "today, 31 Oct"),
                upright(17, "last safe day, 3 Nov"),
                upright(18, "expiry, 5 Nov")),
            FRAME,
            320);
    assertTrue(places.get(0).right() < FRAME.px(15));
    assertTrue(places.get(2).left() > FRAME.px(18));
    assertEquals(1, places.get(1).row());
  }

  @Test
  void namesOfLevelsAreSpreadALineApartAndStayInOrder() {
    double[] at = {50, 51, 52, 90};
    Words.spread(at);
    for (int i = 1; i < at.length; i++) {
      assertTrue(at[i] - at[i - 1] >= Words.LINE - 1e-3, at[i - 1] + " and " + at[i]);
    }
    assertEquals(51, at[1], 0.5);
  }

  @Test
  void aCharacterTheFaceLacksBecomesAQuestionMark() {
    assertEquals("C-31 ? Да", Faces.printable("C-31 中 Да"));
    assertTrue(Faces.width("wide", Faces.BOLD) > Faces.width("wide", Faces.REGULAR));
  }
}
