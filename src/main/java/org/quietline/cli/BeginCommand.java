package org.quietline.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.quietline.intake.NewBench;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes the folder of a new bench, whole or not at all, and says what to do next. */
@Command(
    name = "begin",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = "Makes the folder of a new bench, with settings to fill in and empty sheets.")
final class BeginCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(paramLabel = "DIR", description = "The folder to make; it may exist if it is empty.")
  private Path folder = Path.of(".");

  @Option(
      names = "--name",
      paramLabel = "NAME",
      description = "The bench's name. Default: the folder's.")
  private @Nullable String name;

  @Option(
      names = "--timezone",
      paramLabel = "ZONE",
      description = {
        "The zone of all times on the sheets, such as Europe/Dublin.",
        "Default: this computer's, to be checked in bench.toml."
      })
  private @Nullable String timezone;

  @Option(
      names = "--methods",
      paramLabel = "CARDS",
      description = {
        "The methods it runs, as names of method cards with commas between them, of",
        "acid-number, free-fatty-acid, total-glycerin, free-glycerin.",
        "Default: ${DEFAULT-VALUE}."
      })
  private String methods = String.join(",", NewBench.USUAL_CARDS);

  BeginCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    NewBench bench =
        new NewBench(chosenName(), chosenZone(), ZoneId.systemDefault(), chosenMethods());
    NewFolder place = new NewFolder(folder);
    try {
      Optional<String> taken = place.whyNot();
      if (taken.isPresent()) {
        throw wrong(taken.get());
      }
      place.write(bench.files());
    } catch (IOException e) {
      terminal
          .err()
          .println(
              folder
                  + ": the bench could not be made, and nothing of it was left behind. See that the"
                  + " folder may be written to and that the disk is not full, or give another one.");
      return Troubles.NOT_FINISHED;
    }
    tell(bench);
    return ReviewCommand.STEADY;
  }

  private String chosenName() {
    Path own = folder.toAbsolutePath().normalize().getFileName();
    String chosen = name != null ? name : String.valueOf(own);
    if (chosen.isBlank() || chosen.chars().anyMatch(Character::isISOControl)) {
      throw wrong("--name must be one line with something on it.");
    }
    return chosen;
  }

  private Optional<ZoneId> chosenZone() {
    if (timezone == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(ZoneId.of(timezone));
    } catch (DateTimeException e) {
      throw wrong("\"" + timezone + "\" is no time zone. Write it as in Europe/Dublin.");
    }
  }

  private List<String> chosenMethods() {
    List<String> chosen =
        Arrays.stream(methods.split(",", -1)).map(String::strip).distinct().toList();
    for (String method : chosen) {
      if (!NewBench.knownCards().contains(method)) {
        throw wrong(
            "\""
                + method
                + "\" is no method card; there are "
                + String.join(", ", NewBench.knownCards())
                + ". A method without a card is written into bench.toml by hand.");
      }
    }
    return chosen;
  }

  private ParameterException wrong(String sentence) {
    return new ParameterException(spec.commandLine(), sentence);
  }

  private void tell(NewBench bench) {
    terminal
        .out()
        .print(
            """
            A new bench is in %1$s:
            %2$s.

            Next:
            1. Open bench.toml in an editor. See that what is marked CHECK is true, and fill in what is
               marked FILL IN as far as you know it.
            2. Calibrate, and write a row into calibrations.csv. Measure the control material of each
               method, and write each result into readings/results.csv as a row of role control.
            3. Run: quietline review %1$s
               It says at any time what is still needed.

            Read the safety data sheet of each reagent lot before you open it. Results of this bench are
            in-house production control, and stand for no specification's referee method.
            """
                .formatted(folder, String.join(", ", bench.files().keySet())));
    terminal.out().flush();
  }
}
