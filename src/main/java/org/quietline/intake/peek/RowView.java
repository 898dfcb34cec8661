package org.quietline.intake.peek;

import java.util.List;

/**
 * One result as it would be taken in.
 *
 * @param line the line on which its row stands
 * @param fields what was made of it, field by field
 */
public record RowView(long line, List<Part> fields) {
  /** Copies the fields. */
  public RowView {
    fields = List.copyOf(fields);
  }

  /**
   * One field.
   *
   * @param field its name in the plain sheet
   * @param value what it is
   * @param from what stands in the file; empty where it comes from a default
   */
  public record Part(String field, String value, List<String> from) {
    /** Copies the texts. */
    public Part {
      from = List.copyOf(from);
    }
  }
}
