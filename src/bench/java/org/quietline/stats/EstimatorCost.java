package org.quietline.stats;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.quietline.stats.agreement.DemingLine;
import org.quietline.stats.control.ControlLimits;
import org.quietline.stats.control.CumulativeSum;
import org.quietline.stats.model.LeastSquares;
import org.quietline.stats.model.StraightLine;
import org.quietline.stats.model.Terms;
import org.quietline.stats.sample.AlgorithmA;
import org.quietline.stats.sample.NormalShape;
import org.quietline.stats.sample.RobustSummary;
import org.quietline.stats.sample.SerialDependence;
import org.quietline.stats.sample.Summary;

/** What each estimator costs for one value of a series. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class EstimatorCost {
  private static final int MANY = 1000;

  private final double[] x = new double[MANY];
  private final double[] y = new double[MANY];

  /** Draws a series about 0.2. */
  @Setup
  public void draw() {
    SplittableRandom random = new SplittableRandom(4);
    for (int i = 0; i < MANY; i++) {
      x[i] = i;
      y[i] = 0.2 + 0.004 * Simulation.normal(random);
    }
  }

  /** Mean and deviation. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object summary() {
    return Summary.of(y);
  }

  /** Median and scaled MAD. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object robustSummary() {
    return RobustSummary.of(y);
  }

  /** Lag-1 correlation and von Neumann's ratio. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object serialDependence() {
    return SerialDependence.of(y);
  }

  /** Anderson and Darling's test. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object normalShape() {
    return NormalShape.of(y);
  }

  /** Limits from the moving range. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object movingRangeLimits() {
    return ControlLimits.fromMovingRange(y);
  }

  /** Robust mean and deviation, ISO 13528 Algorithm A. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object algorithmA() {
    return AlgorithmA.of(y);
  }

  /** Cumulative sums on both sides. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object cumulativeSum() {
    return CumulativeSum.usual(0.2, 0.004).trace(y, new boolean[MANY]);
  }

  /** A parabola with all its errors, in two doubles. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object parabola() {
    return LeastSquares.fit(Terms.polynomial(2), x, y);
  }

  /** Deming's line with jackknife errors. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object demingLine() {
    return DemingLine.fit(x, y, 1);
  }

  /** A straight line. */
  @Benchmark
  @OperationsPerInvocation(MANY)
  public Object straightLine() {
    return StraightLine.fit(x, y);
  }
}
