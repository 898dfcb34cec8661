package org.quietline.intake;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.quietline.bench.BaselineChoice;
import org.quietline.bench.Check;
import org.quietline.bench.CheckOff;
import org.quietline.bench.Instrument;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.Person;

/**
 * Reads the small entries of {@code bench.toml}: instruments, materials, people, baselines, checks
 * that are switched off.
 */
final class OtherEntries {
  private static final List<String> DUTIES = List.of("test", "review", "release");

  private OtherEntries() {}

  static Instrument instrument(Entry entry) throws Unusable {
    String key = entry.needText("key");
    String title = entry.text("title").orElse(key);
    return entry.build(() -> new Instrument(key, title));
  }

  static Material material(Entry entry, Known<Method> methods) throws Unusable {
    String key = entry.needText("key");
    String method = entry.needText("method");
    Optional<BigDecimal> assigned = entry.number("assigned-value");
    Optional<BigDecimal> uncertainty = entry.number("standard-uncertainty");
    methods.need("method", method);
    return entry.build(() -> new Material(key, method, assigned, uncertainty));
  }

  static Person person(Entry entry) throws Unusable {
    String key = entry.needText("key");
    String name = entry.text("name").orElse(key);
    List<String> may = entry.words("may").orElse(List.of());
    Optional<LocalDate> from = entry.date("from");
    for (String duty : may) {
      if (!DUTIES.contains(duty)) {
        throw new Unusable(
            "may",
            duty,
            Excerpt.quoted(duty)
                + " is nothing a person may do"
                + NearestName.hint(duty, DUTIES)
                + ".");
      }
    }
    return entry.build(() -> new Person(key, name, may, from));
  }

  static CheckOff checkOff(Entry entry, Known<Method> methods) throws Unusable {
    String word = entry.needText("check");
    List<String> words = Arrays.stream(Check.values()).map(Check::key).toList();
    Optional<Check> check = Check.parse(word);
    if (check.isEmpty()) {
      throw new Unusable(
          "check",
          word,
          Excerpt.quoted(word) + " is no check" + NearestName.hint(word, words) + ".");
    }
    if (check.get() == Check.ROWS_IN_CONFLICT) {
      throw new Unusable(
          "check",
          word,
          word
              + " cannot be switched off, because one of the rows would win without a word; choose"
              + " the row that holds in actions.csv (use_row).");
    }
    Optional<String> method = entry.text("method");
    if (method.isPresent()) {
      methods.need("method", method.get());
    }
    String reason = entry.needText("reason");
    return entry.build(() -> new CheckOff(check.get(), method, reason));
  }

  static BaselineChoice baseline(
      Entry entry, Known<Method> methods, Known<Instrument> instruments, Known<Material> materials)
      throws Unusable {
    String method = entry.needText("method");
    String instrument = entry.needText("instrument");
    String material = entry.needText("material");
    LocalDate from = entry.needDate("from");
    LocalDate to = entry.needDate("to");
    Optional<String> approvedBy = entry.text("approved-by");
    Optional<String> reason = entry.text("reason");
    methods.need("method", method);
    instruments.need("instrument", instrument);
    Materials.need(materials, "material", method, material);
    return entry.build(
        () -> new BaselineChoice(method, instrument, material, from, to, approvedBy, reason));
  }
}
