package org.quietline.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.quietline.bench.Reading;

/**
 * The rows of a sheet in which one row is one reading. Those of one result are told by the column
 * {@code result}; they may stand anywhere in the file, so they are put together at its end. They
 * must agree in everything but the reading.
 */
final class LongForm<T> {
  private static final String RESULT = "result";
  private static final String READING = "reading";
  private static final String NUMBER = "reading_number";
  private static final int MOST_READINGS = 99;

  private final OneSheet<T> sheet;
  private final Header header;
  private final Map<String, List<Cells>> byResult = new LinkedHashMap<>();

  LongForm(OneSheet<T> sheet, Header header) {
    this.sheet = sheet;
    this.header = header;
  }

  /** Takes a row that passed the checks. */
  void add(Cells cells) {
    try {
      String result = Row.needed(RESULT, header.source(RESULT).of(cells));
      byResult.computeIfAbsent(result, r -> new ArrayList<>(2)).add(cells.kept());
    } catch (Unusable e) {
      sheet.setAside(row(cells, List.of()), e, 1, cells.raw());
    }
  }

  private Row row(Cells cells, List<Reading> readings) {
    return new Row(sheet.file(), header, cells, readings);
  }

  /** Makes the results of the rows that were taken. */
  void end() {
    byResult.forEach((result, rows) -> makeResult(result, agreeing(result, rows)));
  }

  private void makeResult(String result, List<Cells> rows) {
    int count = rows.size();
    Cells row = rows.get(0);
    try {
      if (count > MOST_READINGS) {
        throw new Unusable(
            RESULT,
            result,
            "The result "
                + Excerpt.of(result)
                + " has "
                + count
                + " rows, more than "
                + MOST_READINGS
                + "; is another column the one that tells the results apart?");
      }
      int[] numbers = new int[count];
      for (int i = 0; i < count; i++) {
        row = rows.get(i);
        numbers[i] = number(row, i + 1);
      }
      NavigableMap<Integer, Cells> inOrder = inOrder(result, rows, numbers);
      count = inOrder.size();
      Reading[] readings = new Reading[inOrder.lastKey()];
      Arrays.fill(readings, new Reading.Missing());
      for (Map.Entry<Integer, Cells> one : inOrder.entrySet()) {
        row = one.getValue();
        readings[one.getKey() - 1] = reading(row);
      }
      row = rows.get(0);
      sheet.take(row(row, measured(readings)), count, raw(inOrder.values()));
    } catch (Unusable e) {
      sheet.setAside(row(row, List.of()), e, count, raw(rows));
    }
  }

  private int number(Cells row, int inOrder) throws Unusable {
    if (header.source(NUMBER).isNothing()) {
      return inOrder;
    }
    String text = Row.needed(NUMBER, header.source(NUMBER).of(row));
    boolean usable = text.matches("[0-9]{1,2}") && Integer.parseInt(text) > 0;
    if (!usable) {
      throw new Unusable(
          NUMBER, text, Excerpt.quoted(text) + " is not a number from 1 to " + MOST_READINGS + ".");
    }
    return Integer.parseInt(text);
  }

  private NavigableMap<Integer, Cells> inOrder(String result, List<Cells> rows, int[] numbers) {
    NavigableMap<Integer, Cells> inOrder = new TreeMap<>();
    for (int i = 0; i < numbers.length; i++) {
      Cells row = rows.get(i);
      Cells first = inOrder.putIfAbsent(numbers[i], row);
      if (first == null) {
        continue;
      }
      String text = header.source(READING).of(row);
      String firstText = header.source(READING).of(first);
      if (text.equals(firstText)) {
        sheet.meetAgain(row, first);
      } else {
        Unusable why =
            new Unusable(
                READING,
                text,
                "Reading "
                    + numbers[i]
                    + " of the result "
                    + Excerpt.of(result)
                    + " is "
                    + shown(text)
                    + " here and "
                    + shown(firstText)
                    + " in line "
                    + first.line()
                    + "; correct the wrong one.");
        sheet.setAside(row(row, List.of()), why, 1, row.raw());
      }
    }
    return inOrder;
  }

  private Reading reading(Cells row) throws Unusable {
    String text = header.source(READING).of(row);
    return text.isEmpty()
        ? new Reading.Missing()
        : NumberText.reading(READING, text, header.form().decimal());
  }

  /** Missing readings behind the last one that was taken are left out. */
  private static List<Reading> measured(Reading[] readings) throws Unusable {
    int last = readings.length;
    while (last > 0 && readings[last - 1] instanceof Reading.Missing) {
      last--;
    }
    if (last == 0) {
      throw ResultRows.noReading(READING);
    }
    return List.of(Arrays.copyOf(readings, last));
  }

  private RawRow raw(Collection<Cells> rows) {
    String text = rows.stream().map(r -> r.raw().text()).collect(Collectors.joining("\n"));
    return RawRow.of(text);
  }

  /** The rows that say the same of the result as its first row; the others are set aside. */
  private List<Cells> agreeing(String result, List<Cells> rows) {
    List<Cells> agreeing = new ArrayList<>();
    Cells first = rows.get(0);
    for (Cells row : rows) {
      String field = differing(first, row);
      if (field.isEmpty()) {
        agreeing.add(row);
      } else {
        String text = header.source(field).of(row);
        Unusable why =
            new Unusable(
                field,
                text,
                field
                    + " is "
                    + shown(text)
                    + " here and "
                    + shown(header.source(field).of(first))
                    + " in line "
                    + first.line()
                    + ", which is of the same result "
                    + Excerpt.of(result)
                    + "; the rows of one result agree in everything but the reading.");
        sheet.setAside(row(row, List.of()), why, 1, row.raw());
      }
    }
    return agreeing;
  }

  private static String shown(String text) {
    return text.isEmpty() ? "empty" : Excerpt.quoted(text);
  }

  private String differing(Cells first, Cells row) {
    for (String field : ResultRows.LAYOUT_OF_READINGS.names()) {
      boolean mayDiffer = field.equals(READING) || field.equals(NUMBER);
      Source source = header.source(field);
      if (!mayDiffer && !source.of(first).equals(source.of(row))) {
        return field;
      }
    }
    return "";
  }
}
