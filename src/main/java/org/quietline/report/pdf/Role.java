package org.quietline.report.pdf;

/** What an item is in the text: the place for a structure tag. */
enum Role {
  /** The title of a page. */
  TITLE,
  /** A question. */
  HEADING,
  /** Running text. */
  TEXT,
  /** A figure's picture. */
  FIGURE,
  /** Words that belong to a figure. */
  CAPTION,
  /** A head of a table's column. */
  TABLE_HEAD,
  /** A cell of a table. */
  TABLE_CELL,
  /** A step of a list. */
  LIST_ITEM,
  /** Running head, foot, rules: not part of the text. */
  ARTIFACT
}
