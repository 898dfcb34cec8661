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
import org.quietline.assess.ReleaseFindings;
import org.quietline.report.Document;
import org.quietline.report.ReleaseLines;
import org.quietline.report.ReleaseNote;
import org.quietline.report.pdf.Paper;
import org.quietline.report.pdf.PdfReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** May a batch go? One note of one page for each. */
@Command(
    name = "release",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "May a batch go, by its results, their uncertainty and the state of the methods?",
      "Writes a note of one page for each batch."
    })
final class ReleaseCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(paramLabel = "BENCH", description = "The bench folder, with its bench.toml.")
  private Path folder = Path.of(".");

  @Option(
      names = "--sample",
      paramLabel = "ID",
      description = "One sample. Default: those tested on the latest day that has any.")
  private @Nullable String sample;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      converter = Dates.Day.class,
      description = "The day to speak from. Default: the day of the latest row.")
  private @Nullable LocalDate on;

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

  ReleaseCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    Opened opened = Opened.read(folder, terminal);
    if (opened.review().latestRow().isEmpty()) {
      return opened.unusable(folder, "no batch can be judged", terminal);
    }
    ReleaseFindings findings =
        opened.review().release(Optional.ofNullable(on), Optional.ofNullable(sample));
    if (findings.batches().isEmpty()) {
      throw new ParameterException(spec.commandLine(), nothing());
    }
    write(findings);
    return findings.steady() ? ReviewCommand.STEADY : ReviewCommand.NEEDS_A_PERSON;
  }

  private String nothing() {
    String by = on == null ? "" : " by " + on;
    return sample == null
        ? "No sample of role product or retest was tested"
            + by
            + " with a method that has a product limit in "
            + folder.resolve("bench.toml")
            + "."
        : "Sample "
            + sample
            + " has no result of role product or retest"
            + by
            + " with a method that has a product limit. Look for its id in "
            + folder.resolve("readings")
            + ".";
  }

  private void write(ReleaseFindings findings) throws IOException {
    OutputFiles files = new OutputFiles();
    List<Path> written = new ArrayList<>();
    for (ReleaseFindings.Batch batch : findings.batches()) {
      Document note = ReleaseNote.of(batch, findings, Version.number());
      Path file =
          out.resolve(
              Opened.fileName("release-" + batch.sample() + "-" + findings.now().toLocalDate())
                  + ".pdf");
      files.add(file, stream -> PdfReport.write(note, paper, stream));
      written.add(file);
    }
    files.write();
    ReleaseLines.of(findings).forEach(terminal.out()::println);
    terminal
        .out()
        .println(
            "Written: " + written.stream().map(Path::toString).collect(Collectors.joining(", ")));
  }
}
