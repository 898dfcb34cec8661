package org.quietline.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.BaselineChoice;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.CheckOff;
import org.quietline.bench.Instrument;
import org.quietline.bench.Material;
import org.quietline.bench.Method;
import org.quietline.bench.OutlookSettings;
import org.quietline.bench.Person;
import org.quietline.bench.ReleaseSettings;
import org.quietline.bench.Settings;

/** Makes the settings of a bench from the tree of {@code bench.toml}. */
final class SettingsReader {
  private final SettingsFile file;
  private final SettingsNotes notes;
  private final Entry top;

  private SettingsReader(SettingsFile file) {
    this.file = file;
    this.notes = new SettingsNotes(file.places());
    this.top = new Entry("bench", "", file.tree(), notes);
  }

  /**
   * The settings, and what the reading of the sheets needs beside them.
   *
   * @param settings what can be used
   * @param methods the methods, and those set aside
   * @param instruments the instruments, and those set aside
   * @param materials the materials by method and key, and those set aside
   * @param sheets the sheets with a layout of their own
   * @param unitRequired whether a row must write its unit
   * @param aside what could not be used
   */
  record Found(
      Settings settings,
      Known<Method> methods,
      Known<Instrument> instruments,
      Known<Material> materials,
      OwnSheets sheets,
      boolean unitRequired,
      List<SetAside> aside) {}

  static Found read(SettingsFile file) {
    return new SettingsReader(file).read();
  }

  private Found read() {
    String name = name();
    ZoneId zone = zone();
    MethodCards cards = MethodCards.in(file.tree());
    Known<Method> methods =
        entries("method", e -> MethodEntry.read(e, cards, notes), Method::key, "key");
    if (methods.keys().isEmpty()) {
      throw noMethod();
    }
    top.at("method").ifPresent(node -> PartsOfWholes.check(node, methods, notes));
    Known<Instrument> instruments =
        entries("instrument", OtherEntries::instrument, Instrument::key, "key");
    Known<Material> materials =
        entries(
            "material",
            e -> OtherEntries.material(e, methods),
            m -> Materials.nameOf(m.method(), m.key()),
            "method",
            "key");
    Known<Person> people = entries("person", OtherEntries::person, Person::key, "key");
    Known<BaselineChoice> baselines =
        entries(
            "baseline",
            e -> OtherEntries.baseline(e, methods, instruments, materials),
            b -> String.join("/", b.method(), b.instrument(), b.material(), b.from().toString()),
            "method",
            "instrument",
            "material",
            "from");
    ChartSettings chart = table("chart", ChartEntry::read, ChartSettings.DEFAULTS);
    OutlookSettings outlook = table("outlook", OutlookEntry::read, OutlookSettings.DEFAULTS);
    ReleaseSettings release = table("release", ReleaseEntry::read, ReleaseSettings.DEFAULTS);
    Known<CheckOff> checksOff =
        entries(
            "check-off",
            e -> OtherEntries.checkOff(e, methods),
            c -> c.check().key() + "/" + c.method().orElse(""),
            "check",
            "method");
    OwnSheets sheets = OwnSheets.read(tables("sheet"), notes);
    boolean unitRequired = unitRequired();
    top.noteUnknownKeys();
    Settings settings =
        new Settings(
            name,
            zone,
            methods.entries(),
            instruments.entries(),
            materials.entries(),
            people.entries(),
            baselines.entries(),
            chart,
            outlook,
            release,
            checksOff.entries());
    return new Found(
        settings, methods, instruments, materials, sheets, unitRequired, notes.entries());
  }

  private String name() {
    try {
      return top.needText("name");
    } catch (Unusable e) {
      throw fatal("name", e);
    }
  }

  private ZoneId zone() {
    try {
      String zone = top.needText("timezone");
      try {
        return ZoneId.of(zone);
      } catch (DateTimeException e) {
        String meant =
            NearestName.of(zone, new TreeSet<>(ZoneId.getAvailableZoneIds()))
                .map(z -> " (did you mean " + z + "?)")
                .orElse(" (one is Europe/Dublin)");
        throw new Unusable(
            "timezone", zone, Excerpt.quoted(zone) + " is no time zone" + meant + ".");
      }
    } catch (Unusable e) {
      throw fatal("timezone", e);
    }
  }

  /** What cannot be understood is taken as the stricter of the two. */
  private boolean unitRequired() {
    try {
      return top.flag("unit-required").orElse(false);
    } catch (Unusable e) {
      top.note("unit-required", e.sentence() + " It was read as true.");
      return true;
    }
  }

  private IntakeException fatal(String key, Unusable e) {
    return new IntakeException(
        file.path(),
        "bench.toml, line " + notes.line(key) + ": " + e.sentence() + " Mend it and run again.");
  }

  private IntakeException noMethod() {
    String first =
        notes.entries().stream()
            .filter(a -> a.reason().endsWith("The method was set aside."))
            .findFirst()
            .map(a -> " (line " + a.line() + ": " + a.reason() + ")")
            .orElse("");
    return new IntakeException(
        file.path(),
        "bench.toml holds no [[method]] that can be used"
            + first
            + ". Write at least one and run again.");
  }

  /** What one table says; without it, or where it is something else, the defaults. */
  private <T> T table(String key, Function<Entry, T> reader, T usual) {
    Optional<JsonNode> node = top.at(key);
    if (node.isEmpty()) {
      return usual;
    }
    if (!node.get().isObject()) {
      top.note(key, key + " must be written as one table [" + key + "]. The defaults were used.");
      return usual;
    }
    return reader.apply(new Entry(key, key, node.get(), notes));
  }

  /** The tables of one kind; anything else that stands there is reported. */
  private List<Entry> tables(String kind) {
    List<Entry> entries = new ArrayList<>();
    if (top.at(kind).isEmpty()) {
      return entries;
    }
    JsonNode list = top.at(kind).get();
    if (!list.isArray()) {
      top.note(kind, kind + " must be written as [[" + kind + "]]. It was set aside.");
      return entries;
    }
    for (int i = 0; i < list.size(); i++) {
      String path = kind + "[" + i + "]";
      if (list.get(i).isObject()) {
        entries.add(new Entry(kind, path, list.get(i), notes));
      } else {
        notes.add(
            path,
            kind,
            list.get(i).toString(),
            kind + " must be written as [[" + kind + "]]. It was set aside.");
      }
    }
    return entries;
  }

  /** Makes one entry of its table. */
  private interface Maker<T> {
    T make(Entry entry) throws Unusable;
  }

  private <T> Known<T> entries(
      String kind, Maker<T> maker, Function<T, String> keyOf, String... keyParts) {
    Known<T> known = new Known<>(kind);
    for (Entry entry : tables(kind)) {
      try {
        T made = maker.make(entry);
        entry.noteUnknownKeys();
        if (known.get(keyOf.apply(made)).isPresent()) {
          throw new Unusable(
              keyParts[0],
              entry.shown(keyParts[0]),
              "There is "
                  + Entry.withArticle(kind)
                  + " "
                  + Excerpt.quoted(nameOf(entry, keyParts))
                  + " already; each is named once.");
        }
        known.add(keyOf.apply(made), made);
      } catch (Unusable e) {
        notes.add(
            entry.pathOf(e.field()),
            e.field(),
            e.text(),
            e.sentence() + " The " + kind + " was set aside.");
        known.refuse(nameOf(entry, keyParts), entry.line(), e.sentence());
      }
    }
    return known;
  }

  private static String nameOf(Entry entry, String... keyParts) {
    return String.join("/", List.of(keyParts).stream().map(entry::shown).toList());
  }
}
