package org.quietline.intake.peek;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The formats that read the times of a file. One entry of {@link #meanings()} is an answer; several
 * are a question.
 */
final class TimeFormats {
  private final List<TimeShape> shapes;
  private final Map<String, DayGroup> groups = new LinkedHashMap<>();
  private final Set<TimeShape> writings = new LinkedHashSet<>();
  private final boolean oneDigitHours;

  TimeFormats(List<TimeShape> shapes) {
    this.shapes = shapes;
    Map<String, List<TimeShape>> byMould = new LinkedHashMap<>();
    for (TimeShape shape : shapes) {
      byMould.computeIfAbsent(shape.mould(), m -> new ArrayList<>()).add(shape);
      writings.add(new TimeShape("", List.of(), shape.mould(), shape.time(), shape.link()));
    }
    byMould.forEach((mould, of) -> groups.put(mould, new DayGroup(mould, of)));
    this.oneDigitHours =
        shapes.stream().anyMatch(s -> s.time().startsWith("H:") || s.time().startsWith("h:"));
  }

  /**
   * One way to read the times.
   *
   * @param orders the orders of day, month and year for each mould
   * @param formats the formats after Unicode LDML
   */
  record Meaning(Map<String, Set<DayOrder>> orders, List<String> formats) {}

  /** The ways in which all times can be read, at least one. */
  List<Meaning> meanings() {
    Map<String, List<Set<DayOrder>>> open = new LinkedHashMap<>();
    groups.forEach((mould, group) -> open.put(mould, group.meanings()));
    int most = open.values().stream().mapToInt(List::size).max().orElse(1);
    List<Meaning> meanings = new ArrayList<>();
    for (int i = 0; i < most; i++) {
      Map<String, Set<DayOrder>> orders = new LinkedHashMap<>();
      int at = i;
      open.forEach((mould, of) -> orders.put(mould, of.get(Math.min(at, of.size() - 1))));
      meanings.add(new Meaning(orders, formats(orders)));
    }
    return meanings;
  }

  private List<String> formats(Map<String, Set<DayOrder>> orders) {
    Set<String> formats = new LinkedHashSet<>();
    for (TimeShape shape : writings) {
      DayGroup group = groups.getOrDefault(shape.mould(), new DayGroup("", List.of()));
      for (DayOrder order : orders.getOrDefault(shape.mould(), Set.of())) {
        formats.add(
            order.format(shape.mould(), group.shapes()) + link(shape) + hours(shape.time()));
      }
    }
    return List.copyOf(formats);
  }

  private static String link(TimeShape shape) {
    return shape.link().equals("T") ? "'T'" : shape.link();
  }

  private String hours(String time) {
    return oneDigitHours ? time.replace("HH:", "H:").replace("hh:", "h:") : time;
  }

  /** Whether all are written as the plain sheet writes them. */
  boolean isPlain() {
    return shapes.stream()
        .allMatch(
            s ->
                s.mould().equals("YYYY-#-#")
                    && s.day().get(1).length() == 2
                    && s.day().get(2).length() == 2
                    && (s.link().equals("T") || s.link().equals(" "))
                    && s.time().startsWith("HH:mm")
                    && !s.time().endsWith("a"));
  }

  boolean hasShortYears() {
    return shapes.stream().anyMatch(TimeShape::hasShortYear);
  }

  /** Why the order of day and month is taken to be so: a text that has no other. */
  List<String> witnesses(Meaning meaning) {
    List<String> why = new ArrayList<>();
    for (DayGroup group : groups.values()) {
      for (DayOrder order : meaning.orders().getOrDefault(group.mould(), Set.of())) {
        String witness = group.witness(order);
        boolean open = !group.mould().startsWith("YYYY") && !group.mould().contains("MMM");
        if (open && !witness.isEmpty()) {
          why.add(witness + " exists only " + order.words());
        }
      }
    }
    return why;
  }

  /** How many texts have two different days under a meaning. */
  long twoWays(Meaning meaning) {
    return groups.values().stream()
        .mapToLong(g -> g.twoWays(meaning.orders().getOrDefault(g.mould(), Set.of())))
        .sum();
  }

  /** How often a row is of an earlier day than the one above it; empty where a day is open. */
  Optional<Integer> stepsBack(Meaning meaning) {
    int back = 0;
    Optional<LocalDate> last = Optional.empty();
    for (TimeShape shape : shapes) {
      List<LocalDate> days =
          meaning.orders().getOrDefault(shape.mould(), Set.of()).stream()
              .flatMap(o -> shape.day(o).stream())
              .distinct()
              .toList();
      if (days.size() != 1) {
        return Optional.empty();
      }
      back += last.isPresent() && days.get(0).isBefore(last.get()) ? 1 : 0;
      last = Optional.of(days.get(0));
    }
    return Optional.of(back);
  }
}
