package org.quietline.assess;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.quietline.assess.Contradiction.SequenceGap;
import org.quietline.assess.Contradiction.SequenceRepeated;
import org.quietline.bench.Accounting;
import org.quietline.bench.Check;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Result;

/**
 * Are the running numbers of an instrument complete, and each there once? Numbers of digits only
 * count. A counter that starts anew begins a new series: its number falls below half of what it had
 * reached and below all before it, or it is 0 or 1 on another day.
 */
final class SequenceContradictions {
  private static final Pattern NUMBER = Pattern.compile("\\d{1,17}");

  private final Asking asking;
  private final Accounting accounting;
  private final List<Contradiction> found = new ArrayList<>();

  private SequenceContradictions(Asking asking, Accounting accounting) {
    this.asking = asking;
    this.accounting = accounting;
  }

  static List<Contradiction> ask(Asking asking, Accounting accounting) {
    SequenceContradictions asks = new SequenceContradictions(asking, accounting);
    List<Result> numbered =
        asking.bench().results().stream().filter(r -> numberOf(r).isPresent()).toList();
    Asking.by(Result::instrument, numbered).forEach(asks::instrument);
    return asks.found;
  }

  private static Optional<Long> numberOf(Result result) {
    return result.sequence().flatMap(SequenceContradictions::numberOf);
  }

  private static Optional<Long> numberOf(String sequence) {
    return NUMBER.matcher(sequence).matches()
        ? Optional.of(Long.parseLong(sequence))
        : Optional.empty();
  }

  private void instrument(String instrument, List<Result> results) {
    Set<Long> elsewhere = new TreeSet<>(numbersAside(accounting, instrument));
    asking.whole().conflicts().stream()
        .filter(c -> c.other().instrument().equals(instrument))
        .forEach(c -> numberOf(c.other()).ifPresent(elsewhere::add));
    NavigableMap<Long, List<Result>> series = new TreeMap<>();
    LocalDate day = results.get(0).takenAt().toLocalDate();
    for (Result result : results) {
      long number = numberOf(result).orElseThrow();
      LocalDate today = result.takenAt().toLocalDate();
      if (!series.isEmpty() && startsAnew(number, series, !today.equals(day))) {
        judge(instrument, series, elsewhere);
        series = new TreeMap<>();
      }
      series.computeIfAbsent(number, n -> new ArrayList<>()).add(result);
      day = today;
    }
    judge(instrument, series, elsewhere);
  }

  /** More repeated numbers than this, and more than one in fifty, are no slips. */
  private static final int MOST_REPEATED = 3;

  private static boolean startsAnew(
      long number, NavigableMap<Long, List<Result>> series, boolean otherDay) {
    boolean fell = number < series.firstKey() && 2 * number < series.lastKey();
    return fell || (number <= 1 && otherDay);
  }

  /** The numbers of rows that were read but set aside; they are not missing. */
  static Set<Long> numbersAside(Accounting accounting, String instrument) {
    Set<Long> numbers = new TreeSet<>();
    accounting.numbersAside().stream()
        .filter(aside -> aside.instrument().equals(instrument))
        .forEach(aside -> numberOf(aside.sequence()).ifPresent(numbers::add));
    return numbers;
  }

  /**
   * Numbers of which more than a few come twice are no running numbers of the instrument: each
   * method has its own, or they begin anew each day. Then nothing is asked.
   */
  private static boolean isRunning(NavigableMap<Long, List<Result>> series) {
    long repeated = series.values().stream().filter(results -> results.size() > 1).count();
    return repeated <= Math.max(MOST_REPEATED, series.size() / 50);
  }

  private void judge(
      String instrument, NavigableMap<Long, List<Result>> series, Set<Long> elsewhere) {
    if (!isRunning(series)) {
      return;
    }
    series.forEach(
        (number, results) -> {
          if (results.size() > 1) {
            repeated(instrument, number, results);
          }
        });
    TreeSet<Long> known = new TreeSet<>(series.keySet());
    elsewhere.stream()
        .filter(n -> n > series.firstKey() && n < series.lastKey())
        .forEach(known::add);
    long last = known.first();
    for (long number : known) {
      if (number > last + 1) {
        gap(instrument, last + 1, number - 1, series);
      }
      last = number;
    }
  }

  private void repeated(String instrument, long number, List<Result> results) {
    Result latest = results.get(results.size() - 1);
    if (asking.isOn(Check.SEQUENCE_REPEATED, latest.method())) {
      String subject = String.join("/", instrument, day(latest), String.valueOf(number));
      found.add(
          new SequenceRepeated(
              asking.about(
                  new QuestionId(subject, Check.SEQUENCE_REPEATED),
                  Optional.empty(),
                  latest.takenAt(),
                  results.stream().map(Result::origin).toList()),
              number,
              results));
    }
  }

  private void gap(String instrument, long from, long to, NavigableMap<Long, List<Result>> series) {
    List<Result> below = series.floorEntry(from).getValue();
    Result before = below.get(below.size() - 1);
    Result after = series.ceilingEntry(to).getValue().get(0);
    if (asking.isOn(Check.SEQUENCE_GAP, after.method())) {
      String range = from == to ? String.valueOf(from) : from + "-" + to;
      found.add(
          new SequenceGap(
              asking.about(
                  new QuestionId(
                      String.join("/", instrument, day(after), range), Check.SEQUENCE_GAP),
                  Optional.empty(),
                  after.takenAt(),
                  List.of(after.origin(), before.origin())),
              instrument,
              from,
              to,
              before,
              after));
    }
  }

  private static String day(Result result) {
    return result.takenAt().toLocalDate().toString();
  }
}
