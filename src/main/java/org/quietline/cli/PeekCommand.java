package org.quietline.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.quietline.intake.peek.Answers;
import org.quietline.intake.peek.Peek;
import org.quietline.intake.peek.PeekException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows how one file would be read, row by row, and proposes a {@code [[sheet]]} for it. */
@Command(
    name = "peek",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Shows how a file would be read, row by row,",
      "and proposes a [[sheet]] where it is not the plain one. Writes nothing."
    })
final class PeekCommand implements Callable<Integer> {
  private static final List<String> DECIMALS = List.of(".", ",", "either");

  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(paramLabel = "FILE", description = "The file to look at.")
  private Path file = Path.of("");

  @Option(
      names = "--bench",
      paramLabel = "BENCH",
      description = {
        "The bench folder the file belongs to.",
        "Default: the nearest folder above the file that holds a bench.toml, if there is one."
      })
  private @Nullable Path bench;

  @Option(
      names = "--rows",
      paramLabel = "N",
      description = "How many results to show. Default: ${DEFAULT-VALUE}.")
  private int rows = 5;

  @Option(
      names = "--time-format",
      paramLabel = "FORMAT",
      description = "How times are written, such as dd/MM/yyyy HH:mm; may be given several times.")
  private List<String> timeFormats = new ArrayList<>();

  @Option(
      names = "--decimal",
      paramLabel = "MARK",
      description = "The decimal mark: a point (.), a comma (,) or either.")
  private @Nullable String decimal;

  @Option(
      names = "--delimiter",
      paramLabel = "SIGN",
      description = "The sign between two columns; tab for a tab.")
  private @Nullable String delimiter;

  @Option(
      names = "--encoding",
      paramLabel = "NAME",
      description = "The encoding, such as windows-1252 or UTF-16LE.")
  private @Nullable String encoding;

  @Option(
      names = "--answer",
      paramLabel = "ANSWER",
      split = ",",
      description = "An answer to a question this command asked, such as 1a; may be repeated.")
  private List<String> chosen = new ArrayList<>();

  PeekCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    Answers answers = answers();
    try {
      Peek peek = Peek.at(file, Optional.ofNullable(bench), answers, rows);
      PeekLines.of(peek).forEach(terminal.out()::println);
      return 0;
    } catch (PeekException e) {
      terminal.err().println(e.getMessage());
      return Troubles.UNUSABLE_INPUT;
    }
  }

  private Answers answers() {
    if (rows < 0) {
      throw wrong("--rows " + rows + " is less than 0.");
    }
    if (decimal != null && !DECIMALS.contains(decimal)) {
      throw wrong("--decimal " + decimal + " is none of . and , and either.");
    }
    Optional<String> sign =
        Optional.ofNullable(delimiter)
            .map(d -> d.equalsIgnoreCase("tab") || d.equals("\\t") ? "\t" : d);
    if (sign.isPresent() && !isSign(sign.get())) {
      throw wrong("--delimiter " + sign.get() + " is not one sign, such as ; or tab.");
    }
    if (encoding != null && !Answers.knowsEncoding(encoding)) {
      throw wrong(
          "--encoding " + encoding + " is none of " + String.join(", ", Answers.encodings()) + ".");
    }
    List<String> lower = chosen.stream().map(c -> c.strip().toLowerCase(Locale.ROOT)).toList();
    return new Answers(
        timeFormats, Optional.ofNullable(decimal), sign, Optional.ofNullable(encoding), lower);
  }

  private static boolean isSign(String text) {
    return text.length() == 1
        && !Character.isLetterOrDigit(text.charAt(0))
        && "\"\r\n".indexOf(text.charAt(0)) < 0;
  }

  private ParameterException wrong(String sentence) {
    return new ParameterException(spec.commandLine(), sentence);
  }
}
