package org.quietline.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.quietline.bench.ChartSettings;
import org.quietline.bench.ChartSettings.LimitsFrom;
import org.quietline.bench.ChartSettings.RestartAt;
import org.quietline.bench.Rule;

/**
 * Reads {@code [chart]} of {@code bench.toml}. A value that cannot be used leaves its default in
 * place and is reported.
 */
final class ChartEntry {
  private final Entry entry;

  private ChartEntry(Entry entry) {
    this.entry = entry;
  }

  static ChartSettings read(Entry entry) {
    ChartSettings chart = new ChartEntry(entry).read();
    entry.noteUnknownKeys();
    return chart;
  }

  private ChartSettings read() {
    ChartSettings usual = ChartSettings.DEFAULTS;
    return new ChartSettings(
        baselineResults(usual.baselineResults()),
        limitsFrom(usual.limitsFrom()),
        weighting(usual.weighting()),
        rules("stop-rules", usual.stopRules()),
        rules("notice-rules", usual.noticeRules()),
        restartAt(usual.restartAt()));
  }

  private int baselineResults(int usual) {
    String key = "baseline-results";
    try {
      OptionalInt value = entry.whole(key);
      if (value.isPresent() && value.getAsInt() < 5) {
        throw entry.wrong(key, "it must be at least 5");
      }
      return value.orElse(usual);
    } catch (Unusable e) {
      return insteadOf(key, e, usual, Integer.toString(usual));
    }
  }

  private LimitsFrom limitsFrom(LimitsFrom usual) {
    String key = "limits-from";
    try {
      Optional<String> word = entry.text(key);
      if (word.isEmpty()) {
        return usual;
      }
      List<String> ways = Arrays.stream(LimitsFrom.values()).map(LimitsFrom::key).toList();
      return LimitsFrom.parse(word.get())
          .orElseThrow(() -> entry.wrong(key, "it must be one of " + Excerpt.list(ways)));
    } catch (Unusable e) {
      return insteadOf(key, e, usual, usual.key());
    }
  }

  private Set<RestartAt> restartAt(Set<RestartAt> usual) {
    String key = "restart-at";
    List<String> names = Arrays.stream(RestartAt.values()).map(RestartAt::key).toList();
    try {
      Optional<List<String>> words = entry.words(key);
      if (words.isEmpty()) {
        return usual;
      }
      Set<RestartAt> restarts = EnumSet.noneOf(RestartAt.class);
      for (String word : words.get()) {
        restarts.add(
            RestartAt.parse(word)
                .orElseThrow(
                    () ->
                        entry.wrong(
                            key, Excerpt.quoted(word) + " is not one of " + Excerpt.list(names))));
      }
      return restarts;
    } catch (Unusable e) {
      return insteadOf(key, e, usual, Excerpt.list(usual.stream().map(RestartAt::key).toList()));
    }
  }

  private double weighting(double usual) {
    String key = "weighting";
    try {
      Optional<BigDecimal> value = entry.number(key);
      boolean usable =
          value.isEmpty()
              || (value.get().doubleValue() >= 0.01 && value.get().compareTo(BigDecimal.ONE) <= 0);
      if (!usable) {
        throw entry.wrong(key, "it must be from 0.01 to 1");
      }
      return value.map(BigDecimal::doubleValue).orElse(usual);
    } catch (Unusable e) {
      return insteadOf(key, e, usual, Double.toString(usual));
    }
  }

  private List<Rule> rules(String key, List<Rule> usual) {
    try {
      Optional<List<String>> words = entry.words(key);
      return words.isEmpty() ? usual : known(key, words.get());
    } catch (Unusable e) {
      List<String> names = usual.stream().map(Rule::key).toList();
      return insteadOf(key, e, usual, names.isEmpty() ? "no rule" : Excerpt.list(names));
    }
  }

  private List<Rule> known(String key, List<String> words) {
    List<Rule> rules = new ArrayList<>();
    List<String> names = Arrays.stream(Rule.values()).map(Rule::key).toList();
    for (String word : words) {
      Optional<Rule> rule = Rule.parse(word);
      if (rule.isEmpty()) {
        String meant =
            NearestName.of(word, names).map(n -> " (did you mean " + n + "?)").orElse("");
        entry.note(
            key,
            Excerpt.quoted(word)
                + " is no rule"
                + meant
                + "; the rules are "
                + Excerpt.list(names)
                + ". It was left out; the other rules of the list hold.");
      } else if (!rules.contains(rule.get())) {
        rules.add(rule.get());
      }
    }
    return rules;
  }

  private <T> T insteadOf(String key, Unusable e, T usual, String shown) {
    entry.note(key, e.sentence() + " The default, " + shown + ", was used.");
    return usual;
  }
}
