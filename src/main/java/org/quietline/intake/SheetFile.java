package org.quietline.intake;

import java.nio.file.Path;

/**
 * One file of the bench folder that holds rows.
 *
 * @param name its name relative to the bench folder, with forward strokes
 * @param path where it is
 * @param size how many bytes it had when the folder was looked at
 */
record SheetFile(String name, Path path, long size) {}
