package org.quietline.intake;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Which files of a bench folder are sheets, and which are not read. */
final class FolderListing {
  static final String READINGS = "readings";
  static final List<String> SHEETS =
      List.of("calibrations.csv", "reagents.csv", "actions.csv", "outside.csv", "cold-chain.csv");

  private final Tally tally;
  private final OwnSheets ownSheets;
  private final List<SheetFile> top = new ArrayList<>();
  private final List<SheetFile> readings = new ArrayList<>();

  private FolderListing(Tally tally, OwnSheets ownSheets) {
    this.tally = tally;
    this.ownSheets = ownSheets;
  }

  static FolderListing of(Path folder, Tally tally, OwnSheets ownSheets) {
    FolderListing listing = new FolderListing(tally, ownSheets);
    listing.lookInTop(folder);
    Path readings = folder.resolve(READINGS);
    if (Files.isDirectory(readings)) {
      listing.lookInReadings(readings);
    } else if (Files.exists(readings, LinkOption.NOFOLLOW_LINKS)) {
      tally.remark(
          READINGS, 1, "file", READINGS, "readings is not a folder; nothing in it was read.");
    }
    return listing;
  }

  /** The sheet of a name that lies beside {@code bench.toml}. */
  Optional<SheetFile> sheet(String name) {
    return top.stream().filter(f -> f.name().equalsIgnoreCase(name)).findFirst();
  }

  /** The sheets of results, in name order. */
  List<SheetFile> readings() {
    return readings;
  }

  long bytes() {
    return top.stream().mapToLong(SheetFile::size).sum()
        + readings.stream().mapToLong(SheetFile::size).sum();
  }

  private void lookInTop(Path folder) {
    for (SheetFile file : filesIn(folder, "")) {
      if (!isCsv(file)) {
        continue;
      }
      if (SHEETS.stream().noneMatch(name -> name.equalsIgnoreCase(file.name()))) {
        notRead(
            file,
            "This file is not one of a bench folder"
                + NearestName.of(file.name(), SHEETS)
                    .map(name -> " (did you mean " + name + "?)")
                    .orElse("; results lie in the folder readings")
                + ". Nothing in it was read.");
      } else if (sheet(file.name()).isPresent()) {
        notRead(file, "There is a file of this name already. Nothing in this one was read.");
      } else {
        top.add(file);
      }
    }
  }

  private void lookInReadings(Path folder) {
    for (SheetFile file : filesIn(folder, READINGS + "/")) {
      if (isCsv(file) || ownSheets.matches(file.name())) {
        readings.add(file);
      } else {
        notRead(
            file,
            "Only files that end in .csv or that a [[sheet]] matches are read here. Nothing in it"
                + " was read.");
      }
    }
  }

  private static boolean isCsv(SheetFile file) {
    return file.name().toLowerCase(Locale.ROOT).endsWith(".csv");
  }

  private List<SheetFile> filesIn(Path folder, String prefix) {
    List<SheetFile> files = new ArrayList<>();
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
      for (Path path : entries) {
        String name = String.valueOf(path.getFileName());
        if (!name.startsWith(".")) {
          files.add(new SheetFile(prefix + name, path, sizeOf(path)));
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      throw new IntakeException(
          folder,
          "The folder " + folder + " could not be listed. See that you may read it and run again.",
          e);
    }
    files.sort(Comparator.comparing(SheetFile::name));
    return files;
  }

  private static long sizeOf(Path path) {
    try {
      return Files.isRegularFile(path) ? Files.size(path) : 0;
    } catch (IOException e) {
      return 0;
    }
  }

  private void notRead(SheetFile file, String sentences) {
    tally.remark(file.name(), 1, "file", file.name(), sentences);
  }
}
