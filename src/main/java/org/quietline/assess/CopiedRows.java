package org.quietline.assess;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.quietline.assess.Slip.Candidate;
import org.quietline.assess.Slip.What;
import org.quietline.bench.Reading;

/**
 * Results with the very readings of the one before them on the same instrument, of another sample,
 * where chance hardly repeats them: there are at least two readings, and the digits are fine enough
 * for the spread of such samples and readings.
 */
final class CopiedRows {
  /** A repetition is no coincidence where a sound result repeats the one before more rarely. */
  private static final double UNLIKELY = 0.005;

  private static final double DENSITY_AT_CENTRE = 1 / Math.sqrt(2 * Math.PI);

  private final Witnesses witnesses;
  private final Agreement agreement;

  CopiedRows(Witnesses witnesses, MethodLog log) {
    this.witnesses = witnesses;
    this.agreement = new Agreement(log);
  }

  List<Suspicion> among(List<Logged> inTime) {
    Map<String, Logged> before = new HashMap<>();
    List<Suspicion> found = new ArrayList<>();
    for (Logged logged : inTime) {
      Logged last = before.put(logged.result().instrument(), logged);
      if (last != null && isRepeated(last, logged)) {
        chance(logged)
            .filter(chance -> chance < UNLIKELY)
            .ifPresent(chance -> found.add(suspicion(logged, last, chance)));
      }
    }
    return found;
  }

  private static boolean isRepeated(Logged last, Logged logged) {
    List<BigDecimal> readings = numbers(logged);
    return readings.size() >= 2
        && !last.result().sample().equals(logged.result().sample())
        && readings.equals(numbers(last));
  }

  private static List<BigDecimal> numbers(Logged logged) {
    return logged.result().readings().stream()
        .filter(Reading.Measured.class::isInstance)
        .map(r -> ((Reading.Measured) r).value().stripTrailingZeros())
        .toList();
  }

  /** The chance that a sound result of this sample has these very digits. */
  private Optional<Double> chance(Logged logged) {
    Optional<Witness> value = witnesses.about(logged).stream().findFirst();
    double first = logged.readings().get(0);
    Optional<Witness> pair = agreement.about(logged.level(), logged.digit(), first);
    if (value.isEmpty() || pair.isEmpty()) {
      return Optional.empty();
    }
    double chance = ofDigit(value.get(), first, logged.digit());
    for (double reading : logged.readings().subList(1, logged.readings().size())) {
      chance *= ofDigit(pair.get(), reading, logged.digit());
    }
    return Optional.of(chance);
  }

  private static double ofDigit(Witness witness, double log, double digit) {
    double z = witness.apart(log);
    return Math.min(1, digit / witness.deviation() * DENSITY_AT_CENTRE * Math.exp(-z * z / 2));
  }

  private static Suspicion suspicion(Logged logged, Logged last, double chance) {
    Candidate candidate =
        new Candidate(
            What.COPIED, OptionalInt.empty(), OptionalInt.empty(), 1, OptionalDouble.empty());
    return new Suspicion(
        logged, Optional.of(last), List.of(candidate), new Slip.Coincidence(chance));
  }
}
