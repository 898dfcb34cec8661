package org.quietline.stats;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestPlan;

/**
 * Writes the evidence and coverage tables when all tests have run: as CSV into the folder that the
 * property {@code tables} names, and on the screen where {@code tables.print} asks for it.
 */
public final class Tables implements TestExecutionListener {
  @Override
  public void testPlanExecutionFinished(TestPlan plan) {
    String folder = System.getProperty("tables");
    if (folder == null) {
      return;
    }
    try {
      Files.createDirectories(Path.of(folder));
      writeEvidence(Path.of(folder, "evidence.csv"));
      writeCoverage(Path.of(folder, "coverage.csv"));
      writeStudy(Path.of(folder, "simulated-benches.csv"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    if (Boolean.getBoolean("tables.print")) {
      print();
    }
  }

  private static void writeEvidence(Path file) throws IOException {
    try (CSVPrinter out = printer(file)) {
      out.printRecord("subject", "what", "source", "kind", "expected", "got", "agreeing_digits");
      for (Evidence e : Evidence.all()) {
        out.printRecord(
            e.place(),
            e.what(),
            e.source(),
            e.kindInWords(),
            e.expected(),
            e.got(),
            e.digitsInWords());
      }
    }
  }

  private static void writeCoverage(Path file) throws IOException {
    try (CSVPrinter out = printer(file)) {
      out.printRecord("subject", "what", "size", "nominal", "covered", "trials");
      for (Coverage c : Coverage.all()) {
        out.printRecord(
            c.subject().getSimpleName(), c.what(), c.size(), c.nominal(), c.covered(), c.trials());
      }
    }
  }

  private static void writeStudy(Path file) throws IOException {
    try (CSVPrinter out = printer(file)) {
      out.printRecord("what", "where", "unit", "stated", "observed", "benches");
      for (Study s : Study.all()) {
        out.printRecord(
            s.what(),
            s.where(),
            s.unit(),
            Double.isNaN(s.stated()) ? "" : String.format(Locale.ROOT, "%.4f", s.stated()),
            String.format(Locale.ROOT, "%.4f", s.observed()),
            s.benches());
      }
    }
  }

  private static CSVPrinter printer(Path file) throws IOException {
    return new CSVPrinter(
        Files.newBufferedWriter(file, StandardCharsets.UTF_8),
        CSVFormat.RFC4180.builder().setRecordSeparator('\n').get());
  }

  private static void print() {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    List<Evidence> evidence = Evidence.all();
    String line = "%-34s %-62s %-44s %-20s %22s %24s %6s%n";
    out.printf(Locale.ROOT, line, "class", "what", "source", "kind", "expected", "got", "digits");
    for (Evidence e : evidence) {
      out.printf(
          Locale.ROOT,
          line,
          e.place(),
          e.what(),
          e.source(),
          e.kindInWords(),
          e.expected(),
          e.got(),
          e.digitsInWords());
    }
    for (Evidence.Kind kind : Evidence.Kind.values()) {
      out.printf(
          Locale.ROOT,
          "%6d %s%n",
          evidence.stream().filter(e -> e.kind() == kind).count(),
          kind.name().toLowerCase(Locale.ROOT));
    }
    for (Coverage c : Coverage.all()) {
      out.printf(
          Locale.ROOT,
          "%-28s %-70s %-32s nominal %5.1f %%  held %6.2f %%  of %d%n",
          c.subject().getSimpleName(),
          c.what(),
          c.size(),
          100 * c.nominal(),
          100 * c.covered(),
          c.trials());
    }
  }
}
