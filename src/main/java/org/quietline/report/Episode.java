package org.quietline.report;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.quietline.assess.Signal;
import org.quietline.assess.StreamFindings;

/**
 * Signals on neighbouring results, told as one story under one letter.
 *
 * @param letter its letter
 * @param open whether any of its signals has no recorded cause
 * @param signals its signals, in time order
 */
record Episode(String letter, boolean open, List<Signal> signals) {

  /** The episodes of a stream since a moment, in time order. */
  static List<Episode> of(StreamFindings stream, LocalDateTime since) {
    Map<LocalDateTime, List<Signal>> at =
        stream.signals().stream()
            .filter(s -> !s.id().at().isBefore(since))
            .collect(Collectors.groupingBy(s -> s.id().at(), TreeMap::new, Collectors.toList()));
    List<Episode> episodes = new ArrayList<>();
    List<Signal> running = new ArrayList<>();
    for (StreamFindings.Point point : stream.points()) {
      List<Signal> here = at.getOrDefault(point.at(), List.of());
      if (!running.isEmpty() && (here.isEmpty() || open(here) != open(running))) {
        add(episodes, running);
      }
      if (running.isEmpty() || !running.get(running.size() - 1).id().at().equals(point.at())) {
        running.addAll(here);
      }
    }
    add(episodes, running);
    return List.copyOf(episodes);
  }

  private static void add(List<Episode> episodes, List<Signal> running) {
    if (!running.isEmpty()) {
      episodes.add(new Episode(letter(episodes.size()), open(running), List.copyOf(running)));
      running.clear();
    }
  }

  private static boolean open(List<Signal> signals) {
    return signals.stream().anyMatch(Signal::open);
  }

  /** a to z, then aa, ab, … */
  static String letter(int number) {
    String last = String.valueOf((char) ('a' + number % 26));
    return number < 26 ? last : letter(number / 26 - 1) + last;
  }

  /** When it began. */
  LocalDateTime from() {
    return signals.get(0).id().at();
  }

  /** Its latest signal. */
  Signal last() {
    return signals.get(signals.size() - 1);
  }

  /** The rules it broke, each once: "weighted mean beyond its limit, result beyond …". */
  String rules() {
    return signals.stream()
        .map(s -> RuleWords.phrase(s.id().rule()))
        .distinct()
        .collect(Collectors.joining(", "));
  }

  /** "12 October 2026", or both ends. */
  String when() {
    LocalDate from = from().toLocalDate();
    LocalDate to = last().id().at().toLocalDate();
    return Dates.span(from, to);
  }
}
