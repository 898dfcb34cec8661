package org.quietline.assess;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A reagent lot in use, and until when it may be used.
 *
 * @param lot the lot's key
 * @param until the last day and the rule that set it; empty where nothing recorded sets one
 */
public record LotLife(String lot, Optional<Until> until) {
  /**
   * Until when.
   *
   * @param lastDay the last day on which it may be used
   * @param daysLeft days from now to that day; below zero once it is past
   * @param by the rule that set the day, of those of reagents
   */
  public record Until(LocalDate lastDay, long daysLeft, OutOfDate.Kind by) {}
}
