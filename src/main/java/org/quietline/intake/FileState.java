package org.quietline.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.Optional;

/**
 * What tells one content of a file from another without reading it.
 *
 * @param size how many bytes
 * @param changedAt when it was last written
 * @param key which file it is, where the file system tells
 */
record FileState(long size, FileTime changedAt, Optional<Object> key) {
  static FileState of(Path path) throws IOException {
    BasicFileAttributes is = Files.readAttributes(path, BasicFileAttributes.class);
    return new FileState(is.size(), is.lastModifiedTime(), Optional.ofNullable(is.fileKey()));
  }
}
