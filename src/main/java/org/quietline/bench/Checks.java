package org.quietline.bench;

import java.math.BigDecimal;

/** The checks that the records of this package share. */
final class Checks {
  private Checks() {}

  static void text(String what, String value) {
    if (value.isBlank()) {
      throw new IllegalArgumentException(what + " is empty");
    }
  }

  /** A key stands in signal ids, which are cut at each stroke, so it holds none. */
  static void key(String what, String value) {
    text(what, value);
    if (value.chars().anyMatch(Character::isISOControl)) {
      throw new IllegalArgumentException(what + " holds a sign that does not print");
    }
    if (value.indexOf('/') >= 0) {
      throw new IllegalArgumentException(
          what + " \"" + value + "\" holds a /, which a key may not");
    }
  }

  static void notItself(String what, String own, String other) {
    if (own.equals(other)) {
      throw new IllegalArgumentException(what + " is \"" + other + "\", the method itself");
    }
  }

  static void positive(String what, BigDecimal value) {
    if (value.signum() <= 0) {
      throw new IllegalArgumentException(what + " is " + value + ", it must be more than 0");
    }
  }

  static void within(String what, double least, double most, double value) {
    if (!(value >= least && value <= most)) {
      throw new IllegalArgumentException(
          what + " is " + value + ", it must be from " + least + " to " + most);
    }
  }

  static void atMost(String what, int most, int value) {
    if (value > most) {
      throw new IllegalArgumentException(what + " is " + value + ", it must be at most " + most);
    }
  }

  static void atLeast(String what, int least, int value) {
    if (value < least) {
      throw new IllegalArgumentException(what + " is " + value + ", it must be at least " + least);
    }
  }
}
