package org.quietline.report;

import java.util.List;
import java.util.stream.Collectors;
import org.quietline.report.Block.Caption;
import org.quietline.report.Block.Checklist;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Place;
import org.quietline.report.Block.Signatures;
import org.quietline.report.Block.Table;
import org.quietline.report.Block.Title;

/** What blocks say, one line for each paragraph and row. */
final class BlockText {
  private BlockText() {}

  static String of(List<Block> blocks) {
    return blocks.stream().map(BlockText::of).collect(Collectors.joining("\n"));
  }

  private static String of(Block block) {
    if (block instanceof Title title) {
      return title.text() + "\n" + title.verdict().map(Block.Badge::word).orElse("");
    }
    if (block instanceof Heading heading) {
      return heading.question();
    }
    if (block instanceof Paragraph paragraph) {
      return paragraph.text();
    }
    if (block instanceof Table table) {
      return table.rows().stream()
          .map(r -> String.join(" | ", r.cells()))
          .collect(Collectors.joining("\n"));
    }
    if (block instanceof Checklist checklist) {
      return checklist.steps().stream().map(Block.Step::what).collect(Collectors.joining("\n"));
    }
    if (block instanceof Figure figure) {
      return figure.title()
          + "\n"
          + figure.side().stream().map(Paragraph::text).collect(Collectors.joining("\n"))
          + "\n"
          + figure.under().stream().map(Caption::text).collect(Collectors.joining("\n"));
    }
    return block instanceof Signatures signatures
        ? signatures.places().stream().map(Place::role).collect(Collectors.joining(", "))
        : "";
  }
}
