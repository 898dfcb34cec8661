package org.quietline.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collector;
import java.util.stream.Collectors;
import org.quietline.bench.Action;
import org.quietline.bench.Bench;
import org.quietline.bench.Check;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Result;

/**
 * Does any number look like a slip of the pen? A number is asked about when it lies further from
 * what is expected than sound numbers do, and one of a few plain slips would bring it home. All
 * distances are taken on logarithms, with medians and their deviations from sound results nearby,
 * so that small groups need larger slips.
 *
 * <p>Left out, because a factor means nothing there: blanks, and results with a reading that is
 * zero, negative or only a bound. A bound may be a slip, too; nothing here asks about it. A control
 * is held against its own material only, and a kind of sample that has fewer than five results
 * against other rare kinds only, because levels differ between materials and between kinds.
 *
 * <p>One question a result: where several checks ask, the one that explains most asks, with factors
 * that would explain it, too, after its own candidates. An exchange of samples that only one of the
 * two speaks for is asked about last. The work grows with the number of results times its
 * logarithm.
 */
final class SlipFinder {
  private static final long MOST_ALIKE = 3;

  private final Bench bench;
  private final Witnesses witnesses;

  SlipFinder(Bench bench) {
    this.bench = bench;
    this.witnesses = Witnesses.of(bench);
  }

  Slips ask(Records records) {
    MethodLog log = witnesses.log(records.method().key());
    List<Slip> questions =
        suspicions(log).stream().map(suspicion -> question(suspicion, records)).toList();
    List<Result> inPeriod =
        records.results().stream().filter(r -> records.period().contains(r.takenAt())).toList();
    long judged =
        inPeriod.stream().filter(r -> log.of(r).filter(witnesses::canJudge).isPresent()).count();
    return new Slips(questions, inPeriod.size(), (int) judged);
  }

  private List<Suspicion> suspicions(MethodLog log) {
    List<Hypotheses.Hypothesis> hypotheses = Hypotheses.of(log.method(), witnesses.relatedTo(log));
    ReadingSlips readings = new ReadingSlips(witnesses, log, hypotheses);
    ValueSlips values = new ValueSlips(witnesses, hypotheses);
    List<List<Logged>> sessions = Sessions.of(log.all());
    Found found = new Found(log);
    found.add(Check.COPIED_DOWN, () -> new CopiedRows(witnesses, log).among(log.all()));
    found.add(
        Check.SWAPPED_READINGS,
        () -> sessions.stream().flatMap(s -> readings.exchanged(s).stream()).toList());
    found.add(
        Check.SWAPPED_SAMPLES,
        () -> sessions.stream().flatMap(s -> values.bothExchanged(s).stream()).toList());
    found.add(
        Check.SLIP_IN_VALUE,
        () ->
            rare(
                log.all().stream()
                    .flatMap(
                        l ->
                            (readings.isBroken(l) ? readings.inOneReading(l) : values.inValue(l))
                                .stream())
                    .toList(),
                log));
    found.add(
        Check.SWAPPED_SAMPLES,
        () -> sessions.stream().flatMap(s -> values.oneExchanged(s).stream()).toList());
    return found.inTime();
  }

  /**
   * Leaves out what is too frequent for slips: where more than a few results of one kind of sample,
   * and more than one in twenty, lie away from the others by one and the same factor, the kind
   * holds two sorts of sample.
   */
  private static List<Suspicion> rare(List<Suspicion> suspicions, MethodLog log) {
    Map<String, Long> asked =
        suspicions.stream().filter(Suspicion::isAgainstItsKind).collect(counting(s -> s.sort()));
    Map<String, Long> all = log.all().stream().collect(counting(l -> Suspicion.kindOf(l)));
    return suspicions.stream()
        .filter(
            s ->
                !s.isAgainstItsKind()
                    || asked.getOrDefault(s.sort(), 0L)
                        <= Math.max(
                            MOST_ALIKE, all.getOrDefault(Suspicion.kindOf(s.logged()), 0L) / 20))
        .toList();
  }

  private static <T> Collector<T, ?, Map<String, Long>> counting(Function<T, String> name) {
    return Collectors.groupingBy(name, Collectors.counting());
  }

  /** Suspicions as they come, one a result. */
  private final class Found {
    private final MethodLog log;
    private final Map<Origin, Suspicion> byResult = new LinkedHashMap<>();
    private final Set<Origin> partners = new HashSet<>();

    Found(MethodLog log) {
      this.log = log;
    }

    /** Puts a check's question, if it is on. */
    void add(Check check, Supplier<List<Suspicion>> asked) {
      if (bench.settings().isOn(check, log.method().key())) {
        asked.get().forEach(this::add);
      }
    }

    private void add(Suspicion suspicion) {
      Origin origin = suspicion.logged().result().origin();
      Optional<Origin> partner = suspicion.partner().map(p -> p.result().origin());
      Suspicion before = byResult.get(origin);
      if (before == null
          && !partners.contains(origin)
          && partner.filter(p -> partners.contains(p) || byResult.containsKey(p)).isEmpty()) {
        byResult.put(origin, suspicion);
        if (suspicion.check() != Check.COPIED_DOWN) {
          partner.ifPresent(partners::add);
        }
      } else if (before != null && suspicion.partner().isEmpty()) {
        byResult.put(origin, before.with(suspicion.candidates()));
      }
    }

    List<Suspicion> inTime() {
      return byResult.values().stream()
          .sorted(Comparator.comparing(s -> s.logged().result().takenAt()))
          .toList();
    }
  }

  private Slip question(Suspicion suspicion, Records records) {
    Result result = suspicion.logged().result();
    Optional<Result> partner = suspicion.partner().map(Logged::result);
    QuestionId id = QuestionId.of(result, suspicion.check());
    List<Result> concerned = new ArrayList<>(List.of(result));
    partner.ifPresent(concerned::add);
    Optional<Action> closing = bench.closing(id);
    return new Slip(
        id,
        result,
        partner,
        suspicion.candidates(),
        suspicion.evidence(),
        concerned.stream().anyMatch(r -> records.period().contains(r.takenAt())),
        bench.isExcluded(result),
        closing);
  }
}
