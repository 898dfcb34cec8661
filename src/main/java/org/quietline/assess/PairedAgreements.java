package org.quietline.assess;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.PairedAgreement.Line;
import org.quietline.assess.PairedAgreement.Point;
import org.quietline.stats.Interval;
import org.quietline.stats.agreement.DemingLine;
import org.quietline.stats.agreement.LimitsOfAgreement;
import org.quietline.stats.agreement.PassingBablok;

/** How far do the results of single samples differ? */
final class PairedAgreements {
  private static final double LEVEL = 0.95;

  /** Slopes of all pairs of more samples are too many. */
  private static final int MOST_FOR_SLOPES = 1000;

  private PairedAgreements() {}

  /** The agreement of samples whose differences are not all alike. */
  static Answer<PairedAgreement> of(List<Point> points) {
    int n = points.size();
    if (n < PairedAgreement.FEWEST) {
      return Answer.cannotSay("needs " + PairedAgreement.FEWEST + " samples, has " + n);
    }
    double[] ones = points.stream().mapToDouble(Point::one).toArray();
    double[] others = points.stream().mapToDouble(Point::other).toArray();
    LimitsOfAgreement limits = LimitsOfAgreement.ofDifferences(others, ones);
    Optional<PassingBablok> medians =
        n < PairedAgreement.FEWEST_FOR_LINES || n > MOST_FOR_SLOPES
            ? Optional.empty()
            : PassingBablok.fit(others, ones);
    return Answer.of(
        new PairedAgreement(
            points,
            limits.limits(LEVEL),
            limits.lowerLimitInterval(LEVEL, LEVEL),
            limits.upperLimitInterval(LEVEL, LEVEL),
            limits.trend().map(t -> t.slopeInterval(LEVEL)),
            n < PairedAgreement.FEWEST_FOR_LINES ? fewer(n) : deming(others, ones),
            n < PairedAgreement.FEWEST_FOR_LINES
                ? fewer(n)
                : medians
                    .flatMap(PairedAgreements::line)
                    .orElse(
                        Answer.cannotSay(
                            n > MOST_FOR_SLOPES
                                ? "there are more than " + MOST_FOR_SLOPES + " samples"
                                : "the levels are too much alike")),
            medians
                .flatMap(PassingBablok::linearity)
                .map(l -> OptionalDouble.of(l.chance()))
                .orElse(OptionalDouble.empty())));
  }

  private static Answer<Line> fewer(int n) {
    return Answer.cannotSay("needs " + PairedAgreement.FEWEST_FOR_LINES + " samples, has " + n);
  }

  private static Answer<Line> deming(double[] x, double[] y) {
    Optional<DemingLine> line = DemingLine.fit(x, y, 1);
    Optional<Interval> slope = line.flatMap(d -> d.slopeInterval(LEVEL));
    Optional<Interval> intercept = line.flatMap(d -> d.interceptInterval(LEVEL));
    return line.isPresent() && slope.isPresent() && intercept.isPresent()
        ? Answer.of(
            new Line(line.get().slope(), slope.get(), line.get().intercept(), intercept.get()))
        : Answer.cannotSay("the levels are too much alike");
  }

  private static Optional<Answer<Line>> line(PassingBablok line) {
    Optional<Interval> slope = line.slopeInterval(LEVEL);
    Optional<Interval> intercept = line.interceptInterval(LEVEL);
    return slope.isPresent() && intercept.isPresent()
        ? Optional.of(
            Answer.of(new Line(line.slope(), slope.get(), line.intercept(), intercept.get())))
        : Optional.empty();
  }
}
