package org.quietline.stats.distribution;

import java.util.stream.DoubleStream;
import org.quietline.stats.numeric.Quadrature;
import org.quietline.stats.numeric.Require;
import org.quietline.stats.numeric.Roots;

/**
 * The sum of an estimated and a known error, {@code v·T + u·Z}: T of Student's t, Z standard normal
 * and independent of it. Source: the fiducial form behind JCGM 100:2008, G.3 to G.4, without the
 * approximation by effective degrees of freedom, which makes tails too thin where T has few.
 *
 * <p>Chances to 1e-14 absolute and 1e-9 relative in the upper tail down to 1e-300, from 0.5 degrees
 * of freedom. Where the t part is small, the normal tail is integrated over t on a scale of {@code
 * arsinh}; elsewhere the tail of t over the normal part.
 *
 * @param estimated the scale v of the t part, zero or more
 * @param degreesOfFreedom of the t part
 * @param known the scale u of the normal part, zero or more
 */
public record StudentPlusNormal(double estimated, double degreesOfFreedom, double known) {
  /** Beyond so many normal deviations from where it begins to fall a part has no digits left. */
  private static final double REACH = 9;

  /** Beyond this many normal deviations nothing is left that a double could hold. */
  private static final double FARTHEST = 39;

  /** Up to so many normal deviations few panels over a fixed stretch are enough. */
  private static final double NOT_FAR = 5;

  /** How far beyond the step of the t part the normal part still counts. */
  private static final double BEYOND = 4;

  /** Panels to either side of the middle in the far tail. */
  private static final int PANELS = 16;

  /** Enough elsewhere, three times faster. */
  private static final int FEW_PANELS = 5;

  /** Width of a panel in the normal deviations that it sweeps over, at most. */
  private static final double SWEEP = 6;

  /** From here on a narrow step lies where the normal part has ended. */
  private static final double APART = 35;

  /** Below this share of the normal scale the t part is a narrow step. */
  private static final double NARROW = 0.2;

  /** A normal part smaller than this share of the other changes no digit that a double holds. */
  private static final double NO_NORMAL = 1e-9;

  /** The same of a t part, whose tail reaches farther. */
  private static final double NO_STUDENT = 1e-30;

  /**
   * Leaves out a part that is nothing beside the other.
   *
   * @param estimated the scale of the t part
   * @param degreesOfFreedom of the t part
   * @param known the scale of the normal part
   * @throws IllegalArgumentException if a scale is negative or not finite or the degrees of freedom
   *     are not above zero
   */
  public StudentPlusNormal {
    Require.notNegative(estimated, "estimated scale");
    Require.notNegative(known, "known scale");
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be above zero, is " + degreesOfFreedom);
    }
    boolean noNormal = known < NO_NORMAL * estimated;
    boolean noStudent = estimated < NO_STUDENT * known;
    known = noNormal ? 0 : known;
    estimated = noStudent ? 0 : estimated;
  }

  /**
   * The chance of a value above x.
   *
   * @param x the value
   * @return the chance; below zero one less the chance above −x
   * @throws IllegalArgumentException if the value is NaN
   */
  public double above(double x) {
    if (Double.isNaN(x)) {
      throw new IllegalArgumentException("value is NaN");
    }
    if (known == 0) {
      return estimated == 0 ? (x < 0 ? 1 : 0) : Student.above(x / estimated, degreesOfFreedom);
    }
    if (estimated == 0) {
      return Normal.above(x / known);
    }
    if (Double.isInfinite(degreesOfFreedom)) {
      return Normal.above(x / Math.hypot(estimated, known));
    }
    if (x < 0) {
      return 1 - above(-x);
    }
    return estimated < NARROW * known && x < APART * known ? overStudent(x) : overNormal(x);
  }

  private double overNormal(double x) {
    return Quadrature.integrate(
        z -> Normal.density(z) * Student.above((x - known * z) / estimated, degreesOfFreedom),
        edges(x));
  }

  /** Panels over the normal part, with an edge where the t part passes its middle. */
  private double[] edges(double x) {
    double step = x / known;
    double end = Math.min(FARTHEST, Math.max(REACH, step + BEYOND));
    double middle = Math.min(end, step);
    int panels = step > NOT_FAR ? PANELS : FEW_PANELS;
    double[] edges = new double[2 * panels + 1];
    for (int i = 0; i <= panels; i++) {
      double share = i / (double) panels;
      edges[i] = -REACH + (middle + REACH) * (1 - Math.pow(1 - share, 3));
      edges[panels + i] = middle + (end - middle) * Math.pow(share, 3);
    }
    return edges;
  }

  /** The normal tail over the t part, and what of t lies where that tail has become one. */
  private double overStudent(double x) {
    double df = degreesOfFreedom;
    double atOne = Math.exp(0.5 * (df + 1) * Math.log1p(1 / df)) * Student.weight(1, df);
    double scale = Math.min(1, Math.sqrt(df));
    double share = estimated / known;
    double end = (x / known + REACH) / share;
    double sum =
        Quadrature.integrate(
            s -> {
              double t = scale * Math.sinh(s);
              double density = Math.exp(-0.5 * (df + 1) * Math.log1p(t * t / df));
              return density * scale * Math.cosh(s) * Normal.above(x / known - share * t);
            },
            stretched(share * scale, -arsinh(REACH / share / scale), arsinh(end / scale)));
    return atOne * sum + Student.above(end, df);
  }

  /** Panels no wider than one, nor than what the normal part sweeps over. */
  private static double[] stretched(double slope, double from, double to) {
    DoubleStream.Builder edges = DoubleStream.builder();
    double at = from;
    while (at < to) {
      edges.add(at);
      at += Math.min(1, SWEEP / (slope * Math.cosh(at)));
    }
    return edges.add(to).build().toArray();
  }

  private static double arsinh(double value) {
    return Math.log(value + Math.hypot(value, 1));
  }

  /**
   * The value that is exceeded with a given chance.
   *
   * @param chance the chance, at most one half
   * @return the value, zero or more
   * @throws IllegalArgumentException if the chance is NaN, negative or above one half
   */
  public double exceededWith(double chance) {
    if (chance == 0.5) {
      return 0;
    }
    double student = estimated * Student.exceededWith(chance, degreesOfFreedom);
    double normal = known * Normal.exceededWith(chance);
    if (known == 0 || estimated == 0) {
      return student + normal;
    }
    return Roots.between(
        x -> above(x) - chance,
        Math.max(student, normal) * (1 - 1e-6),
        (student + normal) * (1 + 1e-6));
  }
}
