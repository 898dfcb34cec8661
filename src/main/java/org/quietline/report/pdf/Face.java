package org.quietline.report.pdf;

/** The two faces of the pages. */
enum Face {
  REGULAR,
  BOLD;

  static Face of(boolean strong) {
    return strong ? BOLD : REGULAR;
  }
}
