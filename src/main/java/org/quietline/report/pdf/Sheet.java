package org.quietline.report.pdf;

import java.util.List;

/**
 * One sheet of paper with everything placed on it.
 *
 * @param number its number, from 1
 * @param bookmark the name of the page that starts on it; empty when a page goes on
 * @param items what stands on it
 */
record Sheet(int number, String bookmark, List<Item> items) {
  Sheet {
    items = List.copyOf(items);
  }
}
