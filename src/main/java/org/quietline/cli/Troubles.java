package org.quietline.cli;

import java.io.IOException;
import java.nio.file.FileSystemException;
import org.quietline.intake.IntakeException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Turns what went wrong into a sentence and an exit status. */
final class Troubles implements IExecutionExceptionHandler {
  static final int NOT_FINISHED = 1;
  static final int UNUSABLE_INPUT = 4;

  private static final String ELSEWHERE = " Choose another folder with --out.";

  private final Terminal terminal;

  Troubles(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public int handleExecutionException(
      Exception trouble, CommandLine commandLine, ParseResult parseResult) {
    if (trouble instanceof ParameterException wrong) {
      return new WrongUsage(terminal).handleParseException(wrong, new String[0]);
    }
    terminal.err().println(sentence(trouble));
    return trouble instanceof IntakeException ? UNUSABLE_INPUT : NOT_FINISHED;
  }

  /** The machine itself gave out. */
  static int exhausted(Terminal terminal) {
    terminal
        .err()
        .println(
            "The program ran out of memory. Nothing was replaced. Is a file in the bench folder far"
                + " larger than what one bench writes?");
    return NOT_FINISHED;
  }

  private static String sentence(Exception trouble) {
    String message = String.valueOf(trouble.getMessage());
    if (trouble instanceof IntakeException) {
      return message;
    }
    if (trouble instanceof OutputFiles.NotWritten) {
      return message + "." + ELSEWHERE;
    }
    if (trouble instanceof FileSystemException files) {
      return files.getFile() + ": nothing can be written there." + ELSEWHERE;
    }
    if (trouble instanceof IOException) {
      return "The pages could not be written (" + message + "). Is the disk full?" + ELSEWHERE;
    }
    return "The program met a case it does not handle ("
        + trouble
        + "). Please report this sentence with the bench folder.";
  }
}
