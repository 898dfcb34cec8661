package org.quietline.stats.sample;

import org.quietline.stats.distribution.Normal;
import org.quietline.stats.numeric.Roots;
import org.quietline.stats.numeric.Sum;

/**
 * The log-likelihood of a censored normal sample in {@code θ = 1/σ} and {@code η = μ/σ}: {@code
 * Σ(ln θ − ½(θx − η)²) + Σ ln Φ(θL − η) + Σ ln Φ(η − θU)}, concave in both together, so that it has
 * one highest point and Newton's steps, halved where they would fall, climb to it. Source: Olsen
 * (1978), Econometrica 46, 1211–1215; Pratt (1981), J. Am. Stat. Assoc. 76, 103–106.
 */
final class CensoredLikelihood {
  private static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);
  private static final int MOST_STEPS = 200;

  /** Below this the ratio of density to tail is taken from its asymptotic series. */
  private static final double FAR = -30;

  private final double[] exact;
  private final double[] below;
  private final double[] above;

  CensoredLikelihood(double[] exact, double[] below, double[] above) {
    this.exact = exact;
    this.below = below;
    this.above = above;
  }

  /** A place in both parameters. */
  record Place(double eta, double theta) {}

  /** First and second derivatives. */
  record Slopes(double eta, double theta, double etaEta, double etaTheta, double thetaTheta) {}

  double at(Place p) {
    Sum sum = new Sum().add(exact.length * (Math.log(p.theta) - LOG_ROOT_TWO_PI));
    for (double x : exact) {
      double z = p.theta * x - p.eta;
      sum.add(-0.5 * z * z);
    }
    for (double limit : below) {
      sum.add(Normal.logBelow(p.theta * limit - p.eta));
    }
    for (double limit : above) {
      sum.add(Normal.logBelow(p.eta - p.theta * limit));
    }
    return sum.value();
  }

  Slopes slopes(Place p) {
    Slopes total = new Slopes(0, exact.length / p.theta, 0, 0, -exact.length / (p.theta * p.theta));
    for (double x : exact) {
      total = plus(total, x, -(p.theta * x - p.eta), -1);
    }
    for (double limit : below) {
      Tail tail = Tail.of(p.theta * limit - p.eta);
      total = plus(total, limit, tail.first, tail.second);
    }
    for (double limit : above) {
      Tail tail = Tail.of(p.eta - p.theta * limit);
      total = plus(total, limit, -tail.first, tail.second);
    }
    return total;
  }

  /** Adds a term of {@code θx − η} with its first and second derivative. */
  private static Slopes plus(Slopes s, double x, double first, double second) {
    return new Slopes(
        s.eta - first,
        s.theta + x * first,
        s.etaEta + second,
        s.etaTheta - x * second,
        s.thetaTheta + x * x * second);
  }

  /** First and second derivative of ln Φ: {@code r = φ/Φ} and {@code −r(z + r)}. */
  private record Tail(double first, double second) {
    static Tail of(double z) {
      if (z > FAR) {
        double ratio = Math.exp(-0.5 * z * z - LOG_ROOT_TWO_PI - Normal.logBelow(z));
        return new Tail(ratio, -ratio * (z + ratio));
      }
      double w = 1 / (z * z);
      double less = -w * (1 - 3 * w * (1 - 5 * w * (1 - 7 * w * (1 - 9 * w))));
      double ratio = -z / (1 + less);
      return new Tail(ratio, z * ratio * -less / (1 + less));
    }
  }

  /** The highest point. */
  Place highest(Place start) {
    Place place = start;
    double height = at(place);
    for (int i = 0; i < MOST_STEPS; i++) {
      Slopes s = slopes(place);
      double determinant = s.etaEta * s.thetaTheta - s.etaTheta * s.etaTheta;
      double stepEta = (s.etaTheta * s.theta - s.thetaTheta * s.eta) / determinant;
      double stepTheta = (s.etaTheta * s.eta - s.etaEta * s.theta) / determinant;
      double part = 1;
      Place next = moved(place, stepEta, stepTheta, part);
      while (part > 1e-12 && !(next.theta > 0 && at(next) >= height - 1e-13 * Math.abs(height))) {
        part /= 2;
        next = moved(place, stepEta, stepTheta, part);
      }
      double moved = part * Math.hypot(stepEta, stepTheta);
      place = next;
      height = at(place);
      if (moved <= 1e-14 * Math.hypot(place.eta, place.theta)) {
        break;
      }
    }
    return place;
  }

  private static Place moved(Place p, double eta, double theta, double part) {
    return new Place(p.eta + part * eta, p.theta + part * theta);
  }

  /** The greatest height where {@code η = q·θ − z}: the z-quantile is q. */
  double highestWithQuantile(double q, double z, double startTheta) {
    double logTheta =
        Roots.of(
            t -> {
              double theta = Math.exp(t);
              Slopes s = slopes(new Place(q * theta - z, theta));
              return s.theta + q * s.eta;
            },
            Math.log(startTheta),
            0.1);
    double theta = Math.exp(logTheta);
    return at(new Place(q * theta - z, theta));
  }

  /** The greatest height at a θ. */
  double highestWithScale(double theta, double startEta) {
    double eta = Roots.of(e -> slopes(new Place(e, theta)).eta, startEta, 0.1);
    return at(new Place(eta, theta));
  }
}
