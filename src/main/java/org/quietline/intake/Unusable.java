package org.quietline.intake;

/**
 * A row, a header or an entry of the settings that cannot be used: the field, the text found there,
 * and a sentence that says what is wrong and what would mend it. Never leaves the package.
 */
final class Unusable extends Exception {
  private static final long serialVersionUID = 1L;

  private final String field;
  private final String text;

  Unusable(String field, String text, String sentence) {
    super(sentence, null, false, false);
    this.field = field;
    this.text = text;
  }

  String field() {
    return field;
  }

  String text() {
    return text;
  }

  String sentence() {
    return String.valueOf(getMessage());
  }
}
