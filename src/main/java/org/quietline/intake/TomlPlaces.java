package org.quietline.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The lines on which a TOML text says what. A tree of values has lost them, so the text is walked
 * once more for table headers and keys; strings, comments, arrays and inline tables are stepped
 * over. Paths are written {@code method[1].unit}, counted from 0. The text is known to be valid.
 */
final class TomlPlaces {
  private final String text;
  private final Map<String, Integer> lines = new HashMap<>();
  private final Map<String, Integer> tables = new HashMap<>();
  private String table = "";
  private int at;
  private int line = 1;

  private TomlPlaces(String text) {
    this.text = text;
  }

  static TomlPlaces in(String text) {
    TomlPlaces places = new TomlPlaces(text);
    places.walk();
    return places;
  }

  /** The line of a path, or of the nearest thing around it that has one. */
  int line(String path) {
    String p = path;
    while (!p.isEmpty()) {
      Integer found = lines.get(p);
      if (found != null) {
        return found;
      }
      p = p.substring(0, Math.max(0, Math.max(p.lastIndexOf('.'), p.lastIndexOf('['))));
    }
    return 1;
  }

  private void walk() {
    while (skipToSomething()) {
      if (text.charAt(at) == '[') {
        header();
      } else {
        keyAndValue();
      }
    }
  }

  private boolean skipToSomething() {
    while (at < text.length()) {
      char c = text.charAt(at);
      if (c == '#') {
        toEndOfLine();
      } else if (Character.isWhitespace(c)) {
        step();
      } else {
        return true;
      }
    }
    return false;
  }

  private void header() {
    int first = line;
    boolean many = text.startsWith("[[", at);
    at += many ? 2 : 1;
    List<String> names = path(']');
    String path = resolve(names, many);
    table = path;
    lines.putIfAbsent(path, first);
    toEndOfLine();
  }

  private String resolve(List<String> names, boolean many) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < names.size(); i++) {
      path.append(path.length() == 0 ? "" : ".").append(names.get(i));
      String plain = path.toString();
      if (many && i == names.size() - 1) {
        tables.merge(plain, 1, Integer::sum);
        lines.putIfAbsent(plain, line);
      }
      Integer count = tables.get(plain);
      if (count != null) {
        path.append('[').append(count - 1).append(']');
      }
    }
    return path.toString();
  }

  private void keyAndValue() {
    int first = line;
    String path = table;
    for (String name : path('=')) {
      path = path.isEmpty() ? name : path + "." + name;
      lines.putIfAbsent(path, first);
    }
    value();
  }

  /** Reads a dotted key up to and with the sign that ends it. */
  private List<String> path(char end) {
    List<String> names = new ArrayList<>();
    StringBuilder name = new StringBuilder();
    while (at < text.length() && text.charAt(at) != end && text.charAt(at) != '\n') {
      char c = text.charAt(at);
      if (c == '"' || c == '\'') {
        int from = at + 1;
        string();
        name.append(text, Math.min(from, at - 1), at - 1);
      } else {
        if (c == '.') {
          names.add(name.toString());
          name.setLength(0);
        } else if (!Character.isWhitespace(c)) {
          name.append(c);
        }
        at++;
      }
    }
    names.add(name.toString());
    at = Math.min(at + 1, text.length());
    return names;
  }

  private void value() {
    int depth = 0;
    while (at < text.length()) {
      char c = text.charAt(at);
      if (c == '"' || c == '\'') {
        string();
      } else if (c == '#') {
        toEndOfLine();
      } else {
        depth += c == '[' || c == '{' ? 1 : c == ']' || c == '}' ? -1 : 0;
        step();
        if (c == '\n' && depth <= 0) {
          return;
        }
      }
    }
  }

  private void string() {
    char quote = text.charAt(at);
    String three = String.valueOf(quote).repeat(3);
    boolean many = text.startsWith(three, at);
    at += many ? 3 : 1;
    while (at < text.length()) {
      char c = text.charAt(at);
      if (c == '\\' && quote == '"') {
        step();
        step();
      } else if (many ? text.startsWith(three, at) : c == quote) {
        at += many ? 3 : 1;
        return;
      } else {
        step();
      }
    }
  }

  private void toEndOfLine() {
    while (at < text.length() && text.charAt(at) != '\n') {
      at++;
    }
  }

  private void step() {
    if (at < text.length() && text.charAt(at++) == '\n') {
      line++;
    }
  }
}
