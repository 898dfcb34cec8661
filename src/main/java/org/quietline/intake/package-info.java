/**
 * Files of a bench folder become bench records; what cannot be read is set aside.
 *
 * <p>Start with {@link org.quietline.intake.BenchFolder}. It reads {@code bench.toml} first, then
 * the sheets, each once from its first byte to its last, and counts every row: a row is taken in,
 * or met before (an exact copy), or set aside with file, line, field, text and a reason that says
 * what would mend it. Nothing is guessed: where a row could mean two things it is set aside.
 *
 * <p>Conventions. Sheets are UTF-8, cut at commas after RFC 4180, with a header line whose names
 * count without regard to case; a line that is empty or holds only commas is no row. Times are ISO
 * 8601 local times, numbers carry a decimal point and keep their digits. Where quotes or the number
 * of fields go wrong over several lines, the stretch counts as many rows as it has lines that are
 * not empty, because nobody can tell how many it was meant to be. An entry with no rows is a remark
 * on a file, such as a column that is not read.
 *
 * <p>Whose fault decides the form: a row or an entry of the settings is set aside and the rest goes
 * on; only a folder that cannot be used at all ends in {@link
 * org.quietline.intake.IntakeException}. The package knows nothing of statistics, pages or
 * commands.
 */
package org.quietline.intake;
