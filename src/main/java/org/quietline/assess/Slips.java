package org.quietline.assess;

import java.util.List;

/**
 * Every number of a method that looks like a slip, and how many results could be judged.
 *
 * @param questions the questions up to now, in time order
 * @param inPeriod how many results of the method the period has
 * @param judged how many of them could be held against something beyond their own readings
 */
public record Slips(List<Slip> questions, int inPeriod, int judged) {
  /** Nothing was found, because nothing was looked at. */
  public static final Slips NONE = new Slips(List.of(), 0, 0);

  /** Copies the list. */
  public Slips {
    questions = List.copyOf(questions);
    if (judged < 0 || judged > inPeriod) {
      throw new IllegalArgumentException(judged + " judged of " + inPeriod);
    }
  }

  /**
   * The questions of the period that nobody has answered.
   *
   * @return in time order
   */
  public List<Slip> open() {
    return questions.stream().filter(s -> s.inPeriod() && s.open()).toList();
  }
}
