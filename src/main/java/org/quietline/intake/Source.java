package org.quietline.intake;

import java.util.Map;

/** Where the text of one field comes from: one or more columns, what they mean, and a default. */
final class Source {
  /** A field of which the sheet says nothing. */
  static final Source NOTHING = new Source(new int[0], Map.of(), "");

  private final int[] places;
  private final int onlyPlace;
  private final Map<String, String> meanings;
  private final String fallback;

  Source(int[] places, Map<String, String> meanings, String fallback) {
    this.places = places.clone();
    this.onlyPlace = places.length == 1 && meanings.isEmpty() ? places[0] : -1;
    this.meanings = meanings;
    this.fallback = fallback;
  }

  /** Whether a column of the sheet is read for it. */
  boolean hasColumn() {
    return places.length > 0;
  }

  /** Whether it can hold anything. */
  boolean isNothing() {
    return places.length == 0 && fallback.isEmpty();
  }

  boolean reads(int place) {
    for (int p : places) {
      if (p == place) {
        return true;
      }
    }
    return false;
  }

  /** The text of a row; empty where neither the row nor a default says anything. */
  String of(Cells cells) {
    String text = onlyPlace >= 0 ? cells.get(onlyPlace) : meaning(joined(cells));
    return text.isEmpty() ? fallback : text;
  }

  private String meaning(String text) {
    return meanings.getOrDefault(text, text);
  }

  private String joined(Cells cells) {
    if (places.length <= 1) {
      return places.length == 0 ? "" : cells.get(places[0]);
    }
    StringBuilder text = new StringBuilder();
    for (int place : places) {
      text.append(text.length() == 0 || cells.get(place).isEmpty() ? "" : " ");
      text.append(cells.get(place));
    }
    return text.toString();
  }
}
