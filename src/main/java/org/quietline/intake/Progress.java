package org.quietline.intake;

/** Hears how far the reading of a bench folder has come. */
@FunctionalInterface
public interface Progress {
  /**
   * Hears that more bytes of the sheets were read.
   *
   * @param bytesRead bytes read so far, never falling
   * @param bytesInAll bytes of all sheets together when the reading began
   */
  void read(long bytesRead, long bytesInAll);
}
