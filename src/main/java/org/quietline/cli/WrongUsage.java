package org.quietline.cli;

import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says in a sentence what was wrong with the words typed, and where help is. */
final class WrongUsage implements IParameterExceptionHandler {
  private static final int STATUS = 2;

  private final Terminal terminal;

  WrongUsage(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public int handleParseException(ParameterException wrong, String[] arguments) {
    CommandLine command = wrong.getCommandLine();
    terminal.err().println(sentence(wrong));
    UnmatchedArgumentException.printSuggestions(wrong, terminal.err());
    terminal.err().println("Help: " + command.getCommandSpec().qualifiedName() + " --help");
    return STATUS;
  }

  private static String sentence(ParameterException wrong) {
    if (wrong instanceof UnmatchedArgumentException unmatched) {
      return "Not understood: " + String.join(" ", unmatched.getUnmatched());
    }
    if (wrong instanceof MissingParameterException) {
      return "Something is missing after the command. " + wrong.getMessage() + ".";
    }
    return String.valueOf(wrong.getMessage());
  }
}
