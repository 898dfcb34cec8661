package org.quietline.intake;

import java.math.BigDecimal;
import java.util.Optional;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.ReleaseSettings.Costs;

/**
 * Reads {@code [release]} of {@code bench.toml}. A value that cannot be used leaves its default in
 * place and is reported.
 */
final class ReleaseEntry {
  private static final double LEAST = 0.8;
  private static final double MOST = 0.999;

  private ReleaseEntry() {}

  static ReleaseSettings read(Entry entry) {
    ReleaseSettings settings = new ReleaseSettings(confidence(entry), costs(entry));
    entry.noteUnknownKeys();
    return settings;
  }

  private static double confidence(Entry entry) {
    double usual = ReleaseSettings.DEFAULTS.confidence();
    try {
      Optional<BigDecimal> value = entry.number("confidence");
      if (value.isPresent()
          && (value.get().doubleValue() < LEAST || value.get().doubleValue() > MOST)) {
        throw entry.wrong("confidence", "it must be from " + LEAST + " to " + MOST);
      }
      return value.map(BigDecimal::doubleValue).orElse(usual);
    } catch (Unusable e) {
      entry.note("confidence", e.sentence() + " The default, " + usual + ", was used.");
      return usual;
    }
  }

  private static Optional<Costs> costs(Entry entry) {
    String last = "cost-of-bad-release";
    try {
      Optional<BigDecimal> bad = entry.number(last);
      last = "cost-of-rework";
      Optional<BigDecimal> rework = entry.number(last);
      if (bad.isPresent() != rework.isPresent()) {
        entry.note(
            bad.isPresent() ? "cost-of-bad-release" : "cost-of-rework",
            "One of cost-of-bad-release and cost-of-rework is given without the other; a cost alone"
                + " says nothing. It was not used.");
        return Optional.empty();
      }
      return bad.isEmpty()
          ? Optional.empty()
          : Optional.of(entry.build(() -> new Costs(bad.get(), rework.get())));
    } catch (Unusable e) {
      entry.note(last, e.sentence() + " No costs were used.");
      return Optional.empty();
    }
  }
}
