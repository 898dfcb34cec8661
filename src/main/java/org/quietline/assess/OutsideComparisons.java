package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.quietline.bench.OutsideResult;
import org.quietline.bench.Result;
import org.quietline.bench.Role;

/** How do the bench's results compare with those of outside laboratories? */
final class OutsideComparisons {
  private OutsideComparisons() {}

  /** The samples that both measured, in the order of outside.csv. */
  static List<OutsideDifference> differences(Records records) {
    List<OutsideDifference> differences = new ArrayList<>();
    for (OutsideResult outside : own(records)) {
      for (String instrument : records.instruments()) {
        double[] values =
            records.results().stream()
                .filter(r -> r.instrument().equals(instrument) && isOf(r, outside))
                .filter(records::counts)
                .mapToDouble(r -> records.value(r).orElseThrow())
                .toArray();
        if (values.length > 0) {
          differences.add(difference(outside, instrument, values));
        }
      }
    }
    return differences;
  }

  private static List<OutsideResult> own(Records records) {
    return records.bench().outsideResults().stream()
        .filter(o -> o.method().equals(records.method().key()))
        .filter(o -> o.reportedOn().filter(d -> d.isAfter(records.now().toLocalDate())).isEmpty())
        .toList();
  }

  private static boolean isOf(Result result, OutsideResult outside) {
    return result.sample().equals(outside.sample())
        && (result.role() == Role.PRODUCT || result.role() == Role.RETEST);
  }

  private static OutsideDifference difference(
      OutsideResult outside, String instrument, double... values) {
    double own = 0;
    for (double value : values) {
      own += value / values.length;
    }
    return new OutsideDifference(
        outside.sample(),
        instrument,
        outside.laboratory(),
        outside.reportedOn(),
        own,
        values.length,
        outside.value().doubleValue(),
        stated(outside),
        outside.origin().file(),
        outside.origin().line());
  }

  /** An expanded uncertainty says nothing without its factor. */
  private static OptionalDouble stated(OutsideResult outside) {
    return outside.expandedUncertainty().isPresent() && outside.coverageFactor().isPresent()
        ? OptionalDouble.of(
            outside.expandedUncertainty().get().doubleValue()
                / outside.coverageFactor().get().doubleValue())
        : OptionalDouble.empty();
  }

  /** What the outside laboratories of the method state on the average, if any does. */
  static OptionalDouble statedUncertainty(Records records) {
    return own(records).stream().flatMapToDouble(o -> stated(o).stream()).average();
  }
}
