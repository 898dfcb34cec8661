package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Finds which column holds which field, by the words of the header and by what stands below. */
final class FieldFinder {
  private static final double MOST = 0.6;
  private static final double SOME = 0.3;
  private static final int FEW = 8;
  private static final List<Field> BEFORE_LONG_FORM =
      List.of(
          Field.METHOD,
          Field.INSTRUMENT,
          Field.ROLE,
          Field.UNIT,
          Field.SAMPLE,
          Field.CALIBRATION,
          Field.REAGENT_LOT,
          Field.OPERATOR,
          Field.REMARK,
          Field.TEMPERATURE_C);

  private final Grid grid;
  private final List<Column> columns;
  private final Vocabulary words;

  /** In fewer rows a third reading can be the rounded mean of the others by chance. */
  private static final int ROWS_OF_A_MEAN = 10;

  private final Assigned assigned = new Assigned();

  private FieldFinder(Grid grid, Vocabulary words) {
    this.grid = grid;
    this.columns = grid.columns();
    this.words = words;
  }

  static Assigned find(Grid grid, Vocabulary words) {
    FieldFinder finder = new FieldFinder(grid, words);
    finder.find();
    return finder.assigned;
  }

  private void find() {
    new TimeColumns(columns, assigned).find();
    spreads();
    readings();
    BEFORE_LONG_FORM.forEach(this::single);
    new LongForm(grid, columns, assigned).find();
    single(Field.SESSION);
    single(Field.SEQUENCE);
    leftOver();
  }

  private void spreads() {
    for (Column column : assigned.free(columns)) {
      Set<Field> fields = HeaderWords.fields(column.name());
      if (fields.contains(Field.SPREAD) && fields.size() == 1 && column.isNumeric()) {
        assigned.ignore(column, "its name says a spread, which is computed anew");
      }
    }
  }

  private void readings() {
    List<Column> named =
        assigned.free(columns).stream()
            .filter(c -> HeaderWords.fields(HeaderWords.bare(c.name())).contains(Field.READINGS))
            .filter(c -> c.isNumeric() || c.isEmpty())
            .toList();
    if (named.stream().map(c -> HeaderWords.unit(c.name())).distinct().count() > 1) {
      assigned.ask(Field.READINGS, named.stream().map(List::of).toList());
      return;
    }
    List<Column> means = meansAmong(named);
    if (means.size() > 1 || means.stream().anyMatch(c -> c.filled().size() < ROWS_OF_A_MEAN)) {
      List<List<Column>> choices = new ArrayList<>(List.of(inOrder(named)));
      means.forEach(mean -> choices.add(inOrder(without(mean, named))));
      assigned.ask(Field.READINGS, choices);
      return;
    }
    List<Column> found = withoutMeans(named);
    averages(found);
    if (!found.isEmpty()) {
      assigned.put(Field.READINGS, inOrder(found), "named so, and they hold numbers");
    } else {
      unnamedReadings();
    }
  }

  /** Columns that could be the mean of all others of their kind, though no name says so. */
  private static List<Column> meansAmong(List<Column> named) {
    return named.stream()
        .filter(c -> HeaderWords.readingNumber(c.name()).isEmpty())
        .filter(c -> !HeaderWords.fields(c.name()).contains(Field.AVERAGE))
        .filter(c -> Averages.isMean(c, without(c, named)))
        .toList();
  }

  private static List<Column> without(Column column, List<Column> of) {
    return of.stream().filter(c -> !c.equals(column)).toList();
  }

  /** Takes out a column that is the mean of all others of its kind, whatever it is called. */
  private List<Column> withoutMeans(List<Column> named) {
    for (Column column : named) {
      List<Column> others = named.stream().filter(c -> !c.equals(column)).toList();
      if (HeaderWords.readingNumber(column.name()).isEmpty() && Averages.isMean(column, others)) {
        assigned.ignore(column, "it is the mean of " + names(others) + " in every row");
        return others;
      }
    }
    return named;
  }

  private void averages(List<Column> readings) {
    for (Column column : assigned.free(columns)) {
      boolean said = HeaderWords.fields(column.name()).contains(Field.AVERAGE);
      boolean isMean = !readings.contains(column) && Averages.isMean(column, readings);
      if (isMean) {
        assigned.ignore(column, "it is the mean of " + names(readings) + " in every row");
      } else if (said && !readings.isEmpty()) {
        assigned.ignore(column, "its name says an average, which is no reading");
      }
    }
  }

  /** No name tells: one mean among them in enough rows does; else it is asked. */
  private void unnamedReadings() {
    List<Column> decimal =
        assigned.free(columns).stream()
            .filter(c -> c.isNumeric() && fieldsOf(c).isEmpty())
            .filter(c -> c.filled().stream().anyMatch(t -> NumberShape.of(t).hasMark()))
            .toList();
    List<Column> means =
        decimal.stream().filter(c -> Averages.isMean(c, without(c, decimal))).toList();
    if (means.size() == 1 && means.get(0).filled().size() >= ROWS_OF_A_MEAN) {
      Column mean = means.get(0);
      List<Column> others = without(mean, decimal);
      assigned.ignore(mean, "it is the mean of " + names(others) + " in every row");
      assigned.put(Field.READINGS, others, mean.shown() + " is their mean");
      return;
    }
    List<List<Column>> choices = new ArrayList<>();
    if (decimal.size() > 1 && decimal.size() <= 4) {
      choices.add(decimal);
    }
    means.forEach(mean -> choices.add(without(mean, decimal)));
    decimal.forEach(column -> choices.add(List.of(column)));
    if (choices.isEmpty()) {
      columns.stream()
          .filter(c -> HeaderWords.fields(c.name()).contains(Field.AVERAGE) && c.isNumeric())
          .forEach(c -> choices.add(List.of(c)));
    }
    if (!choices.isEmpty()) {
      assigned.ask(Field.READINGS, choices);
    }
  }

  /**
   * By their numbers, where a name without one is the first; by their places where two have none.
   */
  private static List<Column> inOrder(List<Column> found) {
    long unnumbered =
        found.stream().filter(c -> HeaderWords.readingNumber(c.name()).isEmpty()).count();
    return found.stream()
        .sorted(
            Comparator.comparingInt(
                (Column c) ->
                    unnumbered > 1 ? c.place() : HeaderWords.readingNumber(c.name()).orElse(1)))
        .toList();
  }

  private Set<Field> fieldsOf(Column column) {
    Set<Field> fields = EnumSet.noneOf(Field.class);
    for (Field field : HeaderWords.fields(column.name())) {
      if (canHold(column, field)) {
        fields.add(field);
      }
    }
    return fields;
  }

  private static boolean canHold(Column column, Field field) {
    boolean decimals = column.filled().stream().anyMatch(t -> NumberShape.of(t).hasMark());
    return switch (field) {
      case TAKEN_AT -> column.filled().stream().anyMatch(TimeShape::isTime);
      case READINGS, AVERAGE, SPREAD, TEMPERATURE_C -> column.isNumeric() || column.isEmpty();
      case SEQUENCE, READING_NUMBER -> column.isWhole();
      case METHOD, INSTRUMENT, ROLE, UNIT, OPERATOR -> !decimals;
      default -> true;
    };
  }

  /** Gives a field to the one column that speaks for it, and asks where several do. */
  private void single(Field field) {
    List<Column> free = assigned.free(columns);
    List<Column> byContent =
        free.stream().filter(c -> canHold(c, field) && speaks(field, c)).toList();
    List<Column> byName = free.stream().filter(c -> fieldsOf(c).contains(field)).toList();
    List<Column> both = byName.stream().filter(byContent::contains).toList();
    List<Column> choice =
        !both.isEmpty() ? both : !byName.isEmpty() ? own(byName, field) : byContent;
    if (choice.size() == 1 && !byContent.contains(choice.get(0)) && isTwofold(field, choice)) {
      assigned.ask(field, List.of(choice));
    } else if (choice.size() == 1) {
      assigned.put(field, choice, reason(field, choice.get(0), byName, byContent));
    } else if (choice.size() > 1) {
      assigned.ask(field, choice.stream().map(List::of).toList());
    }
  }

  /** A column whose name means this field only goes before one that may be another. */
  private List<Column> own(List<Column> named, Field field) {
    List<Column> sure =
        named.stream()
            .filter(c -> fieldsOf(c).stream().noneMatch(f -> f != field && !assigned.has(f)))
            .toList();
    return sure.isEmpty() ? named : sure;
  }

  /** Whether a name, such as Lot, may mean the sample or the reagent. */
  private boolean isTwofold(Field field, List<Column> choice) {
    return field == Field.SAMPLE && fieldsOf(choice.get(0)).contains(Field.REAGENT_LOT);
  }

  private boolean speaks(Field field, Column column) {
    return switch (field) {
      case METHOD, INSTRUMENT, UNIT, OPERATOR -> words.share(field, column) >= MOST;
      case ROLE -> column.distinct().size() <= FEW && words.share(field, column) >= SOME;
      case SAMPLE -> column.distinct().stream().anyMatch(words::isMaterial);
      default -> false;
    };
  }

  private static String reason(
      Field field, Column column, List<Column> byName, List<Column> byContent) {
    boolean named = byName.contains(column);
    boolean known = byContent.contains(column);
    String holds =
        switch (field) {
          case SAMPLE -> "control materials of the bench";
          case ROLE -> "names of roles";
          case UNIT -> "units";
          default -> "names the bench knows";
        };
    return (named ? "named so" : "")
        + (named && known ? ", and it holds " + holds : known ? "it holds " + holds : "");
  }

  /** A text column that may be the sample or the method is not ignored while one is wanted. */
  private void leftOver() {
    boolean wanted = !assigned.has(Field.SAMPLE) || !assigned.has(Field.METHOD);
    for (Column column : assigned.free(columns)) {
      if (wanted && !column.isEmpty() && !column.isNumeric()) {
        assigned.spare(column);
      } else if (column.isEmpty() && column.name().isEmpty()) {
        assigned.ignore(column, "it has no name and is empty");
      } else {
        assigned.ignore(column, "it fits no field, and nothing in it is read");
      }
    }
  }

  private static String names(List<Column> of) {
    return Shown.and(of.stream().map(Column::shown).toList());
  }
}
