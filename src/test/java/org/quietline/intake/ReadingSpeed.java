package org.quietline.intake;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Reader;
import java.lang.ref.Reference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Measures how long the plain sheet takes to be read, as a multiple of the time in which Commons
 * CSV walks the same file in the same process, and how much memory stays taken for each result. A
 * program for a person, no test: times hang on the machine. Arguments: how many rows, how many
 * rounds.
 */
final class ReadingSpeed {
  private static final int ROWS = 1_000_000;
  private static final int ROUNDS = 5;
  private static final int WARM_UP = 3;
  private static final double NANOS = 1e9;

  private ReadingSpeed() {}

  /**
   * Makes the file, reads it, and prints what it took.
   *
   * @param args how many rows and how many rounds; may be left out
   * @throws IOException when the file cannot be written or read
   */
  public static void main(String[] args) throws IOException {
    int rows = args.length > 0 ? Integer.parseInt(args[0]) : ROWS;
    int rounds = args.length > 1 ? Integer.parseInt(args[1]) : ROUNDS;
    Path folder = Files.createTempDirectory("reading-speed");
    try {
      Path sheet = write(folder, rows);
      long bytes = Files.size(sheet);
      double[] walks = new double[rounds];
      double[] readings = new double[rounds];
      for (int i = -WARM_UP; i < rounds; i++) {
        double walk = walk(sheet, rows);
        double reading = read(folder, rows);
        if (i >= 0) {
          walks[i] = walk;
          readings[i] = reading;
        }
      }
      double[] ratios = new double[rounds];
      Arrays.setAll(ratios, i -> readings[i] / walks[i]);
      System.out.printf(
          Locale.ROOT,
          "%d rows, %.1f MB; Commons CSV walks %.2f s (%.0f ns a row), reading %.2f s (%.0f ns a row,"
              + " %.0f rows/s); median ratio %.2f%n",
          rows,
          bytes / 1e6,
          median(walks),
          median(walks) * NANOS / rows,
          median(readings),
          median(readings) * NANOS / rows,
          rows / median(readings),
          median(ratios));
      System.out.printf(
          Locale.ROOT, "%.0f bytes stay taken for each result%n", retained(folder) / rows);
    } finally {
      delete(folder);
    }
  }

  private static Path write(Path folder, int rows) throws IOException {
    new TempBench(folder);
    Path sheet = folder.resolve("readings").resolve("a.csv");
    Files.createDirectories(sheet.getParent());
    Random random = new Random(20_261_014);
    LocalDateTime at = LocalDateTime.of(2006, 1, 1, 0, 0);
    try (BufferedWriter out = Files.newBufferedWriter(sheet)) {
      out.write(
          "taken_at,method,instrument,role,sample,reading_1,reading_2,unit,calibration,"
              + "reagent_lot,operator,remark\n");
      for (int i = 0; i < rows; i++) {
        boolean control = i % 10 == 0;
        out.append(at.plusMinutes(i).toString()).append(",total-glycerin,PM-1,");
        out.append(control ? "control,QC-TG-A," : "product,B-" + (100_000 + i) + ",");
        out.append("0.").append(Integer.toString(150 + random.nextInt(60))).append(",0.");
        out.append(Integer.toString(150 + random.nextInt(60)));
        out.append(",% mass,C-").append(Integer.toString(1 + i / 5000));
        out.append(",L-").append(Integer.toString(1 + i / 20_000));
        out.append(random.nextBoolean() ? ",RO," : ",AB,");
        out.append(i % 50 == 0 ? "\"vial \"\"two\"\", warm\"\n" : "\n");
      }
    }
    return sheet;
  }

  private static double walk(Path sheet, int rows) throws IOException {
    long start = System.nanoTime();
    long seen = 0;
    try (Reader reader = Files.newBufferedReader(sheet);
        CSVParser parser =
            CSVParser.builder().setReader(reader).setFormat(CSVFormat.RFC4180).get()) {
      for (CSVRecord row : parser) {
        seen += row.get(0).isEmpty() ? 0 : 1;
      }
    }
    expect(rows + 1L, seen);
    return (System.nanoTime() - start) / NANOS;
  }

  private static double read(Path folder, int rows) {
    long start = System.nanoTime();
    Intake intake = BenchFolder.read(folder);
    double seconds = (System.nanoTime() - start) / NANOS;
    expect(rows, intake.accounting().takenIn());
    return seconds;
  }

  private static double retained(Path folder) {
    long before = used();
    Intake intake = BenchFolder.read(folder);
    try {
      return used() - before;
    } finally {
      Reference.reachabilityFence(intake);
    }
  }

  private static long used() {
    for (int i = 0; i < 4; i++) {
      System.gc();
    }
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }

  private static void expect(long wanted, long found) {
    if (wanted != found) {
      throw new IllegalStateException(wanted + " rows expected, but " + found + " read");
    }
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      List<Path> all = files.sorted(Comparator.reverseOrder()).toList();
      for (Path file : all) {
        Files.delete(file);
      }
    }
  }
}
