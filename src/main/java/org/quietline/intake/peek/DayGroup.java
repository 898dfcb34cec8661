package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Texts whose days share a mould, such as {@code 14.10.2026} and {@code 1.11.2026}, and the orders
 * of day, month and year that could be meant.
 *
 * @param mould what they share
 * @param shapes the texts
 */
record DayGroup(String mould, List<TimeShape> shapes) {

  /** The orders that could be meant: one entry is an answer, several are a question. */
  List<Set<DayOrder>> meanings() {
    Set<DayOrder> all = EnumSet.allOf(DayOrder.class);
    shapes.forEach(shape -> all.retainAll(shape.orders()));
    if (all.isEmpty()) {
      return mixed();
    }
    return all.stream().map(order -> (Set<DayOrder>) EnumSet.of(order)).toList();
  }

  /** No order reads them all, so at least two were used. */
  private List<Set<DayOrder>> mixed() {
    Set<DayOrder> used = EnumSet.noneOf(DayOrder.class);
    for (TimeShape shape : shapes) {
      if (shape.orders().size() == 1) {
        used.addAll(shape.orders());
      }
    }
    List<Set<DayOrder>> meanings = new ArrayList<>();
    meanings.add(used);
    if (twoWays(used) > 0) {
      used.forEach(order -> meanings.add(EnumSet.of(order)));
    }
    return meanings;
  }

  /** How many of the texts mean two different days under these orders. */
  long twoWays(Set<DayOrder> orders) {
    return shapes.stream()
        .filter(
            s ->
                orders.stream().flatMap(o -> s.day(o).stream()).collect(Collectors.toSet()).size()
                    > 1)
        .count();
  }

  /** One text that only a certain order can read; empty when there is none. */
  String witness(DayOrder order) {
    return shapes.stream()
        .filter(s -> s.orders().equals(List.of(order)))
        .findFirst()
        .map(TimeShape::text)
        .orElse("");
  }
}
