package org.quietline.intake;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.ReagentLot;
import org.quietline.bench.Storage;

/** The rows of {@code reagents.csv}. */
final class ReagentRows implements RowKind<ReagentLot> {
  static final Layout LAYOUT =
      new Layout(
          List.of("reagent_lot", "method"),
          List.of("received_on", "opened_on", "expires_on", "storage", "remark"),
          Set.of("opened_on", "expires_on", "storage"),
          List.of());

  private final Known<Method> methods;

  ReagentRows(Known<Method> methods) {
    this.methods = methods;
  }

  private record Key(String lot, String method) {}

  @Override
  public Layout layout() {
    return LAYOUT;
  }

  @Override
  public ReagentLot make(Row row) throws Unusable {
    String lot = row.need("reagent_lot");
    Method method = methods.need("method", row.need("method"));
    Optional<LocalDate> received = row.day("received_on");
    Optional<LocalDate> opened = row.day("opened_on");
    Optional<LocalDate> expires = row.day("expires_on");
    Optional<Storage> storage = storage(row.text("storage"));
    return row.build(
        () ->
            new ReagentLot(
                lot,
                method.key(),
                received,
                opened,
                expires,
                storage,
                row.text("remark"),
                row.origin()));
  }

  private static Optional<Storage> storage(Optional<String> word) throws Unusable {
    if (word.isEmpty()) {
      return Optional.empty();
    }
    Optional<Storage> storage = Storage.parse(word.get());
    if (storage.isEmpty()) {
      List<String> words = Arrays.stream(Storage.values()).map(Storage::key).toList();
      throw new Unusable(
          "storage",
          word.get(),
          Excerpt.quoted(word.get())
              + " is no kind of storage"
              + NearestName.hint(word.get(), words)
              + ".");
    }
    return storage;
  }

  @Override
  public Object keyOf(ReagentLot made) {
    return new Key(made.key(), made.method());
  }

  @Override
  public List<Part<ReagentLot>> parts() {
    return List.of(
        new Part<>("received_on", r -> r.receivedOn()),
        new Part<>("opened_on", r -> r.openedOn()),
        new Part<>("expires_on", r -> r.expiresOn()),
        new Part<>("storage", r -> r.storage().map(Storage::key)),
        new Part<>("remark", r -> r.remark()));
  }

  @Override
  public Origin originOf(ReagentLot made) {
    return made.origin();
  }
}
