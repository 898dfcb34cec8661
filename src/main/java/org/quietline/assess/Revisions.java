package org.quietline.assess;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.assess.Revision.Advice;
import org.quietline.assess.Revision.Block;
import org.quietline.bench.BaselineChoice;
import org.quietline.bench.Result;
import org.quietline.stats.compare.MeanTest;
import org.quietline.stats.compare.VarianceRatio;
import org.quietline.stats.sample.Summary;

/** Should the limits of a stream be revised, and what did revisions rest on? */
final class Revisions {
  /** So many new results are looked at before a revision is proposed. */
  static final int FEWEST_NEW = 20;

  private static final double CHANCE_THAT_TELLS = 0.05;

  private final Records records;

  Revisions(Records records) {
    this.records = records;
  }

  /** What each chosen baseline after the first limits rested on. */
  List<Revision> made(Baselines baselines) {
    List<Revision> made = new ArrayList<>();
    List<Baselines.Ruling> rulings = baselines.rulings();
    for (int i = 1; i < rulings.size(); i++) {
      Baselines.Ruling old = rulings.get(i - 1);
      Baselines.Ruling fresh = rulings.get(i);
      List<Result> added = without(old.base(), fresh.base());
      if (comparable(old.base()) && comparable(added)) {
        made.add(
            compare(
                old.base(),
                added,
                fresh.choice().flatMap(BaselineChoice::approvedBy),
                fresh.choice().flatMap(BaselineChoice::reason)));
      }
    }
    return made;
  }

  /** What the results since the baseline in force say to a revision. */
  Answer<Revision> proposed(Baselines baselines, List<Result> counted) {
    List<Result> base = baselines.latest().base();
    Optional<StreamFindings.Baseline> baseline = baselines.latest().baseline().value();
    if (baseline.isEmpty() || baseline.get().provisional()) {
      return Answer.cannotSay("the limits are not settled yet");
    }
    LocalDate end = baseline.get().to().toLocalDate();
    List<Result> fresh =
        without(base, counted).stream()
            .filter(r -> !r.takenAt().toLocalDate().isBefore(end))
            .toList();
    if (fresh.size() < FEWEST_NEW) {
      return Answer.cannotSay(
          "needs " + FEWEST_NEW + " results since the baseline, has " + fresh.size());
    }
    if (!comparable(fresh)) {
      return Answer.cannotSay("needs results that differ");
    }
    return Answer.of(compare(base, fresh, Optional.empty(), Optional.empty()));
  }

  /** Results that are in both are no news: limits pooled from old and new hold the old ones. */
  private static List<Result> without(List<Result> known, List<Result> results) {
    Set<Result> old = Collections.newSetFromMap(new IdentityHashMap<>());
    old.addAll(known);
    return results.stream().filter(r -> !old.contains(r)).toList();
  }

  private boolean comparable(List<Result> results) {
    return results.size() >= StreamControl.FEWEST_FOR_LIMITS
        && Baselines.differ(records, values(results));
  }

  private double[] values(List<Result> results) {
    return results.stream().mapToDouble(r -> records.value(r).orElseThrow()).toArray();
  }

  private Revision compare(
      List<Result> oldResults,
      List<Result> freshResults,
      Optional<String> approvedBy,
      Optional<String> reason) {
    Summary old = Summary.of(values(oldResults));
    Summary fresh = Summary.of(values(freshResults));
    boolean grew = fresh.deviation() >= old.deviation();
    VarianceRatio ratio = grew ? ratio(fresh, old) : ratio(old, fresh);
    double ratioChance = ratio.chance();
    boolean scatterDiffers = ratioChance < CHANCE_THAT_TELLS;
    MeanTest means = scatterDiffers ? MeanTest.welch(fresh, old) : MeanTest.pooled(fresh, old);
    return new Revision(
        freshResults.get(0).takenAt().toLocalDate(),
        freshResults.get(freshResults.size() - 1).takenAt().toLocalDate(),
        approvedBy,
        reason,
        new Block(old.n(), old.mean(), old.deviation()),
        new Block(fresh.n(), fresh.mean(), fresh.deviation()),
        ratio.ratio(),
        ratioChance,
        means.statistic(),
        means.chance(),
        advice(scatterDiffers, grew, means.chance() < CHANCE_THAT_TELLS));
  }

  private static VarianceRatio ratio(Summary larger, Summary smaller) {
    return VarianceRatio.of(
        larger.deviation(), larger.n() - 1, smaller.deviation(), smaller.n() - 1);
  }

  private static Advice advice(boolean scatterDiffers, boolean grew, boolean meanMoved) {
    if (scatterDiffers && grew) {
      return Advice.KEEP_SCATTER_GREW;
    }
    if (meanMoved) {
      return Advice.KEEP_MEAN_MOVED;
    }
    return scatterDiffers ? Advice.REPLACE : Advice.POOL;
  }
}
