package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.assess.LookBack;
import org.quietline.assess.LookBack.Doubted;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Story;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;

/** "What may be behind the signals?" */
final class StorySection {
  private static final int MOST_STORIES = 4;
  private static final int MOST_RESULTS = 8;

  private final StoryWords words;
  private final Numbers numbers;
  private final List<Block> blocks = new ArrayList<>();

  private StorySection(MethodFindings findings) {
    this.words = new StoryWords(findings.method());
    this.numbers = new Numbers(findings.method().decimals());
  }

  /** The open stories of one method; nothing where there are none. */
  static List<Block> of(MethodFindings findings) {
    List<Story> open = findings.stories().stream().filter(Story::open).toList();
    if (open.isEmpty()) {
      return List.of();
    }
    StorySection section = new StorySection(findings);
    section.blocks.add(new Heading("What may be behind the signals?"));
    List<Story> latest = open.subList(Math.max(0, open.size() - MOST_STORIES), open.size());
    if (latest.size() < open.size()) {
      section.blocks.add(
          Paragraph.small(
              Numbers.count(
                      open.size() - latest.size(),
                      "earlier open story is",
                      "earlier open stories are")
                  + " in findings.json."));
    }
    latest.forEach(section::story);
    return section.blocks;
  }

  private void story(Story story) {
    blocks.add(Paragraph.body(words.seen(story)));
    blocks.add(Paragraph.body(words.hints(story)));
    words.check(story).ifPresent(check -> blocks.add(Paragraph.body(check)));
    story.lookBack().ifPresent(back -> blocks.addAll(doubted(words, numbers, back)));
  }

  /** What a story puts in doubt. */
  static List<Block> doubted(StoryWords words, Numbers numbers, LookBack back) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(Paragraph.body(words.lookBack(back)));
    if (back.results().isEmpty()) {
      return blocks;
    }
    List<Row> rows = new ArrayList<>();
    back.results().stream().limit(MOST_RESULTS).forEach(d -> rows.add(row(d, numbers)));
    blocks.add(
        new Table(
            List.of(
                Column.words("in doubt, nearest to a limit first", 0.26),
                Column.words("tested", 0.2),
                Column.numbers("value", 0.12),
                Column.numbers("less the likely error", 0.24),
                Column.words("", 0.18)),
            rows,
            false));
    int more = back.results().size() - MOST_RESULTS;
    if (more > 0) {
      blocks.add(
          Paragraph.small(
              "And " + Numbers.count(more, "more result", "more results") + " in findings.json."));
    }
    return blocks;
  }

  private static Row row(Doubted d, Numbers numbers) {
    String value = d.value().isPresent() ? numbers.result(d.value().getAsDouble()) : "only a bound";
    String corrected =
        d.corrected()
            .value()
            .map(i -> numbers.result(i.lower()) + " to " + numbers.result(i.upper()))
            .orElse("cannot say");
    return new Row(
        List.of(
            d.sample(),
            Dates.full(d.at()),
            value,
            corrected,
            d.limitInside() ? "a limit lies inside" : ""),
        d.limitInside() ? Colour.ACCENT : Colour.INK);
  }
}
