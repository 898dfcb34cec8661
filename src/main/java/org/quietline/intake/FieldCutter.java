package org.quietline.intake;

import java.io.IOException;
import java.util.Arrays;

/**
 * Finds the fields of one row and makes cells of them. A cell that equals the one above it is the
 * same text in memory, because most columns of a sheet repeat themselves.
 */
final class FieldCutter {
  /** A line of more fields than this is a damaged one. */
  static final int MOST_FIELDS = 20_000;

  private static final int ASCII = 128;

  /** So many characters read for quotes that came to nothing are borne; then patience is short. */
  private static final long MOST_IN_VAIN = 20_000_000;

  private static final int SHORT_PATIENCE = 500;

  private final RowWindow window;
  private final char delimiter;
  private final boolean[] special = new boolean[ASCII];
  private final boolean[] quoteOnly = new boolean[ASCII];
  private Fields fields = new Fields();
  private Fields above = new Fields();
  private String[] cellsAbove = {};
  private int startAbove;
  private long shiftsAbove = -1;
  private int at;
  private int end;
  private boolean odd;
  private boolean blank;
  private long inVain;

  FieldCutter(RowWindow window, char delimiter) {
    this.window = window;
    this.delimiter = delimiter;
    Arrays.fill(special, 0, ' ', true);
    special['\t'] = false;
    special['"'] = true;
    System.arraycopy(special, 0, quoteOnly, 0, ASCII);
    if (delimiter < ASCII) {
      special[delimiter] = true;
    }
  }

  /** What became of a row. */
  enum Outcome {
    CUT,
    QUOTE_ENDS_EARLY,
    QUOTE_NEVER_ENDS,
    QUOTE_TOO_LONG,
    TOO_MANY_FIELDS,
    TOO_LONG
  }

  /** Where the fields of a row begin and end, counted from the row's own beginning. */
  private static final class Fields {
    private int[] from = new int[32];
    private int[] to = new int[32];
    private boolean[] doubled = new boolean[32];
    private boolean anyDoubled;
    private int count;

    void clear() {
      count = 0;
      anyDoubled = false;
    }

    void add(int begin, int finish, boolean twice) {
      if (count == from.length) {
        from = Arrays.copyOf(from, 2 * count);
        to = Arrays.copyOf(to, 2 * count);
        doubled = Arrays.copyOf(doubled, 2 * count);
      }
      from[count] = begin;
      to[count] = finish;
      doubled[count++] = twice;
      anyDoubled |= twice;
    }
  }

  /** How many characters of the row were read. */
  int passed() {
    return at;
  }

  /** Where the row ends that was cut, or the place at which a quote went wrong. */
  int end() {
    return end;
  }

  /** Whether the row holds a line break, or a sign that no text holds. */
  boolean isOdd() {
    return odd;
  }

  /** Whether all cells of the row are empty. */
  boolean isBlank() {
    return blank;
  }

  /** Finds the fields of the row that begins where the window does. */
  Outcome cut() throws IOException {
    fields.clear();
    odd = false;
    at = 0;
    while (true) {
      Outcome outcome = field();
      if (outcome != Outcome.CUT) {
        return outcome;
      }
      if (fields.count > MOST_FIELDS) {
        return Outcome.TOO_MANY_FIELDS;
      }
      if (!isAt(delimiter)) {
        end = window.start() + at;
        return at > RowWindow.LONGEST_ROW ? Outcome.TOO_LONG : Outcome.CUT;
      }
      at++;
    }
  }

  private Outcome field() throws IOException {
    int from = at;
    while (true) {
      pass(special, Integer.MAX_VALUE);
      if (window.start() + at == window.limit()) {
        fields.add(from, at, false);
        return window.isTooLong() ? Outcome.TOO_LONG : Outcome.CUT;
      }
      char c = window.chars()[window.start() + at];
      if (c == delimiter || RawRow.isLineEnd(c)) {
        fields.add(from, at, false);
        return Outcome.CUT;
      }
      if (c == '"' && isBlankFrom(from)) {
        return quoted();
      }
      odd |= c != '"';
      at++;
    }
  }

  /**
   * Hears that a row was cut that was none and is read again from its second line. A file in which
   * every line opens a quote would else be read once from every line on to its end.
   */
  void wasInVain(int characters) {
    inVain += characters;
  }

  private Outcome quoted() throws IOException {
    int from = ++at;
    int patience = inVain > MOST_IN_VAIN ? from + SHORT_PATIENCE : Integer.MAX_VALUE;
    boolean twice = false;
    while (true) {
      pass(quoteOnly, patience);
      if (at >= patience) {
        return Outcome.QUOTE_TOO_LONG;
      }
      if (!isInside()) {
        return window.isTooLong() ? Outcome.QUOTE_TOO_LONG : Outcome.QUOTE_NEVER_ENDS;
      }
      if (!isAt('"')) {
        odd = true;
        at++;
        continue;
      }
      at++;
      if (!isAt('"')) {
        break;
      }
      twice = true;
      at++;
    }
    int to = at - 1;
    while (isInside() && !isAt(delimiter) && isBlankAt()) {
      at++;
    }
    if (isInside() && !isAt(delimiter) && !isAt('\n') && !isAt('\r')) {
      end = window.start() + at;
      return Outcome.QUOTE_ENDS_EARLY;
    }
    fields.add(from, to, twice);
    return Outcome.CUT;
  }

  /**
   * Steps over signs that mean nothing, up to one that may, to a place in the row, or to the end.
   */
  private void pass(boolean[] meaningful, int last) throws IOException {
    do {
      char[] chars = window.chars();
      int limit = Math.min(window.limit() - window.start(), last) + window.start();
      int i = window.start() + at;
      while (i < limit && !isMeaningful(chars[i], meaningful)) {
        i++;
      }
      at = i - window.start();
      if (i < limit || at >= last) {
        return;
      }
    } while (!window.isTooLong() && window.more());
  }

  private boolean isMeaningful(char c, boolean[] meaningful) {
    return c < ASCII ? meaningful[c] : c >= '\uFFFE' || c == delimiter;
  }

  private boolean isInside() throws IOException {
    return window.start() + at < window.limit() || (!window.isTooLong() && window.more());
  }

  private boolean isAt(char c) throws IOException {
    return isInside() && window.chars()[window.start() + at] == c;
  }

  private boolean isBlankAt() {
    char c = window.chars()[window.start() + at];
    return !RawRow.isLineEnd(c) && isBlank(c);
  }

  private boolean isBlankFrom(int from) {
    for (int i = from; i < at; i++) {
      if (!isBlank(window.chars()[window.start() + i])) {
        return false;
      }
    }
    return true;
  }

  private static boolean isBlank(char c) {
    return (c <= ' ' || c >= ASCII) && Excerpt.isBlank(c);
  }

  /** Makes the cells of the row that was cut. */
  Cells cells(long line, RawRow raw) {
    char[] chars = window.chars();
    int start = window.start();
    String[] cells = new String[fields.count];
    boolean comparable = shiftsAbove == window.shifts() && !above.anyDoubled && !fields.anyDoubled;
    blank = true;
    for (int i = 0; i < cells.length; i++) {
      int from = start + fields.from[i];
      int to = start + fields.to[i];
      while (from < to && isBlank(chars[from])) {
        from++;
      }
      while (to > from && isBlank(chars[to - 1])) {
        to--;
      }
      fields.from[i] = from - start;
      fields.to[i] = to - start;
      blank &= from == to;
      boolean same = comparable && i < cellsAbove.length && equalsAbove(chars, from, to, i);
      cells[i] = same ? cellsAbove[i] : cell(chars, from, to, i);
    }
    if (!blank) {
      Fields free = above;
      above = fields;
      fields = free;
      cellsAbove = cells;
      startAbove = start;
      shiftsAbove = window.shifts();
    }
    return new Cells(line, cells, odd, end == window.limit(), raw);
  }

  private boolean equalsAbove(char[] chars, int from, int to, int field) {
    int fromAbove = startAbove + above.from[field];
    return Arrays.equals(chars, from, to, chars, fromAbove, startAbove + above.to[field]);
  }

  private String cell(char[] chars, int from, int to, int field) {
    if (from == to) {
      return "";
    }
    String text = new String(chars, from, to - from);
    if (fields.doubled[field]) {
      text = text.replace("\"\"", "\"");
    }
    return field < cellsAbove.length && text.equals(cellsAbove[field]) ? cellsAbove[field] : text;
  }
}
