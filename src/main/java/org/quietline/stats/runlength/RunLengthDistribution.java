package org.quietline.stats.runlength;

/**
 * How many values a chart takes until it signals, the signalling value included: 1, 2, 3 … Each
 * value counts for itself, also where rules look at sets of them; {@link #inSets} counts the sets.
 *
 * <p>Either from the exact recursion of the chances, which is accurate to about 1e-9 relative, or
 * from a seeded simulation, which says its standard error.
 */
public sealed interface RunLengthDistribution permits ExactRunLength, SimulatedRunLength {

  /**
   * The average run length.
   *
   * @return the average, at least 1; infinite where the chart cannot signal
   */
  double average();

  /**
   * The standard deviation of the run length. It is close to the average where the chance of a
   * signal hardly changes from value to value.
   *
   * @return the deviation, zero where the run length is certain; infinite where the chart cannot
   *     signal
   */
  double standardDeviation();

  /**
   * The smallest number of values within which the signal comes with at least a given chance.
   *
   * @param chance the chance, between 0 and 1; 0.5 asks for the median
   * @return a whole number of 1 or more; infinite where the chart cannot signal
   * @throws IllegalArgumentException if the chance is not between 0 and 1
   */
  double quantile(double chance);

  /**
   * The chance that the signal comes within so many values.
   *
   * @param values how many, zero or more
   * @return the chance
   * @throws IllegalArgumentException if the number is negative
   */
  double chanceWithin(long values);

  /**
   * The same counted in sets of so many values, the first of which begins with the first value: the
   * set in which the signal falls is the last, and counts whole, as what is taken together is
   * judged together. In a set one value early or late makes no difference. All figures are then
   * numbers of sets, and the unit of {@link #chanceWithin} too.
   *
   * @param set how many values make a set, at least 1
   * @return the distribution of {@code ⌈N/set⌉}, N the number of values
   * @throws IllegalArgumentException if the set is below 1
   */
  RunLengthDistribution inSets(int set);

  /**
   * How the distribution was obtained.
   *
   * @return the way, with the standard error of the average where it has one
   */
  Way way();

  /** How a distribution was obtained. */
  sealed interface Way {
    /** From an integral equation or a finite Markov chain. */
    record Exact() implements Way {}

    /**
     * From a simulation.
     *
     * @param trials how many runs were followed to their signal
     * @param averageError the standard error of the average
     */
    record Simulated(int trials, double averageError) implements Way {}
  }
}
