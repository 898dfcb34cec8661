package org.quietline.intake.peek;

/** A file that cannot be looked at; its message is a sentence for the user. */
public final class PeekException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  PeekException(String sentence) {
    super(sentence);
  }
}
