package org.quietline.intake.peek;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * One column and what stands in it.
 *
 * @param place counted from 1
 * @param name its name in the header; empty where it has none
 * @param named whether the name alone says which column it is
 * @param cells a cell for each row of the grid
 */
record Column(int place, String name, boolean named, List<String> cells) {
  List<String> filled() {
    return cells.stream().filter(c -> !c.isEmpty()).toList();
  }

  boolean isEmpty() {
    return cells.stream().allMatch(String::isEmpty);
  }

  Set<String> distinct() {
    return new LinkedHashSet<>(filled());
  }

  /** Which share of the filled cells are numbers. */
  double numbers() {
    List<String> filled = filled();
    long numbers = filled.stream().filter(c -> NumberShape.of(c).isNumber()).count();
    return filled.isEmpty() ? 0 : (double) numbers / filled.size();
  }

  boolean isNumeric() {
    return numbers() >= 0.5;
  }

  boolean isWhole() {
    List<String> filled = filled();
    return !filled.isEmpty() && filled.stream().allMatch(c -> c.matches("\\d{1,9}"));
  }

  /** How the column is named in a {@code [[sheet]]}: by its name, or else by its place. */
  String toml() {
    return named ? Toml.text(name) : Integer.toString(place);
  }

  /** How the column is named in a sentence. */
  String shown() {
    return name.isEmpty() ? "column " + place : '"' + Shown.of(name) + '"';
  }
}
