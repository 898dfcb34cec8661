package org.quietline.stats.control;

import org.quietline.stats.numeric.Require;

/**
 * A rule about the latest values of a series in deviations from the centre: it is met by a pattern
 * that ends with the latest value.
 *
 * <p>A value on a limit or on the edge of a zone is inside it. {@link RunRules} finds where rules
 * are met. Source: Western Electric, Statistical Quality Control Handbook (1956); Nelson (1984),
 * Journal of Quality Technology 16, 237–239; ISO 7870-2:2013, annex.
 */
public sealed interface RunRule {

  /**
   * How many values the longest pattern spans.
   *
   * @return the number of values, the latest included
   */
  int span();

  /**
   * The same rule for values in units that are larger by a factor: its zone is that much wider. A
   * rule that only tells sides or neighbours apart stays as it is.
   *
   * @param factor the factor, above zero
   * @return the rule in the larger units
   * @throws IllegalArgumentException if the zone gets outside its range
   */
  RunRule widened(double factor);

  /**
   * {@code count} of the latest {@code of} values beyond {@code zone} deviations, all on the side
   * of the latest, which is one of them. One of one is the action limit.
   *
   * @param count how many must be beyond, at least 1
   * @param of of how many successive values, at least {@code count}
   * @param zone how far out, in deviations, zero or more
   */
  record Beyond(int count, int of, double zone) implements RunRule {
    /**
     * Checks the ranges.
     *
     * @param count how many must be beyond
     * @param of of how many
     * @param zone how far out
     * @throws IllegalArgumentException if a count is out of range or the zone is negative or NaN
     */
    public Beyond {
      Require.atLeast(count, 1, "count");
      Require.atLeast(of, count, "of");
      Require.notNegative(zone, "zone");
    }

    @Override
    public int span() {
      return of;
    }

    @Override
    public RunRule widened(double factor) {
      return new Beyond(count, of, zone * factor);
    }
  }

  /**
   * {@code count} of the latest {@code of} values beyond {@code zone} deviations on either side,
   * the latest among them.
   *
   * @param count how many must be beyond, at least 1
   * @param of of how many successive values, at least {@code count}
   * @param zone how far out, in deviations, zero or more
   */
  record EitherSide(int count, int of, double zone) implements RunRule {
    /**
     * Checks the ranges.
     *
     * @param count how many must be beyond
     * @param of of how many
     * @param zone how far out
     * @throws IllegalArgumentException if a count is out of range or the zone is negative or NaN
     */
    public EitherSide {
      Require.atLeast(count, 1, "count");
      Require.atLeast(of, count, "of");
      Require.notNegative(zone, "zone");
    }

    @Override
    public int span() {
      return of;
    }

    @Override
    public RunRule widened(double factor) {
      return new EitherSide(count, of, zone * factor);
    }
  }

  /**
   * Within one set of values taken together, the latest beyond {@code zone} deviations on one side
   * and another before it beyond them on the other. Places are cut into sets of {@code set} from
   * the start of the series, and from each new start; a left-out value keeps its place.
   *
   * @param set how many values make a set, at least 2
   * @param zone how far out, in deviations, zero or more
   */
  record Opposite(int set, double zone) implements RunRule {
    /**
     * Checks the ranges.
     *
     * @param set how many values make a set
     * @param zone how far out
     * @throws IllegalArgumentException if the set is below 2 or the zone is negative or NaN
     */
    public Opposite {
      Require.atLeast(set, 2, "set");
      Require.notNegative(zone, "zone");
    }

    @Override
    public int span() {
      return set;
    }

    @Override
    public RunRule widened(double factor) {
      return new Opposite(set, zone * factor);
    }
  }

  /**
   * So many values in a row on one side of the centre; a value on the centre breaks the run.
   *
   * @param count how many, at least 2
   */
  record SameSide(int count) implements RunRule {
    /**
     * Checks the count.
     *
     * @param count how many
     * @throws IllegalArgumentException if it is below 2
     */
    public SameSide {
      Require.atLeast(count, 2, "count");
    }

    @Override
    public int span() {
      return count;
    }

    @Override
    public RunRule widened(double factor) {
      return this;
    }
  }

  /**
   * So many values in a row each above the one before, or each below it; equal values break the
   * run.
   *
   * @param count how many values, the first included, at least 3
   */
  record Steady(int count) implements RunRule {
    /**
     * Checks the count.
     *
     * @param count how many
     * @throws IllegalArgumentException if it is below 3
     */
    public Steady {
      Require.atLeast(count, 3, "count");
    }

    @Override
    public int span() {
      return count;
    }

    @Override
    public RunRule widened(double factor) {
      return this;
    }
  }

  /**
   * So many values in a row that go up and down in turn; equal values break the run.
   *
   * @param count how many values, the first included, at least 4
   */
  record Alternating(int count) implements RunRule {
    /**
     * Checks the count.
     *
     * @param count how many
     * @throws IllegalArgumentException if it is below 4
     */
    public Alternating {
      Require.atLeast(count, 4, "count");
    }

    @Override
    public int span() {
      return count;
    }

    @Override
    public RunRule widened(double factor) {
      return this;
    }
  }

  /**
   * So many values in a row within a zone about the centre, on either side.
   *
   * @param count how many, at least 2
   * @param zone the half-width of the zone in deviations, above zero
   */
  record Within(int count, double zone) implements RunRule {
    /**
     * Checks the ranges.
     *
     * @param count how many
     * @param zone the half-width
     * @throws IllegalArgumentException if the count is below 2 or the zone is not above zero
     */
    public Within {
      Require.atLeast(count, 2, "count");
      Require.positive(zone, "zone");
    }

    @Override
    public int span() {
      return count;
    }

    @Override
    public RunRule widened(double factor) {
      return new Within(count, zone * factor);
    }
  }

  /**
   * So many values in a row outside a zone about the centre, on either side.
   *
   * @param count how many, at least 2
   * @param zone the half-width of the zone in deviations, above zero
   */
  record Outside(int count, double zone) implements RunRule {
    /**
     * Checks the ranges.
     *
     * @param count how many
     * @param zone the half-width
     * @throws IllegalArgumentException if the count is below 2 or the zone is not above zero
     */
    public Outside {
      Require.atLeast(count, 2, "count");
      Require.positive(zone, "zone");
    }

    @Override
    public int span() {
      return count;
    }

    @Override
    public RunRule widened(double factor) {
      return new Outside(count, zone * factor);
    }
  }
}
