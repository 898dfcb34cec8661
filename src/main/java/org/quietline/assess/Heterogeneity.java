package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.quietline.assess.NoticeRate.Question;
import org.quietline.assess.Records.StreamKey;
import org.quietline.assess.SampleEvenness.Comparison;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.stats.Interval;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.sample.DuplicateDeviation;

/** Do samples disagree with themselves while the control agrees? */
final class Heterogeneity {
  /** The fewest pairs on each side. */
  static final int FEWEST = ReadingsAgreement.PAIRS_TO_COMPARE;

  /** The fewest pairs that a person has on the other side; else people would be compared. */
  private static final int FEWEST_OF_PERSON = 5;

  /** Product pairs at levels within this factor of the control's are comparable with it. */
  private static final double LEVELS_ALIKE = Math.sqrt(2);

  private final Records records;
  private final StreamKey key;
  private final List<Result> controls;

  private Heterogeneity(Records records, StreamKey key, List<Result> stream) {
    this.records = records;
    this.key = key;
    this.controls = stream.stream().filter(r -> ReadingsAgreement.hasPair(records, r)).toList();
  }

  /** For each control material on each instrument; nothing for a method of single readings. */
  static List<SampleEvenness> ask(Records records) {
    if (records.method().replicates() < 2) {
      return List.of();
    }
    Map<StreamKey, List<Result>> streams = records.streams();
    return streams.entrySet().stream()
        .map(e -> new Heterogeneity(records, e.getKey(), e.getValue()).judge())
        .toList();
  }

  private SampleEvenness judge() {
    Answer<Comparison> comparison = compare();
    return new SampleEvenness(
        key.instrument(),
        key.material(),
        records.method().replicateKind(),
        comparison,
        new NoticeRate(
            Question.SAMPLES_UNEVEN,
            key.instrument() + ", " + key.material().key(),
            comparison.value().isPresent() ? 1 : 0,
            ReadingsAgreement.CHANCE_THAT_TELLS,
            comparison.value().filter(Comparison::uneven).isPresent() ? 1 : 0));
  }

  private Answer<Comparison> compare() {
    if (controls.size() < FEWEST) {
      return Answer.cannotSay("needs " + FEWEST + " control pairs, has " + controls.size());
    }
    List<Result> products = products();
    if (products.size() < FEWEST) {
      return Answer.cannotSay(
          "needs "
              + FEWEST
              + " product pairs near the level of the control, by people and in the time that have"
              + " control pairs, has "
              + products.size());
    }
    List<Result> own = shared(controls, products);
    if (own.size() < FEWEST) {
      return Answer.cannotSay(
          "needs "
              + FEWEST
              + " control pairs by people and in the time that have product pairs, has "
              + own.size());
    }
    DuplicateDeviation product = DuplicateDeviation.of(ReadingsAgreement.differences(products));
    DuplicateDeviation control = DuplicateDeviation.of(ReadingsAgreement.differences(own));
    return control.deviation() == 0 || product.deviation() == 0
        ? Answer.cannotSay("needs pairs that differ on both sides")
        : Answer.of(compare(product, control));
  }

  private List<Result> products() {
    double level = controls.stream().mapToDouble(PairScale::level).average().orElseThrow();
    List<Result> near =
        records.of(Role.PRODUCT).stream()
            .filter(r -> r.instrument().equals(key.instrument()))
            .filter(r -> ReadingsAgreement.hasPair(records, r))
            .filter(r -> isNear(PairScale.level(r), level))
            .toList();
    return shared(near, controls);
  }

  private static boolean isNear(double one, double other) {
    return one > 0 && other > 0 && one <= LEVELS_ALIKE * other && other <= LEVELS_ALIKE * one;
  }

  /** Those in the time and by the people of the others; who signs nothing counts as one person. */
  private static List<Result> shared(List<Result> of, List<Result> others) {
    LocalDateTime from = others.get(0).takenAt();
    LocalDateTime to = others.get(others.size() - 1).takenAt();
    Map<Optional<String>, Long> people =
        others.stream().collect(Collectors.groupingBy(Result::operator, Collectors.counting()));
    return of.stream()
        .filter(r -> !r.takenAt().isBefore(from) && !r.takenAt().isAfter(to))
        .filter(r -> people.getOrDefault(r.operator(), 0L) >= FEWEST_OF_PERSON)
        .toList();
  }

  private static Comparison compare(DuplicateDeviation product, DuplicateDeviation control) {
    VarianceRatio ratio =
        VarianceRatio.of(
            product.deviation(),
            product.degreesOfFreedom(),
            control.deviation(),
            control.degreesOfFreedom());
    Interval squares = ratio.interval(0.95);
    double chance = ratio.upperTail();
    double more =
        product.deviation() * product.deviation() - control.deviation() * control.deviation();
    return new Comparison(
        product.pairs(),
        product.deviation(),
        control.pairs(),
        control.deviation(),
        Math.sqrt(ratio.ratio()),
        new Interval(Math.sqrt(squares.lower()), Math.sqrt(squares.upper())),
        chance,
        chance < ReadingsAgreement.CHANCE_THAT_TELLS,
        Math.sqrt(Math.max(0, more)));
  }
}
