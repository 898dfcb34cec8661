package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.quietline.bench.Accounting;
import org.quietline.bench.Accounting.Copies;
import org.quietline.bench.Origin;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;

/**
 * On random folders of readings: rows = taken in + met before + set aside + in conflict, and every
 * row that was written can be written again from what was kept.
 */
class AccountingPropertyTest {
  private static final String HEADER =
      "taken_at,method,instrument,role,sample,reading_1,reading_2,unit,operator,remark";

  private static final List<String> DEFECTS =
      List.of(
          "2026-02-30T09:12,total-glycerin,PM-1,product,B-7,0.180,0.182,,RO,",
          "2026-10-14T09:12,toal-glycerin,PM-1,product,B-7,0.180,0.182,,RO,",
          "2026-10-14T09:12,total-glycerin,PM-1,product,B-7,O.180,0.182,,RO,",
          "2026-10-14T09:12,total-glycerin,PM-1,product,B-7,0,180,0,182,,RO,",
          "2026-10-14T09:12,total-glycerin,PM-1,product,B-7",
          "2026-10-14T09:12,total-glycerin,PM-1,product,B-7,0.180,0.182,,RO,\"open",
          "2026-10-14T09:12,total-glycerin,PM-1,product,B-7,0.180,0.182,,RO,\"open\" end",
          "2026-10-14T09:12,total-glycerin,PM-1,product,B-7,0.180,0.182,%,RO,",
          "no row at all",
          "\"");

  @TempDir private Path folder;

  @RepeatedTest(60)
  void everyRowIsCountedOnceAndCanBeWrittenAgain(RepetitionInfo repetition) {
    SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
    List<String> written = new ArrayList<>();
    TempBench bench = new TempBench(folder);
    int files = 1 + random.nextInt(4);
    for (int i = 0; i < files; i++) {
      List<String> rows = rows(random, written);
      bench.put("readings/" + i + ".csv", HEADER + "\n" + String.join("\n", rows) + "\n");
      written.addAll(rows);
    }
    Intake intake = bench.read();
    Accounting accounting = intake.accounting();
    assertEquals(written.size(), accounting.rows());
    assertEquals(
        written.size(),
        accounting.takenIn()
            + accounting.metBefore()
            + accounting.rowsAside()
            + accounting.rowsInConflict());
    assertEquals(counts(written), counts(rebuilt(intake)));
  }

  @Test
  void theRandomFoldersHoldEveryKindOfRow() {
    long copies = 0;
    long aside = 0;
    long conflicts = 0;
    for (int seed = 1; seed <= 60; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      List<String> written = new ArrayList<>();
      TempBench bench = new TempBench(folder.resolve("s" + seed));
      int files = 1 + random.nextInt(4);
      for (int i = 0; i < files; i++) {
        List<String> rows = rows(random, written);
        bench.put("readings/" + i + ".csv", HEADER + "\n" + String.join("\n", rows) + "\n");
        written.addAll(rows);
      }
      Accounting accounting = bench.read().accounting();
      copies += accounting.metBefore();
      aside += accounting.rowsAside();
      conflicts += accounting.rowsInConflict();
    }
    assertTrue(
        copies > 100 && aside > 100 && conflicts > 100, copies + " " + aside + " " + conflicts);
  }

  /** New rows, rows written before, such rows with another reading, and rows nobody can read. */
  private static List<String> rows(SplittableRandom random, List<String> before) {
    List<String> rows = new ArrayList<>();
    int count = random.nextInt(30);
    for (int i = 0; i < count; i++) {
      int kind = random.nextInt(10);
      List<String> known = before.stream().filter(row -> row.startsWith("2026-11")).toList();
      if (kind < 5 || known.isEmpty()) {
        rows.add(fresh(random));
      } else if (kind < 7) {
        rows.add(known.get(random.nextInt(known.size())));
      } else if (kind < 8) {
        rows.add(known.get(random.nextInt(known.size())).replace(",0.1", ",0.2"));
      } else {
        rows.add(DEFECTS.get(random.nextInt(DEFECTS.size())));
      }
    }
    return rows;
  }

  private static String fresh(SplittableRandom random) {
    return String.format(
        "2026-11-%02dT%02d:%02d,total-glycerin,PM-1,product,B-%d,0.1%02d,%s,%s,%s,%s",
        1 + random.nextInt(28),
        random.nextInt(24),
        random.nextInt(60),
        random.nextInt(1000),
        random.nextInt(100),
        random.nextBoolean() ? "" : "<0.1" + random.nextInt(100),
        random.nextInt(5) == 0 ? "mg/kg" : "% mass",
        random.nextBoolean() ? "RO" : "",
        random.nextInt(6) == 0 ? "\"shaken, twice\"" : "");
  }

  private static Map<String, Long> counts(List<String> rows) {
    return rows.stream().collect(Collectors.groupingBy(row -> row, Collectors.counting()));
  }

  private static List<String> rebuilt(Intake intake) {
    Map<Origin, String> kept = new HashMap<>();
    intake.bench().results().forEach(result -> kept.put(result.origin(), written(result)));
    intake.bench().conflicts().forEach(c -> kept.put(c.other().origin(), written(c.other())));
    List<String> rows = new ArrayList<>(kept.values());
    for (Copies run : intake.accounting().copies()) {
      for (int i = 0; i < run.rows(); i++) {
        rows.add(kept.get(new Origin(run.first().file(), run.first().line() + i)));
      }
    }
    intake.accounting().aside().stream()
        .filter(aside -> aside.rows() > 0)
        .forEach(aside -> rows.add(aside.raw()));
    return rows;
  }

  private static String written(Result result) {
    List<Reading> readings = result.writtenReadings();
    String remark = result.remark().orElse("");
    return String.join(
        ",",
        result.takenAt().toString(),
        result.method(),
        result.instrument(),
        result.role().key(),
        result.sample(),
        readings.get(0).toString(),
        readings.size() > 1 ? readings.get(1).toString() : "",
        result.writtenUnit().symbol(),
        result.operator().orElse(""),
        remark.contains(",") ? '"' + remark + '"' : remark);
  }
}
