package org.quietline.assess;

import java.util.List;
import java.util.Optional;
import org.quietline.bench.ReleaseSettings.Costs;

/**
 * What wrong decisions cost against the distance that results must keep from the limit: advice
 * beside the rule. True values are taken as drawn from the process as its batches show it, less
 * what measurement adds to their spread. Source: JCGM 106:2012, clause 9.5.
 *
 * @param instrument the instrument
 * @param batches how many batches the process is known by
 * @param mean the mean of their results
 * @param deviation the deviation of true values, in the method's unit
 * @param uncertainty the standard uncertainty of a result
 * @param costs the costs set
 * @param options keeping no distance, that of the rule, and the cheapest one, in this order
 * @param curve the cost against the distance, in order
 */
public record CostAdvice(
    String instrument,
    int batches,
    double mean,
    double deviation,
    double uncertainty,
    Costs costs,
    List<Option> options,
    List<Point> curve) {
  /** Copies the lists. */
  public CostAdvice {
    options = List.copyOf(options);
    curve = List.copyOf(curve);
  }

  /**
   * A distance to keep.
   *
   * @param kind whose it is
   * @param distance from the limit, inwards, in the method's unit; negative accepts beyond it
   * @param badReleased the share of all batches that are released and beyond the limit
   * @param goodHeld the share of all batches that are held and within it
   * @param cost what both cost for every batch, in the unit of the costs
   */
  public record Option(
      Kind kind, double distance, double badReleased, double goodHeld, double cost) {}

  /** Whose a distance is. */
  public enum Kind {
    /** None is kept: the limit itself decides. */
    LIMIT("limit"),
    /** That of the rule. */
    RULE("rule"),
    /** That of the least cost. */
    CHEAPEST("cheapest");

    private final String key;

    Kind(String key) {
      this.key = key;
    }

    /**
     * The word used in findings.
     *
     * @return the word
     */
    public String key() {
      return key;
    }
  }

  /**
   * A place on the curve.
   *
   * @param distance from the limit
   * @param cost for every batch
   */
  public record Point(double distance, double cost) {}

  /** One of the options. */
  Optional<Option> option(Kind kind) {
    return options.stream().filter(o -> o.kind() == kind).findFirst();
  }
}
