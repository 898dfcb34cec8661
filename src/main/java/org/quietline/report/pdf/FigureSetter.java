package org.quietline.report.pdf;

import java.util.ArrayList;
import java.util.List;
import org.quietline.report.Block;
import org.quietline.report.Colour;
import org.quietline.report.pdf.Item.Box;
import org.quietline.report.pdf.Item.Picture;
import org.quietline.report.pdf.Item.Run;
import org.quietline.report.pdf.Setter.Look;

/** Sets figures: plain words in a narrow left column, the picture right of it. */
final class FigureSetter {
  /** The share of the width that the words have. */
  private static final double WORDS = 0.245;

  private static final double GUTTER = 16;
  private static final double PARAGRAPH_GAP = 4;
  private static final double LETTER = 10;
  private static final double BELOW = 4;

  private final Setter setter;
  private final double width;

  FigureSetter(Setter setter, double width) {
    this.setter = setter;
    this.width = width;
  }

  Piece piece(Block.Figure figure) {
    List<Item> items = new ArrayList<>();
    double wordsWidth = width * WORDS;
    double left = wordsWidth + GUTTER;
    double room = width - left;
    double words = texts(items, figure.side(), wordsWidth);
    double y = title(items, figure, left, room);
    items.add(
        new Picture(new Box(left, y, room, figure.height()), figure.chart(), figure.description()));
    y += figure.height() + 3;
    y = captions(items, figure.under(), left, y, room);
    return Piece.of(items, Math.max(words, y) + BELOW, 5);
  }

  private double title(List<Item> items, Block.Figure figure, double left, double room) {
    Look strong = new Look(Face.BOLD, Setter.SMALL, Colour.INK, Role.CAPTION);
    Look plain = new Look(Face.REGULAR, Setter.SMALL, Colour.GREY, Role.CAPTION);
    double both = setter.width(figure.title(), strong) + 6 + setter.width(figure.facts(), plain);
    if (both <= room) {
      Run title = setter.line(figure.title(), strong, left, 0);
      items.add(title);
      items.add(setter.line(figure.facts(), plain, left + title.width() + 6, 0));
      return Setter.leading(Setter.SMALL) + 3;
    }
    items.addAll(setter.text(figure.title(), strong, left, 0, room));
    double y = setter.height(figure.title(), strong, room);
    items.addAll(setter.text(figure.facts(), plain, left, y, room));
    return y + setter.height(figure.facts(), plain, room) + 3;
  }

  private double texts(List<Item> items, List<Block.Paragraph> texts, double room) {
    double y = 0;
    for (Block.Paragraph text : texts) {
      Look look =
          new Look(Face.of(text.strong()), Setter.points(text.size()), text.colour(), Role.CAPTION);
      items.addAll(setter.text(text.text(), look, 0, y, room));
      y += setter.height(text.text(), look, room) + PARAGRAPH_GAP;
    }
    return y;
  }

  private double captions(
      List<Item> items, List<Block.Caption> captions, double left, double top, double room) {
    double y = top;
    for (Block.Caption caption : captions) {
      Look letter = new Look(Face.BOLD, Setter.SMALL, caption.colour(), Role.CAPTION);
      Look look =
          new Look(
              Face.of(caption.colour() == Colour.ACCENT),
              Setter.SMALL,
              caption.colour(),
              Role.CAPTION);
      double indent = 0;
      if (!caption.letter().isEmpty()) {
        Run run = setter.line(caption.letter(), letter, left, y);
        items.add(run);
        indent = Math.max(LETTER, run.width() + 4);
      }
      items.addAll(setter.text(caption.text(), look, left + indent, y, room - indent));
      y += setter.height(caption.text(), look, room - indent) + 1.5;
    }
    return y;
  }
}
