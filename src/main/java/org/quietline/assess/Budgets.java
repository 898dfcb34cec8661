package org.quietline.assess;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The components and uncertainty budgets of one method, each fitted once and when first asked for.
 */
final class Budgets {
  private final Records records;
  private final List<OutsideDifference> outside;
  private final Map<Records.StreamKey, Answer<SplitModel>> models = new LinkedHashMap<>();
  private final Map<String, Answer<UncertaintyBudget>> budgets = new HashMap<>();

  Budgets(Records records, List<OutsideDifference> outside) {
    this.records = records;
    this.outside = outside;
    for (Records.StreamKey key : records.streams().keySet()) {
      models.put(key, SplitModel.of(records, key.instrument(), key.material()));
    }
  }

  /** Where the scatter of each control stream comes from. */
  List<Precision.Split> splits() {
    return models.entrySet().stream()
        .map(
            e ->
                new Precision.Split(
                    e.getKey().instrument(),
                    e.getKey().material().key(),
                    e.getValue().map(SplitModel::split)))
        .toList();
  }

  /** The budget of one instrument. */
  Answer<UncertaintyBudget> of(String instrument) {
    return budgets.computeIfAbsent(
        instrument,
        k ->
            UncertaintyBudget.of(
                records,
                k,
                models.entrySet().stream()
                    .filter(e -> e.getKey().instrument().equals(k))
                    .map(Map.Entry::getValue)
                    .toList(),
                outside.stream().filter(d -> d.instrument().equals(k)).toList()));
  }

  /** The statements of all instruments, in key order. */
  List<Uncertainty> statements() {
    return records.instruments().stream()
        .map(i -> new Uncertainty(i, of(i).map(UncertaintyBudget::statement)))
        .toList();
  }
}
