package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.quietline.bench.Accounting;
import org.quietline.bench.ReleaseSettings;

/**
 * The release decisions of some batches.
 *
 * @param bench the bench's name
 * @param now the moment they speak from
 * @param settings how the bench decides
 * @param accounting what became of every row
 * @param batches the batches, in the order of their first results
 * @param settingsFingerprint of the settings file
 * @param dataFingerprint of the data files
 */
public record ReleaseFindings(
    String bench,
    LocalDateTime now,
    ReleaseSettings settings,
    Accounting accounting,
    List<Batch> batches,
    String settingsFingerprint,
    String dataFingerprint) {
  /** Copies the list. */
  public ReleaseFindings {
    batches = List.copyOf(batches);
  }

  /**
   * One batch with its decision by each method that has a limit.
   *
   * @param sample the sample's id
   * @param releases at least one, in the order of the methods
   * @param budgets the uncertainty behind each, in the same order
   */
  public record Batch(
      String sample, List<Release> releases, List<Answer<Uncertainty.Budget>> budgets) {
    /** Copies the lists. */
    public Batch {
      releases = List.copyOf(releases);
      budgets = List.copyOf(budgets);
    }

    /**
     * The decision on the whole batch: the gravest of its methods.
     *
     * @return beyond where a method says so; else not known where one is not; else too close where
     *     one is; within only where all are
     */
    public Answer<Release.Decision> decision() {
      Optional<Answer<Release.Decision>> unknown = Optional.empty();
      Release.Decision gravest = Release.Decision.WITHIN;
      for (Release release : releases) {
        Answer<Release.Decision> own = release.decision();
        if (own.value().isEmpty()) {
          unknown = unknown.or(() -> Optional.of(own));
        } else if (own.value().get() == Release.Decision.BEYOND) {
          return own;
        } else if (own.value().get() == Release.Decision.TOO_CLOSE_TO_CALL) {
          gravest = Release.Decision.TOO_CLOSE_TO_CALL;
        }
      }
      return unknown.orElse(Answer.of(gravest));
    }
  }

  /** Puts releases of one sample together. */
  static List<Batch> batches(List<MethodFindings> methods) {
    Map<String, List<Release>> releases = new LinkedHashMap<>();
    Map<String, List<Answer<Uncertainty.Budget>>> budgets = new LinkedHashMap<>();
    for (MethodFindings method : methods) {
      for (Release release : method.batches().releases()) {
        releases.computeIfAbsent(release.sample(), k -> new ArrayList<>()).add(release);
        budgets
            .computeIfAbsent(release.sample(), k -> new ArrayList<>())
            .add(
                method.batches().uncertainty().stream()
                    .filter(u -> u.instrument().equals(release.instrument()))
                    .findFirst()
                    .map(Uncertainty::budget)
                    .orElse(Answer.cannotSay("no uncertainty is known")));
      }
    }
    return releases.entrySet().stream()
        .map(e -> new Batch(e.getKey(), e.getValue(), budgets.getOrDefault(e.getKey(), List.of())))
        .toList();
  }

  /**
   * Whether every batch may go.
   *
   * @return true if each is within its limits by every method
   */
  public boolean steady() {
    return batches.stream()
        .allMatch(b -> b.decision().value().equals(Optional.of(Release.Decision.WITHIN)));
  }
}
