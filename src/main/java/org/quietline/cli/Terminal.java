package org.quietline.cli;

import java.io.PrintWriter;

/**
 * Where a command speaks to its user.
 *
 * @param out for what was asked for
 * @param err for troubles and progress
 * @param watched whether a person is looking, so that progress is worth showing
 */
record Terminal(PrintWriter out, PrintWriter err, boolean watched) {}
