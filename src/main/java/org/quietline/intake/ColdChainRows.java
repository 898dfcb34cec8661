package org.quietline.intake;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.bench.Origin;
import org.quietline.bench.Storage;
import org.quietline.bench.Temperature;

/** The rows of {@code cold-chain.csv}. */
final class ColdChainRows implements RowKind<Temperature> {
  static final Layout LAYOUT =
      new Layout(
          List.of("taken_at", "place", "temperature_c"), List.of("remark"), Set.of(), List.of());

  private record Key(LocalDateTime at, String place) {}

  @Override
  public Layout layout() {
    return LAYOUT;
  }

  @Override
  public Temperature make(Row row) throws Unusable {
    LocalDateTime at = row.needTime("taken_at");
    String place = row.need("place");
    String kept = Storage.parse(place).map(Storage::key).orElse(place);
    BigDecimal celsius = row.needNumber("temperature_c");
    Optional<String> remark = row.text("remark");
    return row.build(() -> new Temperature(at, kept, celsius, remark, row.origin()));
  }

  @Override
  public Object keyOf(Temperature made) {
    return new Key(made.takenAt(), made.place());
  }

  @Override
  public List<Part<Temperature>> parts() {
    return List.of(
        new Part<>("temperature_c", t -> t.celsius()), new Part<>("remark", t -> t.remark()));
  }

  @Override
  public Origin originOf(Temperature made) {
    return made.origin();
  }
}
