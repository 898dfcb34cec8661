package org.quietline.report;

/** How loudly a verdict is printed. */
public enum Emphasis {
  /** Nobody needs to do anything. */
  CALM,
  /** A person should look, work goes on. */
  RAISED,
  /** A person must act before work goes on. */
  GRAVE
}
