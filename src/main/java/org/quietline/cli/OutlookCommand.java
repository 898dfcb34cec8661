package org.quietline.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.quietline.assess.CalibrationOutlook;
import org.quietline.assess.OutlookFindings;
import org.quietline.bench.Method;
import org.quietline.report.DecisionNote;
import org.quietline.report.Document;
import org.quietline.report.OutlookLines;
import org.quietline.report.pdf.Paper;
import org.quietline.report.pdf.PdfReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Recalibrate, or keep to the date? One decision note for each calibration in use. */
@Command(
    name = "outlook",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Is a calibration drifting, until when is it safe, recalibrate now or not?",
      "Writes a decision note for each method and instrument."
    })
final class OutlookCommand implements Callable<Integer> {
  private static final int MOST_TESTS = 6;

  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(paramLabel = "BENCH", description = "The bench folder, with its bench.toml.")
  private Path folder = Path.of(".");

  @Option(names = "--method", paramLabel = "KEY", description = "One method. Default: all.")
  private @Nullable String method;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      converter = Dates.Day.class,
      description = "The day to speak from. Default: the day of the latest row.")
  private @Nullable LocalDate on;

  @Option(
      names = "--tests",
      paramLabel = "N",
      description =
          "For how many control tests the next ones are planned, 0 to 6."
              + " Default: ${DEFAULT-VALUE}.")
  private int tests = 3;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Where to write. Default: ${DEFAULT-VALUE} in the working directory.")
  private Path out = Path.of("reports");

  @Option(
      names = "--paper",
      paramLabel = "PAPER",
      description = "The size of the pages, ${COMPLETION-CANDIDATES}. Default: ${DEFAULT-VALUE}.")
  private Paper paper = Paper.A4;

  OutlookCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    if (tests < 0 || tests > MOST_TESTS) {
      throw new ParameterException(
          spec.commandLine(), "--tests " + tests + " is not from 0 to " + MOST_TESTS + ".");
    }
    Opened opened = Opened.read(folder, terminal);
    checkMethod(opened.intake().bench().settings().methods());
    if (opened.review().latestRow().isEmpty()) {
      return opened.unusable(folder, "there is no outlook", terminal);
    }
    OutlookFindings findings =
        opened.review().outlook(Optional.ofNullable(on), Optional.ofNullable(method), tests);
    if (on != null && findings.outlooks().isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "No method of this bench was calibrated by " + on + ".");
    }
    write(findings);
    return findings.steady() ? ReviewCommand.STEADY : ReviewCommand.NEEDS_A_PERSON;
  }

  private void checkMethod(List<Method> methods) {
    if (method != null && methods.stream().noneMatch(m -> m.key().equals(method))) {
      throw new ParameterException(
          spec.commandLine(),
          "There is no method "
              + method
              + " in "
              + folder.resolve("bench.toml")
              + ". There are: "
              + methods.stream().map(Method::key).collect(Collectors.joining(", "))
              + ".");
    }
  }

  private void write(OutlookFindings findings) throws IOException {
    OutputFiles files = new OutputFiles();
    List<Path> written = new ArrayList<>();
    for (CalibrationOutlook outlook : findings.outlooks()) {
      Document note = DecisionNote.of(outlook, findings, Version.number());
      Path file = out.resolve(nameOf(outlook, findings));
      files.add(file, stream -> PdfReport.write(note, paper, stream));
      written.add(file);
    }
    files.write();
    OutlookLines.of(findings).forEach(terminal.out()::println);
    if (!written.isEmpty()) {
      terminal
          .out()
          .println(
              "Written: " + written.stream().map(Path::toString).collect(Collectors.joining(", ")));
    }
  }

  private static String nameOf(CalibrationOutlook outlook, OutlookFindings findings) {
    String name =
        "outlook-"
            + outlook.method().key()
            + "-"
            + outlook.drift().instrument()
            + "-"
            + findings.now().toLocalDate();
    return Opened.fileName(name) + ".pdf";
  }
}
