package org.quietline.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.quietline.assess.Findings;
import org.quietline.assess.Period;
import org.quietline.assess.Review;
import org.quietline.assess.StillNeeded;
import org.quietline.bench.Accounting;
import org.quietline.bench.Bench;
import org.quietline.bench.SignalId;
import org.quietline.intake.Intake;
import org.quietline.report.Document;
import org.quietline.report.FindingsJson;
import org.quietline.report.MonthlyReview;
import org.quietline.report.Notice;
import org.quietline.report.Notices;
import org.quietline.report.ScreenLines;
import org.quietline.report.ToSettle;
import org.quietline.report.pdf.Paper;
import org.quietline.report.pdf.PdfReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/**
 * The main job: takes a bench folder in, judges every method, writes the month's pages, {@code
 * findings.json} and the list of what to settle, prints one line a method.
 */
@Command(
    name = "review",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = "Reads a bench folder, judges every method, and writes the month's review.")
final class ReviewCommand implements Callable<Integer> {
  static final int STEADY = 0;
  static final int NEEDS_A_PERSON = 3;

  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(paramLabel = "BENCH", description = "The bench folder, with its bench.toml.")
  private Path folder = Path.of(".");

  @Option(
      names = "--month",
      paramLabel = "YYYY-MM",
      converter = Dates.Month.class,
      description = "The month to review. Default: the latest month with results.")
  private @Nullable YearMonth month;

  @Option(
      names = "--from",
      paramLabel = "DATE",
      converter = Dates.Day.class,
      description = "The first day to review, with --to, instead of a month.")
  private @Nullable LocalDate from;

  @Option(
      names = "--to",
      paramLabel = "DATE",
      converter = Dates.Day.class,
      description = "The last day to review.")
  private @Nullable LocalDate to;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      converter = Dates.Day.class,
      description = {
        "The day to speak from.",
        "Default: the end of the period or the latest row, whichever is earlier."
      })
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

  ReviewCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    checkUsage();
    Opened opened = Opened.read(folder, terminal);
    Intake intake = opened.intake();
    Review review = opened.review();
    Optional<Period> period = period(review);
    if (period.isEmpty()) {
      return withoutResults(intake);
    }
    checkDays(period.get(), review);
    Findings findings = review.of(period.get(), Optional.ofNullable(on));
    write(findings);
    return findings.steady() ? STEADY : NEEDS_A_PERSON;
  }

  /** A bench that has only begun is told what it needs; one whose results are lost is told that. */
  private int withoutResults(Intake intake) {
    Accounting accounting = intake.accounting();
    boolean begun =
        accounting.rows() == 0
            || (accounting.rowsAside() == 0
                && accounting.files().stream().anyMatch(f -> f.file().startsWith("readings/")));
    if (begun) {
      Bench bench = intake.bench();
      ScreenLines.of(bench.settings().name(), StillNeeded.of(bench), accounting)
          .forEach(terminal.out()::println);
      return NEEDS_A_PERSON;
    }
    ScreenLines.of(accounting).forEach(terminal.out()::println);
    terminal
        .err()
        .println(
            folder
                + ": no result could be taken in, so there is nothing to review. "
                + "Put results into readings/, mend the rows set aside, and run again.");
    return Troubles.UNUSABLE_INPUT;
  }

  private void checkUsage() {
    if ((from == null) != (to == null)) {
      throw new ParameterException(spec.commandLine(), "--from and --to go together.");
    }
    if (month != null && from != null) {
      throw new ParameterException(
          spec.commandLine(), "Either --month, or --from and --to, not both.");
    }
    if (from != null && to != null && to.isBefore(from)) {
      throw new ParameterException(
          spec.commandLine(), "--to " + to + " is before --from " + from + ".");
    }
  }

  private void checkDays(Period period, Review review) {
    if (on != null && (on.isBefore(period.from()) || on.isAfter(period.to()))) {
      throw new ParameterException(
          spec.commandLine(),
          "--on "
              + on
              + " is not within the days reviewed, "
              + period.from()
              + " to "
              + period.to()
              + ".");
    }
    LocalDate last = review.latestRow().orElseThrow().toLocalDate();
    if (last.isBefore(period.from())) {
      throw new ParameterException(
          spec.commandLine(),
          "The latest row of "
              + folder
              + " is of "
              + last
              + ", before "
              + period.from()
              + ". Choose an earlier month.");
    }
  }

  private Optional<Period> period(Review review) {
    if (review.latestMonth().isEmpty()) {
      return Optional.empty();
    }
    if (from != null && to != null) {
      return Optional.of(new Period(from, to));
    }
    return Optional.ofNullable(month).or(review::latestMonth).map(Period::of);
  }

  private void write(Findings findings) throws IOException {
    Document document = MonthlyReview.of(findings, Version.number());
    Path pages = out.resolve("review-" + nameOf(findings.period()) + ".pdf");
    Path json = out.resolve("findings.json");
    Path toSettle = out.resolve("to-settle-" + nameOf(findings.period()) + ".csv");
    OutputFiles files =
        new OutputFiles()
            .add(pages, stream -> PdfReport.write(document, paper, stream))
            .add(json, stream -> FindingsJson.write(findings, stream))
            .add(toSettle, stream -> ToSettle.write(findings, stream));
    List<Path> written = new ArrayList<>(List.of(pages));
    for (Notice notice : Notices.of(findings, Version.number())) {
      Path file = out.resolve(nameOf(notice.story()) + ".pdf");
      files.add(file, stream -> PdfReport.write(notice.document(), paper, stream));
      written.add(file);
    }
    files.write();
    written.add(json);
    ScreenLines.of(findings).forEach(terminal.out()::println);
    terminal
        .out()
        .println(
            "Written: "
                + written.stream().map(Path::toString).collect(Collectors.joining(", "))
                + " and "
                + toSettle);
  }

  private static String nameOf(SignalId story) {
    return Opened.fileName(
        String.join(
            "-",
            "notice",
            story.method(),
            story.instrument(),
            story.at().format(DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmm"))));
  }

  private static String nameOf(Period period) {
    YearMonth month = YearMonth.from(period.from());
    return period.equals(Period.of(month))
        ? month.toString()
        : period.from() + "-to-" + period.to();
  }
}
