package org.quietline.intake;

import java.nio.file.Path;

/**
 * A bench folder that cannot be used at all. Its message is a sentence for the user: the file, the
 * line where there is one, and what to do.
 */
public class IntakeException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** The path as text, because a path itself does not serialize. */
  private final String path;

  IntakeException(Path path, String sentence) {
    super(sentence);
    this.path = path.toString();
  }

  IntakeException(Path path, String sentence, Throwable cause) {
    super(sentence, cause);
    this.path = path.toString();
  }

  /**
   * The folder or file that cannot be used.
   *
   * @return the path as it was given
   */
  public Path path() {
    return Path.of(path);
  }
}
