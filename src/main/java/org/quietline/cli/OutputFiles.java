package org.quietline.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Files that belong together and appear whole or not at all: each is written under another name
 * beside its place and forced to the disk, and only when all are there are they put in place.
 */
final class OutputFiles {
  private final Map<Path, Content> contents = new LinkedHashMap<>();

  /** Writes the content of one file. */
  interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  OutputFiles add(Path file, Content content) {
    if (file.toAbsolutePath().getParent() == null) {
      throw new IllegalArgumentException(file + " is no file name");
    }
    contents.put(file.toAbsolutePath(), content);
    return this;
  }

  void write() throws IOException {
    Map<Path, Path> drafts = new LinkedHashMap<>();
    try {
      for (Map.Entry<Path, Content> entry : contents.entrySet()) {
        Path file = entry.getKey();
        Files.createDirectories(file.getParent());
        if (Files.isDirectory(file)) {
          throw new NotWritten(file, "there is a folder of that name");
        }
        Path draft = draftOf(file);
        drafts.put(file, draft);
        draft(file, draft, entry.getValue());
      }
      for (Map.Entry<Path, Path> entry : drafts.entrySet()) {
        put(entry.getValue(), entry.getKey());
      }
    } finally {
      for (Path draft : drafts.values()) {
        Files.deleteIfExists(draft);
      }
    }
  }

  private static Path draftOf(Path file) {
    String name = "." + file.getFileName() + "." + ProcessHandle.current().pid() + ".draft";
    return file.resolveSibling(name);
  }

  private static void draft(Path file, Path draft, Content content) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            draft,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel));
      content.writeTo(out);
      out.flush();
      channel.force(true);
    } catch (IOException e) {
      throw new NotWritten(file, e);
    }
  }

  private static void put(Path draft, Path file) throws IOException {
    try {
      Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** A file could not be written; nothing was put in place. */
  static final class NotWritten extends IOException {
    private static final long serialVersionUID = 1L;

    NotWritten(Path file, String reason) {
      super(file + ": could not be written, " + reason);
    }

    NotWritten(Path file, IOException cause) {
      super(file + ": could not be written, " + reasonOf(cause), cause);
    }

    private static String reasonOf(IOException cause) {
      String reason = cause.getMessage();
      return reason == null || reason.contains(".draft")
          ? "see that its folder may be written to and the disk is not full"
          : reason;
    }
  }
}
