package org.quietline.intake.peek;

import java.util.List;
import java.util.stream.IntStream;

/**
 * What the file leaves open.
 *
 * @param number its number, counted from 1 over all questions about the file
 * @param text the question
 * @param lines the answers, each as a line of the {@code [[sheet]]}
 */
public record Question(int number, String text, List<String> lines) {
  /** Copies the lines. */
  public Question {
    lines = List.copyOf(lines);
    if (lines.isEmpty()) {
      throw new IllegalArgumentException("a question without an answer: " + text);
    }
  }

  /**
   * What an answer is called.
   *
   * @param line the place of its line, counted from 0
   * @return the question's number and a letter, such as {@code 2b}
   */
  public String answer(int line) {
    return number + String.valueOf((char) ('a' + line));
  }

  boolean isAnsweredBy(List<String> chosen) {
    return IntStream.range(0, lines.size()).anyMatch(i -> chosen.contains(answer(i)));
  }
}
