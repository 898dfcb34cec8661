/**
 * Files of a bench folder become bench records; what cannot be read is set aside.
 *
 * <p>Start with {@link org.quietline.intake.BenchFolder}. It reads {@code bench.toml} first, then
 * the sheets, each once from its first byte to its last, and counts every row: a row is taken in,
 * or met before (an exact copy), or set aside with file, line, field, text and a reason that says
 * what would mend it. Nothing is guessed: where a row could mean two things it is set aside.
 *
 * <p>The way of a sheet: {@code SheetText} decodes and hashes bytes, {@code SheetRows} cuts rows,
 * {@code Header} says from which columns a field is read, {@code RowCheck} looks at a row's shape,
 * a {@code RowKind} makes a record of it, and {@code Gathered} tells new records from copies and
 * from those that contradict. {@code OwnSheets} holds the {@code [[sheet]]} entries.
 *
 * <p>Conventions. Unless a {@code [[sheet]]} says otherwise, sheets are UTF-8, cut at commas after
 * RFC 4180, with a header line whose names count without regard to case; times are ISO 8601 local
 * times, numbers carry a decimal point. A byte-order mark tells UTF-8 and UTF-16. Numbers keep
 * their digits; a line that is empty or holds only delimiters is no row. Where a quote goes wrong,
 * its line alone is set aside and reading goes on with the next; a row of more than a million
 * characters is never held. An entry with no rows is a remark on a file, such as a column that is
 * not read.
 *
 * <p>A method can be made of a card, a file of {@code shared/methods} that is packed with the
 * classes; {@link org.quietline.intake.NewBench} makes the files of a bench that begins from the
 * same cards and the same columns as are read.
 *
 * <p>{@link org.quietline.intake.TrialReading} reads one file in the same way, with a {@code
 * [[sheet]]} that is tried out; {@link org.quietline.intake.peek} proposes such sheets.
 *
 * <p>Whose fault decides the form: a row or an entry of the settings is set aside and the rest goes
 * on; only a folder that cannot be used at all ends in {@link
 * org.quietline.intake.IntakeException}. The package knows nothing of statistics, pages or
 * commands.
 */
package org.quietline.intake;
