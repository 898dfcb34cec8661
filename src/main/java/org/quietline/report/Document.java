package org.quietline.report;

import java.time.LocalDateTime;
import java.util.List;

/**
 * A report as values: what stands on its pages, before anything is measured or drawn.
 *
 * @param title the title, also shown by a reader in its window
 * @param subject what the report is about, in a few words
 * @param bench the bench's name, left in the running head
 * @param period the days under review, right in the running head
 * @param foot what stands left in the foot of each page
 * @param asOf the moment the report speaks from, the bench's local time; files carry it as their
 *     date
 * @param pages the pages; each starts on new paper and may flow over
 */
public record Document(
    String title,
    String subject,
    String bench,
    String period,
    String foot,
    LocalDateTime asOf,
    List<Page> pages) {
  /**
   * Copies the list.
   *
   * @param title the title
   * @param subject what the report is about
   * @param bench the bench's name
   * @param period the days under review
   * @param foot what stands left in the foot of each page
   * @param asOf the moment the report speaks from
   * @param pages the pages
   */
  public Document {
    pages = List.copyOf(pages);
  }
}
