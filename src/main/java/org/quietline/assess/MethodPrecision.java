package org.quietline.assess;

import java.util.List;
import org.quietline.assess.StreamFindings.Point;
import org.quietline.bench.Result;
import org.quietline.stats.sample.DuplicateDeviation;
import org.quietline.stats.sample.Summary;

/** How precise is the method on its control materials? */
final class MethodPrecision {
  /** The fewest pairs, or degrees of freedom, from which a deviation is told. */
  static final int FEWEST = 5;

  private MethodPrecision() {}

  static Precision ask(Records records, List<StreamFindings> streams, Budgets budgets) {
    return new Precision(repeatability(records), intermediate(streams), budgets.splits());
  }

  private static Answer<Double> repeatability(Records records) {
    if (records.method().replicates() < 2) {
      return Answer.cannotSay("one reading makes a result, so there are no pairs");
    }
    List<Result> pairs = ReadingsAgreement.controlPairs(records);
    if (pairs.size() < FEWEST) {
      return Answer.cannotSay("needs " + FEWEST + " control pairs, has " + pairs.size());
    }
    return Answer.of(DuplicateDeviation.of(ReadingsAgreement.differences(pairs)).deviation());
  }

  /** Pools the deviations of the streams about their own means by their degrees of freedom. */
  private static Answer<Double> intermediate(List<StreamFindings> streams) {
    double squares = 0;
    int freedom = 0;
    int most = 0;
    for (StreamFindings stream : streams) {
      double[] values =
          stream.points().stream()
              .filter(Point::counts)
              .mapToDouble(p -> p.value().getAsDouble())
              .toArray();
      most = Math.max(most, values.length);
      if (values.length >= 2) {
        double deviation = Summary.of(values).deviation();
        squares += deviation * deviation * (values.length - 1);
        freedom += values.length - 1;
      }
    }
    if (freedom < FEWEST) {
      return Answer.cannotSay(
          "needs " + (FEWEST + 1) + " control results of one material, has " + most);
    }
    return Answer.of(Math.sqrt(squares / freedom));
  }
}
