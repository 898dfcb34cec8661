package org.quietline.intake.peek;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/** Files that are known by their first bytes to be no text. */
final class Magic {
  private static final String WORKBOOK =
      "a zip archive; a spreadsheet workbook is one too. Save the sheet as CSV and look at that.";
  private static final String PICTURE = "a picture. Type its numbers into a sheet.";

  private static final Map<String, String> FIRST = new LinkedHashMap<>();

  static {
    FIRST.put("PK\3\4", WORKBOOK);
    FIRST.put("\u00D0\u00CF\u0011\u00E0", "an old office document. Save the sheet as CSV.");
    FIRST.put("\u0089PNG", PICTURE);
    FIRST.put("\u00FF\u00D8\u00FF", PICTURE);
    FIRST.put("GIF8", PICTURE);
    FIRST.put("%PDF", "a PDF. Export the table as CSV from where it was made.");
    FIRST.put("\u001F\u008B", "packed with gzip. Unpack it and look at what is inside.");
  }

  private Magic() {}

  /** What the file is, as the end of a sentence; empty when it may be text. */
  static String kindOf(byte[] head) {
    String start = new String(head, 0, Math.min(8, head.length), StandardCharsets.ISO_8859_1);
    return FIRST.entrySet().stream()
        .filter(e -> start.startsWith(e.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse("");
  }
}
