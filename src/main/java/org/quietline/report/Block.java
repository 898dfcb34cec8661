package org.quietline.report;

import java.util.List;
import java.util.Optional;

/** One thing on a page, as values. */
public sealed interface Block {

  /** The size of running text. */
  enum Size {
    /** The sentences that answer a page's question. */
    LEAD,
    /** Ordinary text. */
    BODY,
    /** Words beside and under figures, notes. */
    SMALL
  }

  /**
   * The first line of a page.
   *
   * @param text the title
   * @param under a line under it
   * @param verdict the verdict at the right edge, if the page has one
   */
  record Title(String text, String under, Optional<Badge> verdict) implements Block {}

  /**
   * A verdict as printed.
   *
   * @param word the word
   * @param emphasis how loudly
   * @param note a few words under it, may be empty
   */
  record Badge(String word, Emphasis emphasis, String note) {}

  /**
   * A question as heading.
   *
   * @param question the question
   */
  record Heading(String question) implements Block {}

  /**
   * A paragraph.
   *
   * @param text its text
   * @param size its size
   * @param colour its colour
   * @param strong whether it is bold
   */
  record Paragraph(String text, Size size, Colour colour, boolean strong) implements Block {
    /**
     * An answer.
     *
     * @param text its text
     * @return in the leading size
     */
    public static Paragraph lead(String text) {
      return new Paragraph(text, Size.LEAD, Colour.INK, false);
    }

    /**
     * Ordinary text.
     *
     * @param text its text
     * @return in the ordinary size
     */
    public static Paragraph body(String text) {
      return new Paragraph(text, Size.BODY, Colour.INK, false);
    }

    /**
     * A note.
     *
     * @param text its text
     * @return small and grey
     */
    public static Paragraph small(String text) {
      return new Paragraph(text, Size.SMALL, Colour.GREY, false);
    }

    /**
     * The same text in another colour.
     *
     * @param other the colour
     * @return a copy
     */
    public Paragraph in(Colour other) {
      return new Paragraph(text, size, other, strong);
    }
  }

  /**
   * A figure: a narrow column of plain words at the left, the picture right of it, sentences under
   * the picture.
   *
   * @param title what the figure shows
   * @param facts its unit and the number of results, beside the title
   * @param side plain words at the left
   * @param chart the picture as data
   * @param height the height of the picture in points
   * @param under captions under the picture
   * @param description the picture in words, for those who cannot see it
   */
  record Figure(
      String title,
      String facts,
      List<Paragraph> side,
      Chart chart,
      double height,
      List<Caption> under,
      String description)
      implements Block {
    /**
     * Copies the lists.
     *
     * @param title what the figure shows
     * @param facts its unit and the number of results
     * @param side plain words at the left
     * @param chart the picture as data
     * @param height the height of the picture in points
     * @param under captions under the picture
     * @param description the picture in words
     */
    public Figure {
      side = List.copyOf(side);
      under = List.copyOf(under);
    }
  }

  /**
   * A sentence under a picture.
   *
   * @param letter the letter it has in the picture, may be empty
   * @param text the sentence
   * @param colour its colour
   */
  record Caption(String letter, String text, Colour colour) {
    /**
     * A sentence without a letter.
     *
     * @param text the sentence
     * @return a caption in grey
     */
    public static Caption of(String text) {
      return new Caption("", text, Colour.GREY);
    }
  }

  /**
   * A table.
   *
   * @param columns its columns; heads may be empty
   * @param rows its rows, each with one cell a column
   * @param ruled whether hairlines part its rows; otherwise it is set small and close
   */
  record Table(List<Column> columns, List<Row> rows, boolean ruled) implements Block {
    /**
     * A table with hairlines.
     *
     * @param columns its columns
     * @param rows its rows
     */
    public Table(List<Column> columns, List<Row> rows) {
      this(columns, rows, true);
    }

    /**
     * Copies the lists and checks the cells.
     *
     * @param columns its columns
     * @param rows its rows
     * @param ruled whether hairlines part its rows
     */
    public Table {
      columns = List.copyOf(columns);
      rows = List.copyOf(rows);
      for (Row row : rows) {
        if (row.cells().size() != columns.size()) {
          throw new IllegalArgumentException(
              row.cells().size() + " cells in a table of " + columns.size() + " columns");
        }
      }
    }
  }

  /**
   * A column of a table.
   *
   * @param head its head, may be empty
   * @param share its share of the width; the shares of a table add up to 1
   * @param right whether its cells stand at the right edge
   * @param strong whether its cells are bold
   */
  record Column(String head, double share, boolean right, boolean strong) {
    /**
     * A column of words.
     *
     * @param head its head
     * @param share its share of the width
     * @return a plain column
     */
    public static Column words(String head, double share) {
      return new Column(head, share, false, false);
    }

    /**
     * A column of numbers.
     *
     * @param head its head
     * @param share its share of the width
     * @return a column whose cells end at the right edge
     */
    public static Column numbers(String head, double share) {
      return new Column(head, share, true, false);
    }

    /**
     * A column of answers.
     *
     * @param head its head
     * @param share its share of the width
     * @return a column in bold
     */
    public static Column answers(String head, double share) {
      return new Column(head, share, false, true);
    }
  }

  /**
   * A row of a table.
   *
   * @param cells one text a column
   * @param colour the colour of its answers
   */
  record Row(List<String> cells, Colour colour) {
    /**
     * Copies the list.
     *
     * @param cells one text a column
     * @param colour the colour of its answers
     */
    public Row {
      cells = List.copyOf(cells);
    }

    /**
     * A row in ink.
     *
     * @param cells one text a column
     * @return the row
     */
    public static Row of(String... cells) {
      return new Row(List.of(cells), Colour.INK);
    }
  }

  /**
   * What to do, with a box to tick for each step.
   *
   * @param steps the steps, the most pressing first
   */
  record Checklist(List<Step> steps) implements Block {
    /**
     * Copies the list.
     *
     * @param steps the steps
     */
    public Checklist {
      steps = List.copyOf(steps);
    }
  }

  /**
   * One thing to do.
   *
   * @param what what to do, a sentence
   * @param detail what to copy or look up for it, in lines, may be empty
   * @param by by when, a few words
   * @param pressing whether work waits for it
   */
  record Step(String what, String detail, String by, boolean pressing) {}

  /**
   * Room for signatures, side by side.
   *
   * @param places one a signature
   */
  record Signatures(List<Place> places) implements Block {
    /**
     * Copies the list.
     *
     * @param places one a signature
     */
    public Signatures {
      places = List.copyOf(places);
    }
  }

  /**
   * Room for one signature.
   *
   * @param role who signs
   * @param meaning what the signature says
   */
  record Place(String role, String meaning) {}

  /**
   * One method on the first page.
   *
   * @param name the method
   * @param verdict its verdict
   * @param reason one sentence of reason
   * @param calibration what is left of its calibrations
   * @param picture a year of its control stream, if there is one
   * @param pictureWords what the picture covers, or why there is none
   * @param steps what to do first, and by when
   */
  record MethodRow(
      String name,
      Badge verdict,
      String reason,
      List<Paragraph> calibration,
      Optional<Miniature> picture,
      String pictureWords,
      List<Step> steps)
      implements Block {
    /**
     * Copies the lists.
     *
     * @param name the method
     * @param verdict its verdict
     * @param reason one sentence of reason
     * @param calibration what is left of its calibrations
     * @param picture a year of its control stream
     * @param pictureWords what the picture covers
     * @param steps what to do first
     */
    public MethodRow {
      calibration = List.copyOf(calibration);
      steps = List.copyOf(steps);
    }
  }

  /**
   * Columns of short facts side by side.
   *
   * @param columns the columns; their shares add up to 1
   */
  record Facts(List<FactColumn> columns) implements Block {
    /**
     * Copies the list.
     *
     * @param columns the columns
     */
    public Facts {
      columns = List.copyOf(columns);
    }
  }

  /**
   * A column of short facts.
   *
   * @param head its head
   * @param share its share of the width
   * @param facts the facts
   */
  record FactColumn(String head, double share, List<Fact> facts) {
    /**
     * Copies the list.
     *
     * @param head its head
     * @param share its share of the width
     * @param facts the facts
     */
    public FactColumn {
      facts = List.copyOf(facts);
    }
  }

  /**
   * A short fact.
   *
   * @param figure its number, may be empty
   * @param words what the number is
   * @param colour its colour
   */
  record Fact(String figure, String words, Colour colour) {}
}
