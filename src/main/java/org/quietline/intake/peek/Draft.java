package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The {@code [[sheet]]} as it comes together: lines that are known, questions, and evidence. */
final class Draft {
  /** One for each letter. */
  private static final int MOST_ANSWERS = 26;

  private final List<Item> items = new ArrayList<>();
  private final List<Evidence> evidence = new ArrayList<>();
  private final Map<Integer, String> refused = new HashMap<>();

  /** A line of the sheet, or a question in its place. */
  private record Item(String line, Optional<Question> question) {}

  void line(String key, String value) {
    items.add(new Item(key + " = " + value, Optional.empty()));
  }

  void ask(String text, List<String> lines) {
    items.add(
        new Item(
            "",
            Optional.of(
                new Question(
                    questions().size() + 1,
                    text,
                    lines.subList(0, Math.min(MOST_ANSWERS, lines.size()))))));
  }

  /** Asks where the reader would take something for granted: an empty value makes it refuse. */
  void askRefusing(String key, String text, List<String> values) {
    ask(text, values.stream().map(value -> key + " = " + value).toList());
    refused.put(questions().size(), key);
  }

  void found(String about, String found, String why) {
    evidence.add(new Evidence(about, found, why));
  }

  List<Evidence> evidence() {
    return evidence;
  }

  List<Question> questions() {
    return items.stream().flatMap(i -> i.question().stream()).toList();
  }

  /** How many lines are known. */
  long lines() {
    return items.stream().filter(i -> i.question().isEmpty()).count();
  }

  /**
   * The sheet as TOML. An open question stands as comments, so that nothing is taken for granted
   * where it is pasted unanswered.
   *
   * @param chosen answers such as {@code 2b}
   */
  String block(List<String> chosen) {
    List<String> lines = new ArrayList<>(List.of("[[sheet]]"));
    for (Item item : items) {
      if (item.question().isEmpty()) {
        lines.add(item.line());
      } else {
        lines.addAll(inPlaceOf(item.question().get(), chosen));
      }
    }
    return String.join("\n", lines) + "\n";
  }

  private List<String> inPlaceOf(Question question, List<String> chosen) {
    for (int i = 0; i < question.lines().size(); i++) {
      if (chosen.contains(question.answer(i))) {
        return List.of(question.lines().get(i));
      }
    }
    List<String> lines = new ArrayList<>();
    String key = refused.get(question.number());
    lines.add(
        "# question "
            + question.number()
            + (key == null
                ? ": take the # off one of these lines"
                : ": write one of these lines in place of the empty one below them"));
    question.lines().forEach(line -> lines.add("# " + line));
    if (key != null) {
      lines.add(key + " = \"\"");
    }
    return lines;
  }

  /** The answers that are none of these questions. */
  List<String> unknown(List<String> chosen) {
    List<String> unknown = new ArrayList<>(chosen);
    for (Question question : questions()) {
      for (int i = 0; i < question.lines().size(); i++) {
        unknown.remove(question.answer(i));
      }
    }
    return unknown;
  }
}
