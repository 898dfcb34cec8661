package org.quietline.cli;

/** The program. */
public final class Quietline {
  private Quietline() {}

  /**
   * Runs one command.
   *
   * @param arguments the words after the program's name
   */
  public static void main(String[] arguments) {}
}
