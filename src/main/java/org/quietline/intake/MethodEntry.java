package org.quietline.intake;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalInt;
import org.quietline.bench.Acid;
import org.quietline.bench.DriftForm;
import org.quietline.bench.Method;
import org.quietline.bench.Method.Allowance;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.bench.Method.PublishedRepeatability;
import org.quietline.bench.Method.ShelfLife;
import org.quietline.bench.RepeatPolicy;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Unit;

/** Reads one {@code [[method]]} of {@code bench.toml}. */
final class MethodEntry {
  private static final int USUAL_REPLICATES = 2;

  private static final String KINDS =
      "write \"re-read\" where the same vial is measured again, \"re-prepared\" where a fresh"
          + " portion is taken through the whole method";

  private static final String POLICIES =
      "write \"one-more\" where the test is expensive and a pair that disagrees gets a third"
          + " reading, \"two-more\" where it is cheap and the pair gets two";

  private static final String FORMS =
      "write \"additive\" where a calibration that is off shifts all levels by the same amount,"
          + " \"proportional\" where it shifts them by the same share, or take the line out and let"
          + " the data say";

  private MethodEntry() {}

  static Method read(Entry entry, MethodCards cards, SettingsNotes notes) throws Unusable {
    cards.fill(entry);
    String key = entry.needText("key");
    String title = entry.text("title").orElse(key);
    Unit unit = unit(entry);
    int decimals = entry.whole("decimals").orElseThrow(() -> entry.missing("decimals"));
    int replicates = entry.whole("replicates").orElse(USUAL_REPLICATES);
    ReplicateKind kind = replicateKind(entry, replicates);
    RepeatPolicy policy = repeatPolicy(entry);
    OptionalInt validDays = entry.whole("calibration-valid-days");
    Optional<Allowance> allowance = allowance(entry);
    Optional<ProductLimits> limits = limits(entry);
    ShelfLife shelfLife = shelfLife(entry, notes);
    Optional<PublishedRepeatability> published = published(entry);
    Optional<String> partOf = entry.text("part-of");
    Optional<DriftForm> driftForm = driftForm(entry);
    Optional<String> listedMethod = entry.text("listed-method");
    return entry.build(
        () ->
            new Method(
                key,
                title,
                unit,
                decimals,
                replicates,
                kind,
                policy,
                validDays,
                allowance,
                limits,
                shelfLife,
                published,
                partOf,
                driftForm,
                listedMethod));
  }

  /** The unit, with the basis where that is written beside it. */
  private static Unit unit(Entry entry) throws Unusable {
    String symbol = entry.needText("unit");
    Unit unit = entry.build(() -> new Unit(symbol));
    Optional<String> word = entry.text("basis");
    if (word.isEmpty()) {
      return unit;
    }
    Optional<Acid> basis = Acid.parse(word.get());
    if (basis.isEmpty()) {
      throw entry.wrong("basis", "it must be one of " + String.join(", ", Acid.keys()));
    }
    if (unit.basis().isPresent() && !unit.basis().equals(basis)) {
      throw new Unusable(
          "basis",
          word.get(),
          "The unit is " + unit + ", but basis is " + word.get() + "; keep the one that holds.");
    }
    if (unit.basis().isEmpty() && unit.as(basis.get()).isEmpty()) {
      throw new Unusable(
          "basis",
          word.get(),
          "A basis goes with a mass fraction, and the unit is "
              + unit
              + "; take the basis out, or write the unit as % mass, g/kg, mg/g, mg/kg or ppm.");
    }
    return unit.as(basis.get()).orElse(unit);
  }

  /** With one reading a result there is nothing to repeat, and the word may be left out. */
  private static ReplicateKind replicateKind(Entry entry, int replicates) throws Unusable {
    Optional<String> word = entry.text("replicate-kind");
    if (word.isEmpty()) {
      if (replicates > 1) {
        throw new Unusable(
            "replicate-kind",
            "",
            "The method has " + replicates + " replicates but no replicate-kind; " + KINDS + ".");
      }
      return ReplicateKind.RE_READ;
    }
    return ReplicateKind.parse(word.get()).orElseThrow(() -> entry.wrong("replicate-kind", KINDS));
  }

  private static RepeatPolicy repeatPolicy(Entry entry) throws Unusable {
    Optional<String> word = entry.text("repeat-policy");
    if (word.isEmpty()) {
      return RepeatPolicy.ONE_MORE;
    }
    return RepeatPolicy.parse(word.get()).orElseThrow(() -> entry.wrong("repeat-policy", POLICIES));
  }

  private static Optional<DriftForm> driftForm(Entry entry) throws Unusable {
    Optional<String> word = entry.text("drift-form");
    if (word.isEmpty()) {
      return Optional.empty();
    }
    Optional<DriftForm> form = DriftForm.parse(word.get());
    if (form.isEmpty()) {
      throw entry.wrong("drift-form", FORMS);
    }
    return form;
  }

  private static Optional<Allowance> allowance(Entry entry) throws Unusable {
    Optional<BigDecimal> amount = entry.number("allowable-bias");
    Optional<BigDecimal> percent = entry.number("allowable-bias-percent");
    if (amount.isPresent() && percent.isPresent()) {
      throw new Unusable(
          "allowable-bias-percent",
          entry.shown("allowable-bias-percent"),
          "Both allowable-bias and allowable-bias-percent are given; keep the one that holds.");
    }
    if (amount.isPresent()) {
      return Optional.of(entry.build(() -> new Allowance(amount.get(), false)));
    }
    return percent.isPresent()
        ? Optional.of(entry.build(() -> new Allowance(percent.get(), true)))
        : Optional.empty();
  }

  private static Optional<ProductLimits> limits(Entry entry) throws Unusable {
    Optional<BigDecimal> lower = entry.number("product-lower-limit");
    Optional<BigDecimal> upper = entry.number("product-upper-limit");
    Optional<String> source = entry.text("limit-source");
    if (lower.isEmpty() && upper.isEmpty()) {
      if (source.isPresent()) {
        entry.note(
            "limit-source",
            "limit-source is given, but neither product-upper-limit nor product-lower-limit; write"
                + " the limit or take the source out. The source was not used; the rest of the"
                + " method was.");
      }
      return Optional.empty();
    }
    return Optional.of(entry.build(() -> new ProductLimits(lower, upper, source)));
  }

  private static ShelfLife shelfLife(Entry entry, SettingsNotes notes) throws Unusable {
    if (entry.at("shelf-life-days").isEmpty()) {
      return ShelfLife.NOT_SET;
    }
    if (!entry.at("shelf-life-days").get().isObject()) {
      throw entry.wrong(
          "shelf-life-days", "it must be written like { refrigerated = 60, ambient = 18 }");
    }
    Entry days =
        new Entry(
            "shelf life",
            entry.pathOf("shelf-life-days"),
            entry.at("shelf-life-days").get(),
            notes);
    try {
      OptionalInt refrigerated = days.whole("refrigerated");
      OptionalInt ambient = days.whole("ambient");
      ShelfLife life = days.build(() -> new ShelfLife(refrigerated, ambient));
      days.noteUnknownKeys();
      return life;
    } catch (Unusable e) {
      throw new Unusable("shelf-life-days", entry.shown("shelf-life-days"), e.sentence());
    }
  }

  private static Optional<PublishedRepeatability> published(Entry entry) throws Unusable {
    Optional<BigDecimal> limit = entry.number("published-repeatability");
    Optional<String> source = entry.text("published-repeatability-source");
    if (limit.isEmpty()) {
      if (source.isPresent()) {
        entry.note(
            "published-repeatability-source",
            "published-repeatability-source is given, but no published-repeatability; write the"
                + " figure or take the source out. The source was not used; the rest of the method"
                + " was.");
      }
      return Optional.empty();
    }
    return Optional.of(entry.build(() -> new PublishedRepeatability(limit.get(), source)));
  }
}
