package org.quietline.report.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.quietline.report.Chart;
import org.quietline.report.Chart.Axis;
import org.quietline.report.Chart.Level;
import org.quietline.report.Chart.Mark;
import org.quietline.report.Chart.Spot;
import org.quietline.report.Chart.Tick;
import org.quietline.report.Chart.Upright;
import org.quietline.report.Colour;
import org.quietline.report.ControlChart;
import org.quietline.report.ControlChart.Ring;
import org.quietline.report.ControlChart.Span;
import org.quietline.report.ControlChart.Strip;
import org.quietline.report.CurveChart;
import org.quietline.report.DotChart;
import org.quietline.report.DriftChart;
import org.quietline.report.DriftChart.Ends;
import org.quietline.report.DriftChart.Slice;
import org.quietline.report.Miniature;

/** Pictures seen as pixels: what is drawn, where, and in which colour. */
class ChartPainterTest {
  private static final int WIDTH = 360;
  private static final int HEIGHT = 150;
  private static final int SCALE = 4;
  private static final Axis TIME =
      new Axis(0, 100, List.of(new Tick(0, "Nov 2025"), new Tick(2, "Dec"), new Tick(50, "Jan")));
  private static final Axis VALUE = new Axis(0, 10, List.of(new Tick(5, "5")));
  private static final List<Level> LEVELS =
      List.of(
          new Level(9, "action 9", Level.Kind.ACTION),
          new Level(8, "warning 8", Level.Kind.WARNING),
          new Level(5, "centre 5", Level.Kind.CENTRE));

  private static BufferedImage drawn(Chart chart) {
    BufferedImage image =
        new BufferedImage(SCALE * WIDTH, SCALE * HEIGHT, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.scale(SCALE, SCALE);
    g.setPaint(Color.WHITE);
    g.fillRect(0, 0, WIDTH, HEIGHT);
    ChartPainter.draw(chart, g, WIDTH, HEIGHT);
    g.dispose();
    return image;
  }

  private static int count(BufferedImage image, Colour colour) {
    int n = 0;
    for (int x = 0; x < image.getWidth(); x++) {
      for (int y = 0; y < image.getHeight(); y++) {
        n += near(image.getRGB(x, y), colour.rgb()) ? 1 : 0;
      }
    }
    return n;
  }

  private static boolean near(int a, int b) {
    int away = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      away = Math.max(away, Math.abs(((a >> shift) & 0xFF) - ((b >> shift) & 0xFF)));
    }
    return away <= 6;
  }

  private static ControlChart control(List<Mark> marks, List<Ring> rings, Span span) {
    return new ControlChart(
        TIME,
        VALUE,
        List.of(new Strip(0, 50, "C-1", true), new Strip(50, 52, "C-2 too long", false)),
        LEVELS,
        LEVELS.stream()
            .map(
                l ->
                    new ControlChart.Bound(
                        l.kind(), List.of(new Spot(0, l.at()), new Spot(TIME.upper(), l.at()))))
            .toList(),
        List.of(new ControlChart.Event(30, true), new ControlChart.Event(35, false)),
        marks,
        List.of(),
        List.of(List.of(new Spot(10, 4), new Spot(40, 6))),
        rings,
        Optional.of(span));
  }

  @Test
  void everySecondCalibrationIsTintedAndNothingElse() {
    BufferedImage image = drawn(control(List.of(), List.of(), new Span(0, 60, "baseline")));
    double plot = SCALE * SCALE * (WIDTH - 30.0 - 72) * (HEIGHT - 13 - Words.LINE - 2);
    assertEquals(0.5, count(image, Colour.TINT) / plot, 0.06);
    assertEquals(0, count(image, Colour.ACCENT));
  }

  @Test
  void anOpenSignalIsRingedInTheAccentAndAClosedOneIsNot() {
    List<Mark> marks = List.of(new Mark(70, 3, Mark.Shape.DOT, ""));
    Span span = new Span(0, 10, "baseline");
    List<Ring> open = List.of(new Ring(70, 3, true, "a"));
    List<Ring> closed = List.of(new Ring(70, 3, false, "a"));
    assertTrue(count(drawn(control(marks, open, span)), Colour.ACCENT) > 5);
    assertEquals(0, count(drawn(control(marks, closed, span)), Colour.ACCENT));
  }

  @Test
  void theShapesOfResultsDiffer() {
    Span span = new Span(0, 10, "baseline");
    int none = count(drawn(control(List.of(), List.of(), span)), Colour.INK);
    int dot = ink(new Mark(70, 3, Mark.Shape.DOT, ""), span) - none;
    int open = ink(new Mark(70, 3, Mark.Shape.OPEN, ""), span) - none;
    int cross = ink(new Mark(70, 3, Mark.Shape.CROSS, ""), span) - none;
    int off = ink(new Mark(70, 14, Mark.Shape.OFF, "14"), span) - none;
    String all = dot + " " + open + " " + cross + " " + off;
    assertTrue(dot > open, all);
    assertTrue(off > dot, all);
    assertNotEquals(dot, cross, all);
  }

  private static int ink(Mark mark, Span span) {
    return count(drawn(control(List.of(mark), List.of(), span)), Colour.INK);
  }

  @Test
  void aTriangleStandsAtTheEdgeOfEitherSide() {
    Span span = new Span(0, 10, "baseline");
    List<Mark> both =
        List.of(new Mark(70, 14, Mark.Shape.OFF, "14"), new Mark(98, -4, Mark.Shape.OFF, "−4"));
    assertTrue(
        count(drawn(control(both, List.of(), span)), Colour.INK)
            > count(drawn(control(both.subList(0, 1), List.of(), span)), Colour.INK));
  }

  private static DriftChart drift(List<Slice> fan) {
    return drift(fan, List.of());
  }

  private static DriftChart drift(List<Slice> fan, List<List<Spot>> earlier) {
    return new DriftChart(
        new Axis(-1, 31, List.of(new Tick(0, "0"), new Tick(30, "30"))),
        new Axis(-2, 2, List.of(new Tick(0, "0"))),
        List.of(
            new Level(0, "no deviation", Level.Kind.CENTRE),
            new Level(1, "allowance", Level.Kind.ACTION)),
        List.of(new Mark(3, 0.2, Mark.Shape.DOT, "")),
        fan,
        List.of(
            new Upright(10, "today", Colour.GREY, false),
            new Upright(20, "last safe day", Colour.ACCENT, true)),
        earlier);
  }

  @Test
  void theFanHasThreeBandsAndALine() {
    List<Slice> fan =
        List.of(
            new Slice(0, 0, new Ends(-0.1, 0.1), new Ends(-0.2, 0.2), new Ends(-0.4, 0.4)),
            new Slice(30, 1, new Ends(0.7, 1.3), new Ends(0.4, 1.6), new Ends(0, 1.9)));
    BufferedImage image = drawn(drift(fan));
    assertTrue(count(image, Colour.FORECAST) > 50);
    assertTrue(count(image, Colour.FORECAST_HALF) > 500);
    assertTrue(count(image, Colour.FORECAST_MOST) > 300);
    assertTrue(count(image, Colour.FORECAST_NEARLY_ALL) > 300);
    assertTrue(count(image, Colour.ACCENT) > 30);
  }

  @Test
  void withoutALineThereIsNoFan() {
    BufferedImage image = drawn(drift(List.of()));
    assertEquals(0, count(image, Colour.FORECAST_HALF));
    assertEquals(0, count(image, Colour.FORECAST));
  }

  @Test
  void earlierWindowsAreThinLines() {
    List<Spot> window = List.of(new Spot(2, -1.4), new Spot(28, -1.4));
    int without = count(drawn(drift(List.of())), Colour.PALE);
    assertTrue(count(drawn(drift(List.of(), List.of(window))), Colour.PALE) > without + 300);
  }

  @Test
  void miniaturesAndBatchesAreDrawn() {
    List<Mark> marks = List.of(new Mark(70, 3, Mark.Shape.DOT, ""));
    List<Ring> rings = List.of(new Ring(70, 3, true, ""));
    Axis bareTime = new Axis(0, 100, List.of());
    Axis bareValue = new Axis(0, 10, List.of());
    assertTrue(
        count(drawn(new Miniature(bareTime, bareValue, LEVELS, marks, rings)), Colour.ACCENT) > 3);
    assertTrue(count(drawn(new DotChart(TIME, VALUE, LEVELS, marks, rings)), Colour.ACCENT) > 3);
  }

  @Test
  void aCurveIsDrawnWithItsNamedPlaces() {
    List<Spot> curve = List.of(new Spot(0, 9), new Spot(50, 1), new Spot(100, 6));
    BufferedImage image =
        drawn(
            new CurveChart(
                TIME, VALUE, curve, List.of(new Upright(40, "the rule", Colour.ACCENT, true))));
    BufferedImage bare = drawn(new CurveChart(TIME, VALUE, List.of(), List.of()));
    assertTrue(count(image, Colour.INK) > count(bare, Colour.INK) + 300);
    assertTrue(count(image, Colour.ACCENT) > 50);
    assertEquals(0, count(bare, Colour.ACCENT));
  }

  /** Relative luminance of sRGB, ITU-R BT.709 weights. */
  private static double lightness(Colour colour) {
    double sum = 0;
    double[] weights = {0.0722, 0.7152, 0.2126};
    for (int i = 0; i < 3; i++) {
      double c = ((colour.rgb() >> (8 * i)) & 0xFF) / 255.0;
      sum += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
    }
    return sum;
  }

  private static double contrast(Colour colour) {
    return 1.05 / (lightness(colour) + 0.05);
  }

  /** WCAG 2.1, 1.4.3: words need a contrast of 4.5 to their ground. */
  @Test
  void coloursOfWordsCanBeReadAndBandsDifferInGrey() {
    for (Colour words : List.of(Colour.INK, Colour.GREY, Colour.ACCENT, Colour.FORECAST)) {
      assertTrue(contrast(words) >= 4.5, words + " " + contrast(words));
    }
    assertTrue(lightness(Colour.FORECAST_HALF) + 0.1 < lightness(Colour.FORECAST_MOST));
    assertTrue(lightness(Colour.FORECAST_MOST) + 0.1 < lightness(Colour.FORECAST_NEARLY_ALL));
  }
}
