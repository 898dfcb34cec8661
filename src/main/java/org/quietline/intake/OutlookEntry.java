package org.quietline.intake;

import java.math.BigDecimal;
import java.util.Optional;
import org.quietline.bench.OutlookSettings;

/**
 * Reads {@code [outlook]} of {@code bench.toml}. A value that cannot be used leaves its default in
 * place and is reported.
 */
final class OutlookEntry {
  private final Entry entry;

  private OutlookEntry(Entry entry) {
    this.entry = entry;
  }

  static OutlookSettings read(Entry entry) {
    OutlookEntry outlook = new OutlookEntry(entry);
    OutlookSettings usual = OutlookSettings.DEFAULTS;
    OutlookSettings settings =
        new OutlookSettings(
            outlook.share("safe-chance", 0.001, 0.25, usual.safeChance()),
            outlook.share("reliability", 0.5, 0.999, usual.reliability()));
    entry.noteUnknownKeys();
    return settings;
  }

  private double share(String key, double least, double most, double usual) {
    try {
      Optional<BigDecimal> value = entry.number(key);
      if (value.isEmpty()) {
        return usual;
      }
      double share = value.get().doubleValue();
      if (share < least || share > most) {
        throw entry.wrong(key, "it must be from " + least + " to " + most);
      }
      return share;
    } catch (Unusable e) {
      entry.note(key, e.sentence() + " The default, " + usual + ", was used.");
      return usual;
    }
  }
}
