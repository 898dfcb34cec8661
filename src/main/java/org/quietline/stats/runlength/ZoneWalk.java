package org.quietline.stats.runlength;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Run rules that look at zones only: a finite Markov chain. */
final class ZoneWalk implements Walk {
  private final ZoneChain chain;
  private double[] standing;
  private final @Nullable Transition[] known;
  private double knownMean = Double.NaN;
  private long place;

  ZoneWalk(ZoneChain chain) {
    this.chain = chain;
    this.standing = new double[chain.states()];
    this.standing[0] = 1;
    this.known = new Transition[chain.places().kinds()];
  }

  @Override
  public double step(double mean) {
    if (knownMean != mean) {
      Arrays.fill(known, null);
      knownMean = mean;
    }
    int kind = chain.places().kind(place++);
    Transition transition = known[kind];
    if (transition == null) {
      transition = transition(mean, kind);
      known[kind] = transition;
    }
    double signal = transition.signalFrom(standing);
    standing = transition.after(standing);
    return signal;
  }

  @Override
  public double[] standing() {
    return standing.clone();
  }

  @Override
  public int cycle() {
    return chain.places().cycle();
  }

  private Transition transition(double mean, int kind) {
    Transition transition = new Transition(chain.states(), chain.states());
    double[] signals = new double[chain.states()];
    for (int a = 0; a < chain.zones(); a++) {
      double chance = Chances.between(chain.low(a), chain.high(a), mean);
      for (int s = 0; s < chain.states(); s++) {
        int to = chain.next(s, a, kind);
        if (to == ZoneChain.SIGNAL) {
          signals[s] += chance;
        } else {
          transition.go(s, to, chance);
        }
      }
    }
    for (int s = 0; s < signals.length; s++) {
      transition.signal(s, signals[s]);
    }
    return transition;
  }
}
