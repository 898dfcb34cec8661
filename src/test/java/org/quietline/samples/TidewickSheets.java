package org.quietline.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads the committed folder as plain text, without the program's own intake. */
final class TidewickSheets {
  static final Path FOLDER = Path.of("sample-runs/tidewick");

  private TidewickSheets() {}

  static List<CSVRecord> allRows() throws IOException {
    List<CSVRecord> rows = new ArrayList<>();
    for (String name : SampleFiles.read(FOLDER).keySet()) {
      if (name.startsWith("readings/")) {
        rows.addAll(sheet(name));
      }
    }
    return rows;
  }

  static SortedMap<String, Integer> rowsPerFile() throws IOException {
    SortedMap<String, Integer> counts = new TreeMap<>();
    for (String name : SampleFiles.read(FOLDER).keySet()) {
      if (name.startsWith("readings/")) {
        counts.put(name, sheet(name).size());
      }
    }
    return counts;
  }

  /** The two-column table under a heading of ABOUT.md. */
  static SortedMap<String, Integer> rowsInAbout(String heading) throws IOException {
    SortedMap<String, Integer> counts = new TreeMap<>();
    String about = Files.readString(FOLDER.resolve("ABOUT.md"));
    String section = about.substring(about.indexOf("## " + heading));
    for (String line : section.split("\n", -1)) {
      String[] cells = line.split("\\|", -1);
      if (cells.length == 4 && cells[1].strip().startsWith("readings/")) {
        counts.put(cells[1].strip(), Integer.parseInt(cells[2].strip()));
      }
    }
    return counts;
  }

  static List<CSVRecord> sheet(String name) throws IOException {
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(Files.readString(FOLDER.resolve(name)), format)) {
      return parser.getRecords();
    }
  }
}
