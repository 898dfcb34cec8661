package org.quietline.bench;

/**
 * Where a record was read from.
 *
 * @param file the file, relative to the bench folder, with forward strokes
 * @param line the line in it, counted from 1
 */
public record Origin(String file, long line) {
  /** Checks the line. */
  public Origin {
    Checks.text("file", file);
    if (line < 1) {
      throw new IllegalArgumentException("line " + line + " is not a line");
    }
  }

  @Override
  public String toString() {
    return file + ", line " + line;
  }
}
