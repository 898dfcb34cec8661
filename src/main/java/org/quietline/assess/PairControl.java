package org.quietline.assess;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.quietline.assess.NoticeRate.Question;
import org.quietline.assess.PairFindings.Judged;
import org.quietline.assess.PairFindings.OrderEffect;
import org.quietline.assess.PairFindings.PersonOrder;
import org.quietline.assess.PairFindings.Resolution;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.compare.BinomialTail;
import org.quietline.stats.compare.MeanTest;
import org.quietline.stats.distribution.PairRangeLimits;
import org.quietline.stats.sample.PairDiagnosis;
import org.quietline.stats.sample.Summary;

/** Do the readings of real samples agree, at the level each sample has? */
final class PairControl {
  /** The fewest pairs from which an order effect is told. */
  static final int FEWEST_FOR_ORDER = ReadingsAgreement.PAIRS_TO_COMPARE;

  private final Records records;
  private final String instrument;
  private final List<Result> pairs;

  private PairControl(Records records, String instrument) {
    this.records = records;
    this.instrument = instrument;
    this.pairs =
        records.of(Role.PRODUCT).stream()
            .filter(r -> r.instrument().equals(instrument))
            .filter(r -> ReadingsAgreement.hasPair(records, r))
            .toList();
  }

  /** For each instrument with product pairs, in key order. */
  static List<PairFindings> ask(Records records) {
    return records.instruments().stream()
        .map(i -> new PairControl(records, i))
        .filter(c -> !c.pairs.isEmpty())
        .map(PairControl::judge)
        .toList();
  }

  private PairFindings judge() {
    List<Judged> judged = inPeriod();
    int warnings = (int) judged.stream().filter(j -> j.statistic() > j.warning()).count();
    int actions = (int) judged.stream().filter(Judged::isBeyond).count();
    PairDiagnosis diagnosis = PairDiagnosis.of(ReadingsAgreement.differences(pairs));
    Answer<OrderEffect> order = order(pairs, 1);
    List<PersonOrder> byPerson = orderByPerson();
    return new PairFindings(
        instrument,
        records.method().replicateKind(),
        pairs.size(),
        PairScale.of(pairs).found(limit()),
        judged,
        warnings,
        BinomialTail.atLeast(warnings, judged.size(), ReadingsAgreement.SHARE_BEYOND_LIMIT),
        BinomialTail.atLeast(actions, judged.size(), FalseSignals.BEYOND_THREE_DEVIATIONS),
        Resolution.valueOf(diagnosis.resolution().name()),
        (double) diagnosis.zeros() / pairs.size(),
        order,
        byPerson,
        new NoticeRate(
            Question.PAIR_BEYOND,
            instrument,
            judged.size(),
            FalseSignals.BEYOND_THREE_DEVIATIONS,
            actions),
        orderRate(order, byPerson));
  }

  private Optional<Double> limit() {
    return records
        .method()
        .limits()
        .flatMap(l -> l.upper().or(l::lower))
        .map(BigDecimal::doubleValue);
  }

  private List<Judged> inPeriod() {
    List<Judged> judged = new ArrayList<>();
    for (int i = StreamControl.FEWEST_FOR_LIMITS; i < pairs.size(); i++) {
      if (records.period().contains(pairs.get(i).takenAt())) {
        judged.add(judge(pairs.get(i), pairs.subList(0, i)));
      }
    }
    return judged;
  }

  private static Judged judge(Result pair, List<Result> before) {
    PairScale scale = PairScale.of(before);
    double level = PairScale.level(pair);
    PairRangeLimits limits = PairRangeLimits.prediction(1, scale.degreesOfFreedomAt(level));
    double root = Math.sqrt(2);
    return new Judged(
        pair,
        level,
        pair.pair().orElseThrow().range() / (root * scale.deviationAt(level)),
        limits.warning() / root,
        limits.action() / root,
        before.size() < StreamControl.FEWEST_FOR_SETTLED_LIMITS);
  }

  private List<PersonOrder> orderByPerson() {
    Map<String, List<Result>> byPerson = new TreeMap<>();
    for (Result pair : pairs) {
      pair.operator().ifPresent(p -> byPerson.computeIfAbsent(p, k -> new ArrayList<>()).add(pair));
    }
    byPerson.values().removeIf(own -> own.size() < FEWEST_FOR_ORDER);
    List<PersonOrder> orders = new ArrayList<>();
    byPerson.forEach(
        (person, own) ->
            order(own, byPerson.size())
                .value()
                .ifPresent(effect -> orders.add(new PersonOrder(person, effect))));
    return orders;
  }

  private Answer<OrderEffect> order(List<Result> of, int asked) {
    if (of.size() < FEWEST_FOR_ORDER) {
      return Answer.cannotSay("needs " + FEWEST_FOR_ORDER + " pairs, has " + of.size());
    }
    double[] signed =
        of.stream()
            .map(r -> r.pair().orElseThrow())
            .mapToDouble(p -> p.first() - p.second())
            .toArray();
    Summary summary = Summary.of(signed);
    if (Differences.areEqual(records, summary.deviation())) {
      return Answer.cannotSay(
          Arrays.stream(signed).allMatch(d -> d == 0)
              ? "needs pairs that differ: the readings of all " + of.size() + " pairs are equal"
              : "needs differences that differ: all " + of.size() + " are the same number");
    }
    MeanTest test = MeanTest.oneSample(summary, 0);
    double chance = Math.min(1, test.chance() * asked);
    return Answer.of(
        new OrderEffect(
            of.size(),
            summary.mean(),
            test.interval(0.95),
            chance,
            chance < ReadingsAgreement.CHANCE_THAT_TELLS));
  }

  /** Asked once over all and once over all people together, with 1 % each. */
  private NoticeRate orderRate(Answer<OrderEffect> order, List<PersonOrder> byPerson) {
    int asked = (order.value().isPresent() ? 1 : 0) + (byPerson.isEmpty() ? 0 : 1);
    int told =
        (order.value().filter(OrderEffect::tells).isPresent() ? 1 : 0)
            + (byPerson.stream().anyMatch(p -> p.effect().tells()) ? 1 : 0);
    return new NoticeRate(
        Question.ORDER_OF_READINGS, instrument, asked, ReadingsAgreement.CHANCE_THAT_TELLS, told);
  }
}
