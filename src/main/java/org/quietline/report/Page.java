package org.quietline.report;

import java.util.List;

/**
 * One page as values: blocks from top to bottom. It starts on new paper and flows over to further
 * paper when it must.
 *
 * @param name the page's name among the bookmarks, repeated where it flows over
 * @param blocks what stands on it
 */
public record Page(String name, List<Block> blocks) {
  /**
   * Copies the list.
   *
   * @param name the page's name among the bookmarks
   * @param blocks what stands on it
   */
  public Page {
    blocks = List.copyOf(blocks);
  }
}
