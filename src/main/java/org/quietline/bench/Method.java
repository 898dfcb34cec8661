package org.quietline.bench;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A test method run on the bench. Source of the word: ISO/IEC 17025:2017, 3.6 ("laboratory").
 *
 * @param key its key, unique on the bench, without a stroke
 * @param title its name as printed
 * @param unit the unit of its results
 * @param decimals how many decimals its results are reported with, 0 to 9
 * @param replicates how many readings make one result, 1 to 100
 * @param replicateKind what a second reading repeats
 * @param repeatPolicy what is done when the two readings of a result disagree
 * @param calibrationValidDays days a calibration may be used, if the method is calibrated
 * @param allowance how far calibration drift may carry a result, if set
 * @param limits the limits a product must keep, if any
 * @param shelfLife days a reagent lasts once opened, if set
 * @param published the published repeatability the user typed in, if any
 * @param partOf the key of the method that measures the whole this one measures a part of, as free
 *     glycerin is a part of total glycerin
 * @param driftForm how the error of a calibration acts on other levels, if a person has said so
 * @param listedMethod the published method that this one is run as, if the settings name one;
 *     otherwise its results are in-house production-control results
 */
public record Method(
    String key,
    String title,
    Unit unit,
    int decimals,
    int replicates,
    ReplicateKind replicateKind,
    RepeatPolicy repeatPolicy,
    OptionalInt calibrationValidDays,
    Optional<Allowance> allowance,
    Optional<ProductLimits> limits,
    ShelfLife shelfLife,
    Optional<PublishedRepeatability> published,
    Optional<String> partOf,
    Optional<DriftForm> driftForm,
    Optional<String> listedMethod) {

  /** Ten years; a longer one is a slip of the pen. */
  private static final int LONGEST_VALIDITY = 3660;

  /** As far as the critical range of many readings is computed. */
  private static final int MOST_REPLICATES = 100;

  /** Checks keys and ranges. */
  public Method {
    Checks.key("key", key);
    Checks.text("title", title);
    Checks.atLeast("decimals", 0, decimals);
    Checks.atMost("decimals", 9, decimals);
    Checks.atLeast("replicates", 1, replicates);
    Checks.atMost("replicates", MOST_REPLICATES, replicates);
    calibrationValidDays.ifPresent(
        d -> {
          Checks.atLeast("calibration-valid-days", 1, d);
          Checks.atMost("calibration-valid-days", LONGEST_VALIDITY, d);
        });
    partOf.ifPresent(whole -> Checks.notItself("part-of", key, whole));
  }

  /**
   * A method that measures no part of what another one measures, takes one more reading when two
   * disagree, and lets the data say how its drift acts.
   *
   * @param key its key
   * @param title its name as printed
   * @param unit the unit of its results
   * @param decimals how many decimals its results are reported with, 0 to 9
   * @param replicates how many readings make one result, 1 to 100
   * @param replicateKind what a second reading repeats
   * @param calibrationValidDays days a calibration may be used, if the method is calibrated
   * @param allowance how far calibration drift may carry a result, if set
   * @param limits the limits a product must keep, if any
   * @param shelfLife days a reagent lasts once opened, if set
   * @param published the published repeatability the user typed in, if any
   */
  public Method(
      String key,
      String title,
      Unit unit,
      int decimals,
      int replicates,
      ReplicateKind replicateKind,
      OptionalInt calibrationValidDays,
      Optional<Allowance> allowance,
      Optional<ProductLimits> limits,
      ShelfLife shelfLife,
      Optional<PublishedRepeatability> published) {
    this(
        key,
        title,
        unit,
        decimals,
        replicates,
        replicateKind,
        RepeatPolicy.ONE_MORE,
        calibrationValidDays,
        allowance,
        limits,
        shelfLife,
        published,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /**
   * How far calibration drift may carry a result before it is unfit for use: an amount in the
   * method's unit, or a percentage of the level.
   *
   * @param amount the amount or the percentage, more than 0
   * @param percent whether it is a percentage
   */
  public record Allowance(BigDecimal amount, boolean percent) {
    /** Checks the amount. */
    public Allowance {
      Checks.positive(percent ? "allowable-bias-percent" : "allowable-bias", amount);
    }

    /**
     * The allowance at a level.
     *
     * @param level in the method's unit
     * @return in the method's unit
     */
    public double at(double level) {
      return percent ? amount.doubleValue() / 100 * Math.abs(level) : amount.doubleValue();
    }
  }

  /**
   * Limits a product must keep, and where they come from.
   *
   * @param lower the lower limit in the method's unit, if any
   * @param upper the upper limit in the method's unit, if any
   * @param source the specification, as printed beside the limit
   */
  public record ProductLimits(
      Optional<BigDecimal> lower, Optional<BigDecimal> upper, Optional<String> source) {
    /** Checks that there is a limit, and that the two are in order. */
    public ProductLimits {
      if (lower.isEmpty() && upper.isEmpty()) {
        throw new IllegalArgumentException("neither a lower nor an upper limit");
      }
      if (lower.isPresent() && upper.isPresent() && lower.get().compareTo(upper.get()) >= 0) {
        throw new IllegalArgumentException(
            "product-lower-limit "
                + lower.get()
                + " is not below product-upper-limit "
                + upper.get());
      }
    }
  }

  /**
   * Days a reagent lasts after it was opened.
   *
   * @param refrigerated days in the refrigerator, if set
   * @param ambient days outside it, if set
   */
  public record ShelfLife(OptionalInt refrigerated, OptionalInt ambient) {
    /** No shelf life is set. */
    public static final ShelfLife NOT_SET = new ShelfLife(OptionalInt.empty(), OptionalInt.empty());

    /** Checks the days. */
    public ShelfLife {
      refrigerated.ifPresent(d -> Checks.atLeast("shelf-life-days, refrigerated,", 1, d));
      ambient.ifPresent(d -> Checks.atLeast("shelf-life-days, ambient,", 1, d));
    }

    /**
     * The shelf life under a kind of storage.
     *
     * @param storage how the reagent is kept
     * @return days after opening, if set
     */
    public OptionalInt under(Storage storage) {
      return storage == Storage.REFRIGERATED ? refrigerated : ambient;
    }
  }

  /**
   * The published repeatability of a method, typed in by the user from an own copy.
   *
   * @param limit the repeatability limit in the method's unit
   * @param source the document and edition, if given
   */
  public record PublishedRepeatability(BigDecimal limit, Optional<String> source) {
    /** Checks the limit. */
    public PublishedRepeatability {
      Checks.positive("published-repeatability", limit);
    }
  }
}
