package org.quietline.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Which column of a sheet stands where. */
final class Header {
  static final String FIELD = "header";

  private static final Pattern NUMBER = Pattern.compile("\\d+");

  private final List<String> names;
  private final Layout layout;
  private final Map<String, Integer> places = new HashMap<>();
  private final Map<String, String> unread = new LinkedHashMap<>();
  private int numbered;

  private Header(List<String> names, Layout layout) {
    this.names = names;
    this.layout = layout;
  }

  /** Makes sense of the cells of a header line, or says why there is none to be made. */
  static Header of(List<String> cells, Layout layout) throws Unusable {
    List<String> names = cells.stream().map(Header::plain).toList();
    Header header = new Header(names, layout);
    header.place();
    header.count();
    header.needRequired();
    header.lookAtUnknown();
    return header;
  }

  int size() {
    return names.size();
  }

  /** How many columns of the numbered kind there are. */
  int numbered() {
    return numbered;
  }

  OptionalInt placeOf(String column) {
    Integer place = places.get(column);
    return place == null ? OptionalInt.empty() : OptionalInt.of(place);
  }

  /** The column at a place, as the sheet names it. */
  String nameAt(int place) {
    return names.get(place);
  }

  /** The columns that are not read, each with a sentence about it. */
  Map<String, String> unread() {
    return unread;
  }

  /** Whether a row is this header once more. */
  boolean isRepeatedBy(List<String> cells) {
    return cells.stream().map(Header::plain).toList().equals(names);
  }

  private static String plain(String cell) {
    return Excerpt.strip(cell).toLowerCase(Locale.ROOT);
  }

  private void place() throws Unusable {
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      if (isKnown(name) && places.putIfAbsent(name, i) != null) {
        throw problem("The column " + name + " is there twice; keep one of the two");
      }
    }
  }

  private boolean isKnown(String name) {
    return layout.required().contains(name)
        || layout.optional().contains(name)
        || pattern(name).isPresent();
  }

  /** The numbered pattern a name follows, if it follows one. */
  private Optional<String> pattern(String name) {
    Matcher number = NUMBER.matcher(name);
    if (!number.find() || number.group().startsWith("0") || number.group().length() > 3) {
      return Optional.empty();
    }
    String pattern = name.substring(0, number.start()) + "#" + name.substring(number.end());
    return layout.numbered().stream().filter(pattern::equals).findFirst();
  }

  private void count() throws Unusable {
    if (layout.numbered().isEmpty()) {
      return;
    }
    String first = layout.numbered().get(0);
    while (places.containsKey(first.replace("#", Integer.toString(numbered + 1)))) {
      numbered++;
    }
    for (String name : new TreeSet<>(places.keySet())) {
      if (pattern(name).isPresent() && numberOf(name) > numbered) {
        String missing = first.replace("#", Integer.toString(numbered + 1));
        throw problem("The header has " + name + " but lacks " + missing + "; number them from 1");
      }
    }
  }

  private static int numberOf(String name) {
    Matcher number = NUMBER.matcher(name);
    return number.find() ? Integer.parseInt(number.group()) : 0;
  }

  private void needRequired() throws Unusable {
    List<String> missing =
        layout.required().stream().filter(name -> !places.containsKey(name)).toList();
    if (!missing.isEmpty()) {
      throw problem(
          "The header lacks "
              + Excerpt.list(missing)
              + (looksCutElsewhere() ? " (this sheet is cut at commas)" : "")
              + "; name the columns as the plain sheet does");
    }
  }

  private boolean looksCutElsewhere() {
    return names.size() == 1 && (names.get(0).contains(";") || names.get(0).contains("\t"));
  }

  private void lookAtUnknown() throws Unusable {
    for (String name : names) {
      if (isKnown(name) || name.isEmpty()) {
        continue;
      }
      Optional<String> vital = NearestName.within(1, name, absent(true));
      if (vital.isPresent()) {
        throw problem(
            "The column "
                + Excerpt.quoted(name)
                + " is not known (did you mean "
                + vital.get()
                + "?); rename it");
      }
      unread.put(
          name,
          "The column "
              + Excerpt.quoted(name)
              + " is not one of this sheet"
              + NearestName.of(name, absent(false))
                  .map(near -> " (did you mean " + near + "?)")
                  .orElse("")
              + ", and nothing in it was read.");
    }
    if (names.contains("")) {
      unread.put("", "A column without a name is not read; name it or take it out.");
    }
  }

  /** Columns the header does not have but could; only the vital ones, or all. */
  private List<String> absent(boolean vitalOnly) {
    List<String> names = new ArrayList<>();
    for (String name : layout.optional()) {
      if (!vitalOnly || layout.vital().contains(name)) {
        names.add(name);
      }
    }
    for (String pattern : layout.numbered()) {
      for (int i = 1; i <= 9; i++) {
        names.add(pattern.replace("#", Integer.toString(i)));
      }
    }
    names.removeIf(places::containsKey);
    return names;
  }

  private Unusable problem(String sentence) {
    String found = Excerpt.of(String.join(",", names));
    return new Unusable(FIELD, found, sentence + ". The header is " + Excerpt.quoted(found) + ".");
  }
}
