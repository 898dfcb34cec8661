package org.quietline.report.pdf;

import java.util.ArrayList;
import java.util.List;
import org.quietline.report.Block;
import org.quietline.report.Colour;
import org.quietline.report.Document;
import org.quietline.report.Page;
import org.quietline.report.pdf.Item.Rule;
import org.quietline.report.pdf.Item.Run;
import org.quietline.report.pdf.Setter.Look;

/** Places a document on sheets; nothing is drawn. */
final class Layout {
  private static final double HEAD = 33;
  private static final double FOOT = 24;
  private static final Look FURNITURE =
      new Look(Face.REGULAR, Setter.SMALL, Colour.GREY, Role.ARTIFACT);

  private final Setter setter;
  private final Paper paper;
  private final double bottom;
  private final List<Sheet> sheets = new ArrayList<>();
  private List<Item> items = new ArrayList<>();
  private String bookmark = "";
  private double y;
  private double top;

  private Layout(Setter setter, Paper paper) {
    this.setter = setter;
    this.paper = paper;
    this.bottom = paper.height() - Paper.MARGIN - FOOT;
  }

  /** The sheets of a document. */
  static List<Sheet> of(Document document, Setter setter, Paper paper) {
    Layout layout = new Layout(setter, paper);
    document.pages().forEach(layout::page);
    return layout.furnished(document);
  }

  private void page(Page page) {
    bookmark = page.name();
    open("");
    Typesetter typesetter = new Typesetter(setter, paper.textWidth());
    List<Piece> pieces = new ArrayList<>();
    for (Block block : page.blocks()) {
      pieces.addAll(typesetter.pieces(block));
    }
    int i = 0;
    while (i < pieces.size()) {
      int end = i;
      double height = 0;
      while (end < pieces.size() - 1 && pieces.get(end).stays()) {
        height += pieces.get(end).gap() + pieces.get(end).height();
        end++;
      }
      height += pieces.get(end).gap() + pieces.get(end).height();
      if (y + height > bottom && y > top) {
        close();
        open(page.name());
        pieces.get(i).head().forEach(this::place);
      }
      for (; i <= end; i++) {
        if (y + pieces.get(i).height() > bottom && y > top) {
          close();
          open(page.name());
        }
        place(pieces.get(i));
      }
    }
    close();
  }

  private void place(Piece piece) {
    double from = y > top ? y + piece.gap() : y;
    piece.items().forEach(item -> items.add(item.moved(Paper.MARGIN, from)));
    y = from + piece.height();
  }

  private void open(String continued) {
    items = new ArrayList<>();
    top = Paper.MARGIN + HEAD;
    if (!continued.isEmpty()) {
      Look look = new Look(Face.REGULAR, Setter.SMALL, Colour.GREY, Role.ARTIFACT);
      String text = setter.shortened(continued, look, paper.textWidth() - 60) + ", continued";
      items.add(setter.line(text, look, Paper.MARGIN, top));
      top += Setter.leading(Setter.SMALL) + 8;
    }
    y = top;
  }

  private void close() {
    sheets.add(new Sheet(sheets.size() + 1, bookmark, items));
    bookmark = "";
  }

  private List<Sheet> furnished(Document document) {
    List<Sheet> done = new ArrayList<>();
    for (Sheet sheet : sheets) {
      List<Item> all = new ArrayList<>(sheet.items());
      furniture(all, document, sheet.number());
      done.add(new Sheet(sheet.number(), sheet.bookmark(), all));
    }
    return done;
  }

  private void furniture(List<Item> all, Document document, int number) {
    double left = Paper.MARGIN;
    double right = paper.width() - Paper.MARGIN;
    double headTop = Paper.MARGIN;
    Run period = setter.rightLine(document.period(), FURNITURE, right, headTop);
    all.add(period);
    String bench = setter.shortened(document.bench(), FURNITURE, period.x() - left - 20);
    all.add(setter.line(bench, FURNITURE, left, headTop));
    double width = paper.textWidth();
    all.add(new Rule(left, headTop + 13, width, 0.8, Colour.INK));
    double footTop = paper.height() - Paper.MARGIN - Setter.SMALL * 1.05;
    Run count = setter.rightLine(number + " of " + sheets.size(), FURNITURE, right, footTop);
    all.add(count);
    String foot = setter.shortened(document.foot(), FURNITURE, count.x() - left - 20);
    all.add(setter.line(foot, FURNITURE, left, footTop));
    all.add(new Rule(left, footTop - 5, width, 0.5, Colour.PALE));
  }
}
