/**
 * The commands: wiring, exit status, and the only place that sees the terminal.
 *
 * <p>Start with {@link org.quietline.cli.ReviewCommand}. Exit status: 0 everything steady, 3
 * something needs a person, 4 the input could not be used at all, 2 wrong usage, 1 the work could
 * not be finished (a full disk, a fault of the program). A user sees sentences, never a stack
 * trace.
 */
package org.quietline.cli;
