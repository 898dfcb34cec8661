package org.quietline.cli;

import java.io.Console;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program: hands its words to a command and ends with the command's exit status. */
@Command(
    name = "quietline",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {
      BeginCommand.class,
      ReviewCommand.class,
      OutlookCommand.class,
      ReleaseCommand.class,
      PeekCommand.class
    },
    description = "Quality control for a small test bench: a folder of results in, answers out.",
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "Exit status: 0 everything steady, 3 something needs a person,",
      "4 the input could not be used at all, 2 wrong usage, 1 the work could not be finished."
    })
public final class Quietline implements Runnable {
  @Spec private CommandSpec spec;

  Quietline() {
    this.spec = CommandSpec.create();
  }

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "Which command? There are: begin, review, outlook, peek.");
  }

  /**
   * Runs one command and ends the program.
   *
   * @param arguments the words after the program's name
   */
  public static void main(String[] arguments) {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    Terminal terminal = new Terminal(out, err, isWatched());
    System.exit(run(terminal, arguments));
  }

  /** Up to Java 21 there is a console only on a terminal; from 22 on it has to be asked. */
  @SuppressWarnings("SystemConsoleNull")
  private static boolean isWatched() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return Boolean.TRUE.equals(Console.class.getMethod("isTerminal").invoke(console));
    } catch (NoSuchMethodException e) {
      return true;
    } catch (ReflectiveOperationException e) {
      return false;
    }
  }

  /** Runs one command on a terminal of the caller's choice and returns its exit status. */
  static int run(Terminal terminal, String... arguments) {
    CommandLine commands =
        new CommandLine(new Quietline(), new CommandFactory(terminal))
            .setOut(terminal.out())
            .setErr(terminal.err())
            .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
            .setUsageHelpWidth(100)
            .setCaseInsensitiveEnumValuesAllowed(true)
            .setParameterExceptionHandler(new WrongUsage(terminal))
            .setExecutionExceptionHandler(new Troubles(terminal));
    try {
      return commands.execute(arguments);
    } catch (OutOfMemoryError | StackOverflowError e) {
      return Troubles.exhausted(terminal);
    }
  }

  /** Makes the commands, which are given the terminal they speak to. */
  private record CommandFactory(Terminal terminal) implements CommandLine.IFactory {
    @Override
    public <K> K create(Class<K> type) throws Exception {
      if (type == BeginCommand.class) {
        return type.cast(new BeginCommand(terminal));
      }
      if (type == ReviewCommand.class) {
        return type.cast(new ReviewCommand(terminal));
      }
      if (type == OutlookCommand.class) {
        return type.cast(new OutlookCommand(terminal));
      }
      if (type == ReleaseCommand.class) {
        return type.cast(new ReleaseCommand(terminal));
      }
      return type == PeekCommand.class
          ? type.cast(new PeekCommand(terminal))
          : CommandLine.defaultFactory().create(type);
    }
  }
}
