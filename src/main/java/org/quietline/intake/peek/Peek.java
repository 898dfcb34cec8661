package org.quietline.intake.peek;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.quietline.intake.TrialReading;
import org.quietline.intake.TrialReading.Described;
import org.quietline.intake.TrialReading.Trial;

/**
 * What was seen in one file, and how it would be read.
 *
 * @param name the file's name relative to the bench folder
 * @param bench the folder of the bench it was held against; empty where there is none
 * @param sheet the {@code [[sheet]]} of the bench by which it is read; empty where there is none
 * @param ofBench whether it is one of the four sheets beside {@code bench.toml}, which are read by
 *     the names of their columns
 * @param plain whether it is a plain sheet, which needs none
 * @param evidence what the file says about itself
 * @param proposal the {@code [[sheet]]} that is proposed, as TOML
 * @param kind a pattern for later files like this one, if its name suggests one
 * @param questions what is still open, in the order of the proposal
 * @param rows the first results as they would be taken in
 * @param trial what became of the rows
 * @param wholeFile whether the trial read the file to its end
 */
public record Peek(
    String name,
    Optional<Path> bench,
    Optional<String> sheet,
    boolean ofBench,
    boolean plain,
    List<Evidence> evidence,
    String proposal,
    Optional<String> kind,
    List<Question> questions,
    List<RowView> rows,
    Trial trial,
    boolean wholeFile) {
  private static final long LONGEST_TRIAL = 64_000_000;

  private static final String NO_BENCH =
      """
      name = "assumed"
      timezone = "UTC"

      [[method]]
      key = "assumed"
      title = "assumed"
      unit = "% mass"
      decimals = 3
      replicates = 2
      replicate-kind = "re-read"
      """;

  /** Copies the lists. */
  public Peek {
    evidence = List.copyOf(evidence);
    questions = List.copyOf(questions);
    rows = List.copyOf(rows);
  }

  /**
   * Looks at a file.
   *
   * @param file the file
   * @param bench the folder of the bench; where none is given, the nearest folder above the file
   *     that holds a {@code bench.toml}
   * @param answers what the user said beforehand
   * @param rows how many results to show
   * @return what was seen
   * @throws PeekException when the file is no sheet at all
   * @throws org.quietline.intake.IntakeException when the bench cannot be used
   */
  public static Peek at(Path file, Optional<Path> bench, Answers answers, int rows) {
    FileHead head = FileHead.read(file);
    Subject subject = Subject.of(file, bench);
    Optional<TrialReading> onBench = subject.bench().map(TrialReading::in);
    Optional<Described> own = onBench.flatMap(trial -> trial.sheetFor(subject.name()));
    boolean byOwn = own.isPresent() && answers.equals(Answers.NONE);
    Answers shape = byOwn ? asDescribed(own.get()) : answers;

    Draft draft = new Draft();
    draft.line("match", Toml.text(subject.match()));
    Grid grid = new ShapeDraft(draft, head, shape).write();
    if (TrialReading.isOfBench(subject.name())) {
      return ofBench(subject, draft, onBench.orElseGet(() -> TrialReading.assuming(NO_BENCH)));
    }
    Vocabulary words = new Vocabulary(onBench.map(TrialReading::settings));
    Assigned assigned = FieldFinder.find(grid, words);
    fill(draft, grid, assigned, words, answers);
    String proposal = draft.block(checked(draft, answers.chosen()));

    boolean plain = draft.lines() == 1 && draft.questions().isEmpty();
    String tried = plain ? "" : proposal;
    TrialReading reading =
        onBench.orElseGet(() -> TrialReading.assuming(AssumedBench.of(grid, assigned)));
    boolean whole = head.size() <= LONGEST_TRIAL;
    Trial trial =
        whole
            ? byOwn ? reading.read(file, subject.name()) : reading.read(file, subject.name(), tried)
            : new HeadCopy(head).read(path -> reading.read(path, subject.name(), tried));
    Optional<Described> sheet = byOwn ? own : reading.sheetFor(subject.name(), tried);
    return new Peek(
        subject.name(),
        subject.bench(),
        byOwn ? own.map(Described::place) : Optional.empty(),
        false,
        plain && !byOwn,
        draft.evidence(),
        proposal,
        subject.matchOfKind(),
        draft.questions().stream().filter(q -> !q.isAnsweredBy(answers.chosen())).toList(),
        new RowViews(grid, sheet).of(trial.results(), rows),
        trial,
        whole);
  }

  /** A sheet of the bench is read as it stands; its columns have no other names to be found. */
  private static Peek ofBench(Subject subject, Draft draft, TrialReading reading) {
    Optional<String> sheet = reading.sheetFor(subject.name()).map(Described::place);
    return new Peek(
        subject.name(),
        subject.bench(),
        sheet,
        true,
        false,
        draft.evidence(),
        "",
        Optional.empty(),
        List.of(),
        List.of(),
        reading.read(subject.file(), subject.name()),
        true);
  }

  private static Answers asDescribed(Described sheet) {
    return new Answers(
        List.of(),
        Optional.empty(),
        Optional.of(String.valueOf(sheet.delimiter())),
        sheet.encoding(),
        List.of());
  }

  private static void fill(
      Draft draft, Grid grid, Assigned assigned, Vocabulary words, Answers answers) {
    new DecimalDraft(draft, answers.decimal()).write(assigned, grid.delimiter());
    List<Column> times =
        assigned.open().getOrDefault(Field.TAKEN_AT, List.of(assigned.all(Field.TAKEN_AT))).get(0);
    new TimeDraft(draft, answers.timeFormats())
        .write(times.isEmpty() ? List.of() : TimeColumns.shapes(grid, times));
    new ColumnDraft(draft, assigned).write();
    new ValueDraft(draft, grid, assigned, words).write();
    new DefaultDraft(draft, grid, assigned, words).write();
  }

  private static List<String> checked(Draft draft, List<String> chosen) {
    List<String> unknown = draft.unknown(chosen);
    if (!unknown.isEmpty()) {
      throw new PeekException(
          "There is no answer "
              + Shown.and(unknown)
              + " here; an answer is a question's number and a line's letter, such as 1a.");
    }
    return chosen;
  }
}
