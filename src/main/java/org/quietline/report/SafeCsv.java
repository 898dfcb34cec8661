package org.quietline.report;

import java.io.IOException;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Comma-separated text that a spreadsheet program opens without running anything in it. Fields are
 * quoted and lines end with CR LF after RFC 4180; the bytes are UTF-8 without a mark.
 *
 * <p>A field that begins with {@code =}, {@code +}, {@code -}, {@code @}, a tab or a line break
 * would be taken for a formula, so it gets an apostrophe in front; a plain decimal number such as
 * {@code -0.5} does not. Source: OWASP, CSV Injection, and common practice.
 */
final class SafeCsv {
  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+(\\.\\d+)?");

  private final CSVPrinter out;

  SafeCsv(Appendable out) throws IOException {
    this.out = new CSVPrinter(out, CSVFormat.RFC4180);
  }

  /** Writes one line. */
  void line(List<String> fields) throws IOException {
    out.printRecord(fields.stream().map(SafeCsv::harmless).toList());
  }

  /** A field that no spreadsheet program takes for a formula. */
  static String harmless(String field) {
    boolean formula = !field.isEmpty() && "=+-@\t\r\n".indexOf(field.charAt(0)) >= 0;
    return formula && !NUMBER.matcher(field).matches() ? "'" + field : field;
  }
}
