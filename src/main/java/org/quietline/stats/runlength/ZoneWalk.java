package org.quietline.stats.runlength;

/** Run rules that look at zones only: a finite Markov chain. */
final class ZoneWalk implements Walk {
  private final ZoneChain chain;
  private double[] standing;
  private double knownMean = Double.NaN;
  private Transition known = new Transition(0, 0);

  ZoneWalk(ZoneChain chain) {
    this.chain = chain;
    this.standing = new double[chain.states()];
    this.standing[0] = 1;
  }

  @Override
  public double step(double mean) {
    if (knownMean != mean) {
      known = transition(mean);
      knownMean = mean;
    }
    double signal = known.signalFrom(standing);
    standing = known.after(standing);
    return signal;
  }

  @Override
  public double[] standing() {
    return standing.clone();
  }

  private Transition transition(double mean) {
    Transition transition = new Transition(chain.states(), chain.states());
    double[] signals = new double[chain.states()];
    for (int a = 0; a < chain.zones(); a++) {
      double chance = Chances.between(chain.low(a), chain.high(a), mean);
      for (int s = 0; s < chain.states(); s++) {
        int to = chain.next(s, a);
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
