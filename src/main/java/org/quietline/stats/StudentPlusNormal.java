package org.quietline.stats;

/**
 * The sum of an estimated and a known error, {@code v·T + u·Z}: T of Student's t, Z standard normal
 * and independent of it. Source: the fiducial form behind JCGM 100:2008, G.3 to G.4, without the
 * approximation by effective degrees of freedom, which makes tails too thin where T has few.
 *
 * @param estimated the scale v of the t part, zero or more
 * @param degreesOfFreedom of the t part
 * @param known the scale u of the normal part, zero or more
 */
record StudentPlusNormal(double estimated, double degreesOfFreedom, double known) {
  /** Beyond this many normal deviations nothing is left that a double could hold. */
  private static final double REACH = 9;

  /** Panels to either side of the middle where the t part is a narrow step. */
  private static final int PANELS = 16;

  /** Enough where it is not, five times faster. */
  private static final int FEW_PANELS = 3;

  /** Below this share of the normal scale the t part is a narrow step. */
  private static final double NARROW = 0.2;

  /** A part smaller than this share of the other changes no digit that a double holds. */
  private static final double NOTHING = 1e-9;

  /** Leaves out a part that is nothing beside the other. */
  StudentPlusNormal {
    boolean noNormal = known < NOTHING * estimated;
    boolean noStudent = estimated < NOTHING * known;
    known = noNormal ? 0 : known;
    estimated = noStudent ? 0 : estimated;
  }

  /** The chance of a value above x. */
  double above(double x) {
    if (known == 0) {
      return estimated == 0 ? (x < 0 ? 1 : 0) : Student.above(x / estimated, degreesOfFreedom);
    }
    if (estimated == 0) {
      return Normal.above(x / known);
    }
    return Quadrature.integrate(
        z -> Normal.density(z) * Student.above((x - known * z) / estimated, degreesOfFreedom),
        edges(x));
  }

  /** Panels over the normal part, with an edge where the t part passes its middle. */
  private double[] edges(double x) {
    double middle = Math.max(-REACH, Math.min(REACH, x / known));
    int panels = estimated < NARROW * known ? PANELS : FEW_PANELS;
    double[] edges = new double[2 * panels + 1];
    for (int i = 0; i <= panels; i++) {
      double share = i / (double) panels;
      edges[i] = -REACH + (middle + REACH) * (1 - Math.pow(1 - share, 3));
      edges[panels + i] = middle + (REACH - middle) * Math.pow(share, 3);
    }
    return edges;
  }

  /** The value that is exceeded with a chance below one half. */
  double exceededWith(double chance) {
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
