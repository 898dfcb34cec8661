package org.quietline.report.pdf;

import java.util.ArrayList;
import java.util.List;
import org.quietline.report.Block;
import org.quietline.report.Colour;
import org.quietline.report.Emphasis;
import org.quietline.report.pdf.Item.Rule;
import org.quietline.report.pdf.Setter.Look;

/** Sets blocks as pieces. */
final class Typesetter {
  private static final double GUTTER = 14;

  private final Setter setter;
  private final double width;

  Typesetter(Setter setter, double width) {
    this.setter = setter;
    this.width = width;
  }

  /** The pieces of a block, from top to bottom. */
  List<Piece> pieces(Block block) {
    if (block instanceof Block.Title title) {
      return List.of(title(title));
    } else if (block instanceof Block.Heading heading) {
      return List.of(heading(heading));
    } else if (block instanceof Block.Paragraph paragraph) {
      return paragraph(paragraph);
    } else if (block instanceof Block.Figure figure) {
      return List.of(new FigureSetter(setter, width).piece(figure));
    } else if (block instanceof Block.Table table) {
      return new TableSetter(setter, width).pieces(table);
    } else if (block instanceof Block.Checklist list) {
      return checklist(list);
    } else if (block instanceof Block.MethodRow row) {
      return List.of(new MethodRowSetter(setter, width).piece(row));
    } else if (block instanceof Block.Facts facts) {
      return List.of(new FactsSetter(setter, width).facts(facts));
    } else if (block instanceof Block.Signatures signatures) {
      return List.of(new FactsSetter(setter, width).signatures(signatures));
    }
    throw new IllegalArgumentException("no way to set " + block);
  }

  /** How a verdict looks. */
  static Look verdict(Emphasis emphasis, double grave) {
    return switch (emphasis) {
      case CALM -> new Look(Face.REGULAR, Setter.LARGE, Colour.INK, Role.TEXT);
      case RAISED -> new Look(Face.BOLD, Setter.LARGE, Colour.ACCENT, Role.TEXT);
      case GRAVE -> new Look(Face.BOLD, grave, Colour.ACCENT, Role.TEXT);
    };
  }

  private Piece title(Block.Title title) {
    List<Item> items = new ArrayList<>();
    double left = width;
    double right = 0;
    if (title.verdict().isPresent()) {
      Block.Badge badge = title.verdict().get();
      Look word = verdict(badge.emphasis(), Setter.TITLE);
      Look note = new Look(Face.REGULAR, Setter.BODY, Colour.ACCENT, Role.TEXT);
      double top = Setter.TITLE * 0.8 - word.size() * 0.8;
      items.add(setter.rightLine(badge.word(), word, width, top));
      right = Setter.leading(Setter.TITLE);
      double wide = setter.width(badge.word(), word);
      if (!badge.note().isEmpty()) {
        items.add(setter.rightLine(badge.note(), note, width, right + 2));
        wide = Math.max(wide, setter.width(badge.note(), note));
        right += Setter.leading(Setter.BODY);
      }
      left = width - wide - GUTTER;
    }
    Look large = new Look(Face.BOLD, Setter.TITLE, Colour.INK, Role.TITLE);
    items.addAll(setter.text(title.text(), large, 0, 0, left));
    double height = setter.height(title.text(), large, left);
    if (!title.under().isEmpty()) {
      Look under = new Look(Face.REGULAR, Setter.BODY, Colour.GREY, Role.TEXT);
      items.addAll(setter.text(title.under(), under, 0, height + 2, left));
      height += 2 + setter.height(title.under(), under, left);
    }
    return Piece.of(items, Math.max(height, right), 0).staying();
  }

  private Piece heading(Block.Heading heading) {
    Look look = new Look(Face.BOLD, Setter.LARGE, Colour.INK, Role.HEADING);
    List<Item> items = setter.text(heading.question(), look, 0, 0, width);
    return Piece.of(items, setter.height(heading.question(), look, width), 11).staying();
  }

  private List<Piece> paragraph(Block.Paragraph paragraph) {
    double size = Setter.points(paragraph.size());
    boolean strong = paragraph.strong() || paragraph.colour() == Colour.ACCENT;
    Look look = new Look(Face.of(strong), size, paragraph.colour(), Role.TEXT);
    List<Piece> pieces = new ArrayList<>();
    double gap =
        switch (paragraph.size()) {
          case LEAD -> 9;
          case BODY -> 4;
          case SMALL -> 3;
        };
    List<String> lines = setter.lines(paragraph.text(), look, width);
    for (int i = 0; i < lines.size(); i++) {
      Piece line =
          Piece.of(
              List.of(setter.line(lines.get(i), look, 0, 0)),
              Setter.leading(size),
              i == 0 ? gap : 0);
      boolean edge = i == 0 || i == lines.size() - 2;
      pieces.add(edge && i < lines.size() - 1 ? line.staying() : line);
    }
    return pieces;
  }

  private List<Piece> checklist(Block.Checklist list) {
    Look what = new Look(Face.REGULAR, Setter.BODY, Colour.INK, Role.LIST_ITEM);
    double indent = 14;
    double by = list.steps().stream().mapToDouble(s -> setter.width(s.by(), what)).max().orElse(0);
    by = Math.min(by, width / 3);
    double room = width - indent - by - GUTTER;
    List<Piece> pieces = new ArrayList<>();
    for (Block.Step step : list.steps()) {
      Colour colour = step.pressing() ? Colour.ACCENT : Colour.INK;
      Look when = new Look(Face.of(step.pressing()), Setter.BODY, colour, Role.LIST_ITEM);
      List<Item> items = new ArrayList<>();
      items.add(new Item.Tick(0.4, 1.2, 6.6, Colour.GREY));
      items.addAll(setter.text(step.what(), what, indent, 0, room));
      String shown = setter.shortened(step.by(), when, width / 3);
      items.add(setter.rightLine(shown, when, width, 0));
      double height = setter.height(step.what(), what, room);
      if (!step.detail().isEmpty()) {
        Look detail = new Look(Face.REGULAR, Setter.SMALL, Colour.GREY, Role.LIST_ITEM);
        for (String line : step.detail().split("\n", -1)) {
          items.addAll(setter.text(line, detail, indent, height, width - indent));
          height += setter.height(line, detail, width - indent);
        }
      }
      Piece piece = Piece.of(items, height, 4);
      boolean last = pieces.size() == list.steps().size() - 1;
      pieces.add(last ? piece : piece.staying());
    }
    return pieces;
  }

  /** A hairline across a width. */
  static Rule hairline(double y, double width) {
    return new Rule(0, y, width, 0.4, Colour.PALE);
  }
}
