package org.quietline.assess;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.quietline.assess.ControlHistory.Entry;
import org.quietline.assess.Story.Onset;
import org.quietline.assess.Story.Size;
import org.quietline.bench.Calibration;
import org.quietline.bench.ChartSettings.Weight;

/** What do a method's signals mean together: what began when, how large it is, what it touches. */
final class Stories {
  /**
   * How many of the latest stories are compared with patterns though all their signals are closed.
   */
  private static final int WITH_HINTS = 12;

  private final Records records;
  private final ControlHistory history;
  private final List<Calibration> calibrations;

  private Stories(Records records, ControlHistory history) {
    this.records = records;
    this.history = history;
    this.calibrations = records.calibrations();
  }

  /**
   * The stories of a method up to now, in the order of their first signals.
   *
   * @param records the method's records
   * @param streams its control streams
   * @param free signals that are on no control stream
   */
  static List<Story> ask(Records records, List<StreamFindings> streams, List<Signal> free) {
    List<Signal> signals =
        Stream.concat(streams.stream().flatMap(s -> s.signals().stream()), free.stream())
            .sorted(
                Comparator.comparing((Signal s) -> s.id().at())
                    .thenComparing(s -> s.id().material())
                    .thenComparing(s -> s.id().rule()))
            .toList();
    Stories stories = new Stories(records, ControlHistory.of(records, streams));
    List<StoryGroup> groups = stories.group(signals);
    Set<StoryGroup> late =
        Set.copyOf(
            groups.stream()
                .sorted(Comparator.comparing(StoryGroup::last).reversed())
                .limit(WITH_HINTS)
                .toList());
    return groups.stream()
        .map(group -> stories.tell(group, groups, group.isOpen() || late.contains(group)))
        .toList();
  }

  private List<StoryGroup> group(List<Signal> signals) {
    StretchFinder finder = new StretchFinder(history);
    List<StoryGroup> groups = new ArrayList<>();
    for (Signal signal : signals) {
      Stretch stretch = finder.find(signal);
      StoryGroup joined = new StoryGroup(history, calibrations, stretch);
      List<StoryGroup> same = groups.stream().filter(g -> g.goesOnWith(stretch)).toList();
      same.forEach(joined::take);
      int at = same.isEmpty() ? groups.size() : groups.indexOf(same.get(0));
      groups.removeAll(same);
      groups.add(at, joined);
    }
    for (StoryGroup free : groups.stream().filter(StoryGroup::isFree).toList()) {
      groups.stream()
          .filter(g -> !g.isFree() && g.spans(free))
          .findFirst()
          .ifPresent(
              g -> {
                g.take(free);
                groups.remove(free);
              });
    }
    return groups;
  }

  private Story tell(StoryGroup group, List<StoryGroup> groups, boolean withHints) {
    List<Signal> signals = group.stretches().stream().map(Stretch::signal).toList();
    boolean stops = signals.stream().anyMatch(s -> s.open() && s.weight() == Weight.STOP);
    List<Size> sizes = new StorySizes(history).of(group);
    List<StoryGroup> others = groups.stream().filter(g -> g != group).toList();
    Answer<Hints> hints =
        withHints
            ? HintFinder.find(history, group, others, calibrations)
            : Answer.cannotSay(
                "needs an open signal, or to be one of the latest " + WITH_HINTS + " stories");
    return new Story(
        signals.get(0).id(),
        group.instrument(),
        signals,
        onset(group),
        group.last(),
        group.resetBy().map(Calibration::key),
        sizes,
        group.isOpen(),
        stops,
        hints,
        stops
            ? Optional.of(new LookBackFinder(records, history, group, hints, sizes).find())
            : Optional.empty());
  }

  private Onset onset(StoryGroup group) {
    LocalDateTime first = group.first();
    List<Entry> counted = history.counted(group.instrument());
    int earlier = ControlHistory.before(counted, first);
    Optional<LocalDateTime> before =
        earlier == 0 ? Optional.empty() : Optional.of(counted.get(earlier - 1).at());
    return new Onset(first, before, group.earliest().onsetFrom());
  }
}
