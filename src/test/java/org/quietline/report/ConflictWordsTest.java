package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.quietline.assess.Concern;
import org.quietline.assess.Findings;

/** Rows that claim to be the same one, from the files to the pages and the lists. */
class ConflictWordsTest {
  private static final String FIRST = "2026-10-07T09:00,total,PM-1,product,B-1,0.180,0.182,,,,RO,";
  private static final String OTHER = "2026-10-07T09:00,total,PM-1,product,B-1,0.190,0.192,,,,RO,";
  private static final String ID = "total/PM-1/B-1/2026-10-07T09:00/rows-in-conflict";
  private static final String BOTH =
      "B-1 of 7 Oct 2026, 09:00 (total on PM-1) stands in readings/a.csv, line 2, and in"
          + " readings/b.csv, line 2, with other content: readings 0.180 0.182 against"
          + " 0.190 0.192.";
  private static final String HOW =
      " The first counts. Settle it by a row in actions.csv with signal "
          + ID
          + ", a cause, and use_row readings/a.csv:2 or readings/b.csv:2.";

  @TempDir private Path folder;

  private WrittenBench bench;

  @BeforeEach
  void begin() {
    bench =
        new WrittenBench(folder)
            .calibrations("C-1,total,PM-1,2026-10-01T08:00")
            .rows(FIRST, "2026-10-20T09:00,total,PM-1,product,B-2,0.180,0.181,,,,RO,")
            .sheet("readings/b.csv", OTHER);
  }

  private static double value(Findings findings) {
    return findings.methods().get(0).replicates().get(0).deviation();
  }

  private static List<String> reasons(Findings findings) {
    return Reasons.of(findings.methods().get(0), findings);
  }

  private static JsonNode json(Findings findings) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    FindingsJson.write(findings, bytes);
    return new ObjectMapper().readTree(bytes.toByteArray());
  }

  private static List<CSVRecord> toSettle(Findings findings) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ToSettle.write(findings, bytes);
    String text = bytes.toString(StandardCharsets.UTF_8);
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(text, format)) {
      assertEquals(
          List.of("kind", "id", "file", "line", "field", "text", "what_to_do", "row"),
          parser.getHeaderNames());
      return parser.getRecords();
    }
  }

  @Test
  void anOpenConflictIsAConcernAndStandsOnEveryPageAndList() throws IOException {
    Findings findings = bench.findings();
    assertEquals(
        "4 rows: 3 taken in, 0 met before, 0 set aside, 1 in conflict",
        IntakeWords.counts(findings.accounting()));
    assertTrue(
        reasons(findings)
            .contains(
                "B-1 of 7 Oct 2026, 09:00 (total on PM-1) stands in two rows with different"
                    + " content; the first counts until a person chooses."),
        reasons(findings).toString());
    assertTrue(text(LastPage.of(findings)).contains(BOTH + HOW));
    assertTrue(ScreenLines.of(findings).contains(BOTH + HOW));
    JsonNode root = json(findings);
    assertEquals(1, root.at("/intake/inConflict").asInt());
    assertEquals(ID, root.at("/conflicts/0/id").asText());
    assertEquals("open", root.at("/conflicts/0/status").asText());
    assertTrue(root.at("/conflicts/0/useRow").isNull());
    assertEquals(2, root.at("/conflicts/0/line").asInt());
    List<CSVRecord> settle = toSettle(findings);
    assertEquals(1, settle.size());
    assertEquals(
        List.of(
            "conflict", ID, "readings/b.csv", "2", "readings", "0.190 0.192", BOTH + HOW, OTHER),
        settle.get(0).toList());
  }

  @Test
  void anActionThatChoosesTheOtherRowSettlesItAndTheOtherRowCounts() throws IOException {
    bench.rows(FIRST).sheet("readings/b.csv", OTHER.replace("0.192", "0.193"));
    assertEquals(0.002 / Math.sqrt(2), value(bench.findings()), 1e-12);
    bench.actions("2026-10-21T09:00," + ID + ",Typed from the wrong vial,readings/b.csv:2,RO");
    Findings findings = bench.findings();
    assertEquals(0.003 / Math.sqrt(2), value(findings), 1e-12);
    assertEquals(List.of(), findings.idleActions());
    assertTrue(
        findings.methods().get(0).verdict().concerns().stream()
            .noneMatch(Concern.RowsInConflict.class::isInstance));
    String settled =
        BOTH.replace("0.192", "0.193")
            + " Settled by RO on 21 October 2026: readings/b.csv, line 2, holds (Typed from the"
            + " wrong vial).";
    assertTrue(
        text(LastPage.of(findings)).contains(settled), text(LastPage.of(findings)).toString());
    JsonNode root = json(findings);
    assertEquals("settled", root.at("/conflicts/0/status").asText());
    assertEquals("RO", root.at("/conflicts/0/decidedBy").asText());
    assertEquals(1, root.at("/intake/inConflict").asInt());
    assertEquals(List.of(), toSettle(findings));
  }

  @Test
  void aChoiceMadeLaterDoesNotChangeAnEarlierReview() {
    bench.actions("2026-11-02T09:00," + ID + ",Typed from the wrong vial,readings/b.csv:2,RO");
    assertTrue(bench.findings("2026-10").across().conflicts().get(0).open());
    bench.rows(FIRST, "2026-11-03T09:00,total,PM-1,product,B-9,0.180,0.181,,,,RO,");
    assertFalse(bench.findings("2026-11").across().conflicts().get(0).open());
    assertFalse(bench.findings("2026-11").across().conflicts().get(0).inPeriod());
  }

  @Test
  void anActionThatChoosesNoRowInConflictIsToldWithTheRowsThereAre() {
    bench.actions(
        "2026-10-21T09:00," + ID + ",Typed from the wrong vial,readings/b.csv:3,RO",
        "2026-10-21T10:00," + ID + ",Typed from the wrong vial,,RO",
        "2026-10-21T11:00,"
            + ID.replace("B-1", "B-7")
            + ",Typed from the wrong vial,readings/b.csv:2,RO",
        "2026-10-21T12:00," + ID.replace("rows-in-conflict", "lot-not-recorded") + ",Lost,,RO");
    Findings findings = bench.findings();
    assertEquals(
        List.of(
            "actions.csv, line 2: use_row names readings/b.csv, line 3, which is no row of the"
                + " conflict "
                + ID
                + ", so it closes nothing. Write readings/a.csv:2 or readings/b.csv:2.",
            "actions.csv, line 3: use_row is empty, and the conflict "
                + ID
                + " needs the row that holds, so it closes nothing. Write readings/a.csv:2 or"
                + " readings/b.csv:2.",
            "actions.csv, line 4: the conflict "
                + ID.replace("B-1", "B-7")
                + " is not among those found, so it closes nothing. Copy the id from"
                + " findings.json.",
            "actions.csv, line 5: the question "
                + ID.replace("rows-in-conflict", "lot-not-recorded")
                + " is not among those found, so it closes nothing. Copy the id from"
                + " findings.json."),
        findings.idleActions().stream().map(a -> IntakeWords.idle(a, findings)).toList());
    assertTrue(findings.across().conflicts().get(0).open());
  }

  @Test
  void rowsInConflictThatOnlyACorrectedSheetMendsAreNeverSteady() throws IOException {
    bench
        .sheet("readings/b.csv")
        .calibrations("C-1,total,PM-1,2026-10-01T08:00", "C-1,total,PM-1,2026-10-02T08:00");
    Findings findings = bench.findings();
    String sentence =
        "calibrations.csv, line 3, calibrated_at: the same row stands in calibrations.csv, line 2"
            + " with other content: calibrated_at is \"2026-10-01T08:00\" there and"
            + " \"2026-10-02T08:00\" here. The first one stays; correct the wrong one.";
    assertTrue(text(LastPage.of(findings)).contains(sentence));
    assertFalse(findings.steady());
    assertEquals(1, json(findings).at("/conflictsToMend").size());
    assertEquals(
        List.of("conflict", "", "calibrations.csv", "3", "calibrated_at", "2026-10-02T08:00"),
        toSettle(findings).get(0).toList().subList(0, 6));
    assertTrue(
        IntakeWords.alarms(findings)
            .contains(
                "1 row beside the results says something else than a row met before; correct the"
                    + " wrong one of each, see the last pages."));
  }

  @Test
  void conversionsArePrintedWithTheirFactorAndCounted() throws IOException {
    bench.rows(
        FIRST.replace("0.180,0.182,,", "1800,1820,mg/kg,"),
        FIRST.replace("09:00", "10:00").replace("0.180,0.182,,", "1.8,1.8,g/kg,"),
        FIRST.replace("09:00", "11:00").replace("0.180,0.182,,", "1700,1720,mg/kg,"));
    Findings findings = bench.sheet("readings/b.csv").findings();
    List<String> last = text(LastPage.of(findings));
    assertTrue(
        last.contains("total: 2 results written in mg/kg, multiplied by 0.0001 to % mass."),
        last.toString());
    assertTrue(last.contains("total: 1 result written in g/kg, multiplied by 0.1 to % mass."));
    JsonNode made = json(findings).at("/intake/conversions");
    assertEquals(2, made.size());
    assertEquals(
        0,
        new BigDecimal("0.1")
            .compareTo(
                made.get(0)
                    .get("factor")
                    .decimalValue()
                    .max(made.get(1).get("factor").decimalValue())));
  }

  @Test
  void copiesAreSummarised() throws IOException {
    bench.sheet("readings/b.csv", FIRST);
    JsonNode copies = json(bench.findings()).at("/intake/copies");
    assertEquals(1, copies.size());
    assertEquals("readings/b.csv", copies.get(0).get("file").asText());
    assertEquals("readings/a.csv", copies.get(0).get("firstFile").asText());
    assertEquals(1, copies.get(0).get("rows").asInt());
  }

  @Test
  void everythingToSettleStandsInOneList() throws IOException {
    bench
        .sheet("readings/b.csv")
        .rows(
            FIRST.replace(",RO,", ",RO,1"),
            FIRST.replace("09:00", "10:00").replace(",RO,", ",RO,4"),
            FIRST.replace("09:00", "11:00").replace("0.180", "=1+1"))
        .actions("2026-10-21T09:00,total/PM-1/QC/2026-10-07T09:00/beyond-action-limit,Bubble,,RO")
        .settings("colour = 3");
    List<CSVRecord> lines = toSettle(bench.findings());
    assertEquals(
        List.of("contradiction", "set-aside", "setting", "action"),
        lines.stream().map(l -> l.get("kind")).toList());
    assertEquals(
        List.of(
            "contradiction",
            "PM-1/2026-10-07/2-3/sequence-gap",
            "readings/a.csv",
            "3",
            "sequence-gap",
            "readings/a.csv, line 3: before number 4 of PM-1, numbers 2 to 3 are missing; the row"
                + " before is of 7 Oct 2026, 09:00 (readings/a.csv, line 2).",
            "Find the missing rows, or say why there are none. Or answer it by a row in actions.csv"
                + " with this id as signal and a cause.",
            ""),
        lines.get(0).toList());
    assertEquals("'=1+1", lines.get(1).get("text"));
    assertEquals("4", lines.get(1).get("line"));
  }

  private static List<String> text(Page page) {
    return page.blocks().stream()
        .filter(Block.Paragraph.class::isInstance)
        .map(b -> ((Block.Paragraph) b).text())
        .toList();
  }
}
