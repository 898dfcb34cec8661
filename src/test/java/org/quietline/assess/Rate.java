package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.quietline.stats.sample.Summary;

/** How often something is seen in simulated histories, beside what is stated. */
final class Rate {
  private final double[] seen;
  private final double[] judged;
  private int histories;

  Rate(int histories) {
    seen = new double[histories];
    judged = new double[histories];
  }

  void add(NoticeRate rate) {
    add(rate.observed(), rate.judged());
  }

  void add(int found, int of) {
    seen[histories] = found;
    judged[histories] = of;
    histories++;
  }

  /** Points of one history may depend on each other, so the error is that between histories. */
  void assertIs(double stated) {
    double[] off = new double[histories];
    double points = 0;
    double found = 0;
    for (int i = 0; i < histories; i++) {
      off[i] = seen[i] - stated * judged[i];
      points += judged[i];
      found += seen[i];
    }
    double error = Summary.of(off).deviation() * Math.sqrt(histories) / points;
    double share = found / points;
    String words =
        String.format(
            "%d of %d, %.5f, stated %.5f, error %.5f",
            Math.round(found), Math.round(points), share, stated, error);
    assertTrue(points >= histories && Math.abs(share - stated) <= 3 * error, words);
  }
}
