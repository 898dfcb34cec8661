package org.quietline.report;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Signal;
import org.quietline.assess.StreamFindings;
import org.quietline.bench.Accounting;
import org.quietline.bench.ChartSettings.Weight;
import org.quietline.report.Block.Fact;
import org.quietline.report.Block.FactColumn;
import org.quietline.report.Block.Facts;

/**
 * What stands under the rows of the first page: open signals, what came in, what chance expects.
 */
final class FrontFacts {
  private static final int MOST_OPEN = 5;

  private FrontFacts() {}

  static Facts of(Findings findings) {
    return new Facts(
        List.of(
            new FactColumn("Open signals", 0.44, open(findings)),
            new FactColumn("What came in", 0.25, cameIn(findings.accounting())),
            new FactColumn("By chance, and seen", 0.31, chance(findings))));
  }

  private static List<Fact> open(Findings findings) {
    record Open(MethodFindings method, Episode episode) {}
    List<Open> open = new ArrayList<>();
    for (MethodFindings method : findings.methods()) {
      for (StreamFindings stream : method.streams()) {
        Episode.of(stream, LocalDateTime.MIN).stream()
            .filter(Episode::open)
            .forEach(e -> open.add(new Open(method, e)));
      }
      method.free().signals().stream()
          .filter(Signal::open)
          .forEach(s -> open.add(new Open(method, new Episode("", true, List.of(s)))));
    }
    open.sort(Comparator.comparing(o -> o.episode().from()));
    if (open.isEmpty()) {
      return List.of(
          plain("none", "under the rules stated; they see sudden steps soon and slow moves late."));
    }
    LocalDate today = findings.now().toLocalDate();
    List<Fact> facts = new ArrayList<>();
    for (Open o : open.subList(0, Math.min(MOST_OPEN, open.size()))) {
      Episode episode = o.episode();
      boolean stop = episode.signals().stream().anyMatch(s -> s.weight() == Weight.STOP);
      String count = episode.signals().size() == 1 ? "" : episode.signals().size() + " signals, ";
      facts.add(
          new Fact(
              Numbers.count(Dates.days(episode.from().toLocalDate(), today), "day", "days"),
              o.method().method().key()
                  + ", "
                  + (stop ? "stop: " : "notice: ")
                  + count
                  + episode.rules()
                  + ", "
                  + episode.when(),
              stop ? Colour.ACCENT : Colour.INK));
    }
    int more = open.size() - MOST_OPEN;
    if (more > 0) {
      facts.add(plain("+ " + more, "more, on the pages of their methods"));
    }
    return facts;
  }

  private static List<Fact> cameIn(Accounting accounting) {
    List<Fact> facts = new ArrayList<>();
    facts.add(plain(String.valueOf(accounting.rows()), "rows read"));
    facts.add(plain(String.valueOf(accounting.takenIn()), "taken in"));
    facts.add(plain(String.valueOf(accounting.metBefore()), "met before"));
    boolean aside = accounting.rowsAside() > 0;
    facts.add(
        new Fact(
            String.valueOf(accounting.rowsAside()),
            "set aside" + (aside ? ", see the last pages" : ""),
            aside ? Colour.ACCENT : Colour.INK));
    if (accounting.rowsInConflict() > 0) {
      facts.add(
          new Fact(String.valueOf(accounting.rowsInConflict()), "in conflict", Colour.ACCENT));
    }
    int settings = accounting.settingsAside().size();
    if (settings > 0) {
      facts.add(
          new Fact(
              String.valueOf(settings), "settings not used, see the last pages", Colour.ACCENT));
    }
    return facts;
  }

  private static List<Fact> chance(Findings findings) {
    double expected = 0;
    int known = 0;
    int streams = 0;
    int seen = 0;
    int open = 0;
    Set<String> results = new HashSet<>();
    for (MethodFindings method : findings.methods()) {
      for (Signal signal : method.free().signals()) {
        if (signal.weight() == Weight.STOP && findings.period().contains(signal.id().at())) {
          seen++;
          open += signal.open() ? 1 : 0;
          results.add(signal.id().toString());
        }
      }
      for (StreamFindings stream : method.streams()) {
        streams++;
        Optional<Double> one = stream.price().expectedStops().value();
        expected += one.orElse(0.0);
        known += one.isPresent() ? 1 : 0;
        for (Signal signal : stream.signals()) {
          if (signal.weight() == Weight.STOP && findings.period().contains(signal.id().at())) {
            seen++;
            open += signal.open() ? 1 : 0;
            results.add(method.method().key() + Reasons.name(stream) + signal.id().at());
          }
        }
      }
    }
    List<Fact> facts = new ArrayList<>();
    facts.add(
        known == 0
            ? plain("?", "false stop signals expected: cannot say, no stream has limits")
            : plain(
                Numbers.uncertainty(expected),
                "false stop signals expected in the period by chance"));
    facts.add(
        plain(
            String.valueOf(seen),
            (seen == 1 ? "stop signal" : "stop signals")
                + " of the period"
                + (seen == 0
                    ? ""
                    : ", on "
                        + Numbers.count(results.size(), "result", "results")
                        + ", of these open: "
                        + open)));
    if (known > 0 && known < streams) {
      facts.add(
          plain(
              String.valueOf(streams - known),
              "of " + streams + " streams cannot say and are not counted"));
    }
    return facts;
  }

  private static Fact plain(String figure, String words) {
    return new Fact(figure, words, Colour.INK);
  }
}
