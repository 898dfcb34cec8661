package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.assess.Concern;
import org.quietline.assess.Findings;
import org.quietline.assess.MethodFindings;
import org.quietline.assess.Slip;
import org.quietline.assess.Slip.Candidate;
import org.quietline.assess.Slip.Source;
import org.quietline.assess.Slip.What;
import org.quietline.assess.Slips;
import org.quietline.assess.Verdict;
import org.quietline.bench.Action;
import org.quietline.bench.Method;
import org.quietline.bench.Origin;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Reading;
import org.quietline.bench.Result;
import org.quietline.bench.Role;
import org.quietline.bench.Unit;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Step;
import org.quietline.report.Block.Table;

class SlipSectionTest {
  private static final Method METHOD = Invented.method("acid-number", "Acid number", "mg KOH/g", 3);
  private static final LocalDateTime AT = LocalDateTime.of(2026, 10, 14, 9, 12);

  private static Result result(String sample, String... readings) {
    List<Reading> numbers = new ArrayList<>();
    for (String reading : readings) {
      numbers.add(new Reading.Measured(new BigDecimal(reading)));
    }
    return new Result(
        AT,
        "acid-number",
        "PM-1",
        Role.PRODUCT,
        sample,
        numbers,
        numbers,
        new Unit("mg KOH/g"),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new Origin("readings/a.csv", 17));
  }

  private static Candidate whole(What what, double factor, double value) {
    return new Candidate(
        what, OptionalInt.empty(), OptionalInt.empty(), factor, OptionalDouble.of(value));
  }

  private static Slip slip(
      Slip.Evidence evidence, Optional<Action> closing, boolean excluded, Candidate... candidates) {
    Result result = result("B-1003", "2.82", "0.281");
    return new Slip(
        QuestionId.of(result, candidates[0].what().check()),
        result,
        Optional.of(result("B-1004", "0.300", "0.302")),
        List.of(candidates),
        evidence,
        true,
        excluded,
        closing);
  }

  private static Slip.Distance distance(Source source) {
    return new Slip.Distance(source, 61, 0.281, 141.2, 4.96, Optional.empty());
  }

  private static final Candidate TEN =
      new Candidate(
          What.POWER_OF_TEN, OptionalInt.of(1), OptionalInt.empty(), 10, OptionalDouble.of(0.282));

  private static Slip open() {
    return slip(distance(Source.OTHER_READING), Optional.empty(), false, TEN);
  }

  private static Findings findings(Slips slips) {
    MethodFindings base = Invented.bench().methods().get(3);
    List<Concern> concerns =
        slips.open().isEmpty() ? List.of() : List.of(new Concern.LooksLikeSlips(slips.open()));
    MethodFindings found =
        new MethodFindings(
            METHOD,
            Verdict.of(concerns),
            base.replicates(),
            base.people(),
            base.streams(),
            base.drift(),
            base.precision(),
            base.capability(),
            base.outOfDate(),
            base.dates(),
            slips);
    return Invented.findings("bench", Invented.accounting(0), List.of(found));
  }

  private static List<Block> section(Slips slips) {
    return SlipSection.of(findings(slips).methods().get(0));
  }

  private static String sentence(Slips slips) {
    return ((Paragraph) section(slips).get(0)).text();
  }

  @Test
  void each_kind_of_slip_has_its_words() {
    assertEquals("reading 1: 10 times too large (0.282)", words(TEN));
    assertEquals("1 000 times too small (0.282)", words(whole(What.POWER_OF_TEN, 0.001, 0.282)));
    assertEquals(
        "an acid number in place of a fatty acid (0.142)",
        words(whole(What.ACID_NUMBER_FOR_FATTY_ACID, 1.9863, 0.142)));
    assertEquals(
        "a fatty acid in place of an acid number (0.560)",
        words(whole(What.FATTY_ACID_FOR_ACID_NUMBER, 0.5034, 0.56)));
    assertEquals("with twice the volume (0.141)", words(whole(What.DOUBLE_VOLUME, 2, 0.141)));
    assertEquals("with half the volume (0.564)", words(whole(What.HALF_VOLUME, 0.5, 0.564)));
    assertEquals("exchanged with B-1004 (0.301)", words(whole(What.SAMPLES_EXCHANGED, 1, 0.301)));
    assertEquals(
        "reading 2: exchanged with reading 1 of B-1004 (0.300)",
        words(
            new Candidate(
                What.READINGS_EXCHANGED,
                OptionalInt.of(2),
                OptionalInt.of(1),
                1,
                OptionalDouble.of(0.3))));
    assertEquals("copied from B-1004, the row before", words(COPIED));
  }

  private static final Candidate COPIED =
      new Candidate(
          What.COPIED, OptionalInt.empty(), OptionalInt.empty(), 1, OptionalDouble.empty());

  private static String words(Candidate candidate) {
    return SlipWords.candidate(candidate, open(), METHOD);
  }

  @Test
  void each_evidence_has_its_words() {
    assertEquals(
        "the other reading: about 0.281; 141 deviations away, limit 5.0",
        SlipWords.evidence(distance(Source.OTHER_READING), METHOD));
    assertEquals(
        "the same sample tested again: about 0.281; 141 deviations away, limit 5.0",
        SlipWords.evidence(distance(Source.SAME_SAMPLE), METHOD));
    assertEquals(
        "acid-number of the sample: about 0.281; 7.5 deviations away, limit 5.0",
        SlipWords.evidence(
            new Slip.Distance(
                Source.RELATED_METHOD, 60, 0.281, 7.5, 4.97, Optional.of(result("B", "0.3"))),
            METHOD));
    assertEquals(
        "other results of the control: about 0.281; 141 deviations away, limit 5.0",
        SlipWords.evidence(distance(Source.MATERIAL), METHOD));
    assertEquals(
        "samples of its kind: about 0.281; 141 deviations away, limit 5.0",
        SlipWords.evidence(distance(Source.SAME_KIND), METHOD));
    assertEquals(
        "samples of rare kinds: about 0.281; 141 deviations away, limit 5.0",
        SlipWords.evidence(distance(Source.SAME_ROLE), METHOD));
    assertEquals(
        "chance of such a repetition 0.2 %",
        SlipWords.evidence(new Slip.Coincidence(0.002), METHOD));
  }

  @Test
  void a_question_stands_in_a_short_table() {
    Action answer =
        new Action(
            AT.plusHours(1),
            open().id(),
            Optional.of("typed wrong"),
            Optional.empty(),
            false,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            new Origin("actions.csv", 2));
    List<Block> blocks =
        section(
            new Slips(
                List.of(
                    open(),
                    slip(new Slip.Coincidence(0.002), Optional.of(answer), false, COPIED),
                    slip(
                        distance(Source.SAME_KIND),
                        Optional.empty(),
                        true,
                        whole(What.FATTY_ACID_FOR_ACID_NUMBER, 0.5034, 0.56),
                        whole(What.HALF_VOLUME, 0.5, 0.564))),
                12,
                10));
    assertEquals(new Heading("Does any number look like a slip?"), blocks.get(0));
    String written = "B-1003: 2.82 and 0.281 mg KOH/g";
    assertEquals(
        List.of(
            Row.of(
                "14 Oct",
                written,
                "reading 1: 10 times too large (0.282)",
                "the other reading: about 0.281; 141 deviations away, limit 5.0",
                "open"),
            Row.of(
                "14 Oct",
                written,
                "copied from B-1004, the row before",
                "chance of such a repetition 0.2 %",
                "answered"),
            Row.of(
                "14 Oct",
                written,
                "a fatty acid in place of an acid number (0.560), or with half the volume (0.564)",
                "samples of its kind: about 0.281; 141 deviations away, limit 5.0",
                "taken out")),
        ((Table) blocks.get(1)).rows());
    assertEquals(
        "Each is a question, not a correction. 10 of 12 results could be judged; others have too"
            + " few to be held against, a bound or a zero.",
        ((Paragraph) blocks.get(2)).text());
  }

  @Test
  void a_long_list_is_cut_and_says_so() {
    List<Slip> many = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      many.add(open());
    }
    List<Block> blocks = section(new Slips(many, 12, 12));
    assertEquals(10, ((Table) blocks.get(1)).rows().size());
    assertEquals(
        "And 2 more numbers of the period; all are in findings.json. Each is a question, not a"
            + " correction. All of 12 results could be judged.",
        ((Paragraph) blocks.get(2)).text());
  }

  @Test
  void without_a_question_one_sentence_says_how_many_could_be_judged() {
    assertEquals(List.of(), section(Slips.NONE));
    assertEquals(
        "No number of the period looks like a slip of the pen. All of 1 result could be judged.",
        sentence(new Slips(List.of(), 1, 1)));
    assertEquals(
        "Slips of the pen: cannot say for any of 11 results, too few.",
        sentence(new Slips(List.of(), 11, 0)));
  }

  @Test
  void an_earlier_open_question_is_counted() {
    Slip s = open();
    Slip earlier =
        new Slip(
            s.id(),
            s.result(),
            s.partner(),
            s.candidates(),
            s.evidence(),
            false,
            false,
            s.closing());
    assertEquals(
        "No number of the period looks like a slip of the pen. All of 5 results could be judged."
            + " 1 earlier question is open, see findings.json.",
        sentence(new Slips(List.of(earlier), 5, 5)));
  }

  @Test
  void the_concern_has_a_reason_and_a_step_with_the_id() {
    Findings one = findings(new Slips(List.of(open()), 12, 12));
    assertEquals(
        List.of(
            "1 number of the period looks like a slip of the pen: B-1003 of 14 October 2026,"
                + " written 2.82 and 0.281 mg KOH/g, may be reading 1: 10 times too large (0.282); a"
                + " question, not a correction."),
        Reasons.of(one.methods().get(0), one));
    assertEquals(
        new Step(
            "Compare the number with the pad or the instrument, and answer in actions.csv.",
            "acid-number/PM-1/B-1003/2026-10-14T09:12/slip-in-value",
            "at the next session",
            false),
        Steps.of(one.methods().get(0)).get(0));
    Findings two = findings(new Slips(List.of(open(), open()), 12, 12));
    assertTrue(
        Reasons.of(two.methods().get(0), two)
            .get(0)
            .startsWith("2 numbers of the period look like slips of the pen, the first being B-"));
  }

  @Test
  void findings_name_candidates_and_evidence() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FindingsJson.write(findings(new Slips(List.of(open()), 12, 10)), out);
    String json = out.toString(StandardCharsets.UTF_8);
    String expected =
        """
              "slips" : [
                {
                  "id" : "acid-number/PM-1/B-1003/2026-10-14T09:12/slip-in-value",
                  "at" : "2026-10-14T09:12",
                  "instrument" : "PM-1",
                  "role" : "product",
                  "sample" : "B-1003",
                  "written" : "2.82 and 0.281 mg KOH/g",
                  "withSample" : "B-1004",
                  "withTakenAt" : "2026-10-14T09:12",
                  "candidates" : [
                    {
                      "what" : "power-of-ten",
                      "reading" : 1,
                      "factor" : 10.0,
                      "value" : 0.282
                    }
                  ],
                  "evidence" : {
                    "source" : "other-reading",
                    "results" : 61,
                    "expected" : 0.281,
                    "deviationsAway" : 141.2,
                    "limit" : 4.96
                  },
                  "inPeriod" : true,
                  "status" : "open",
                  "cause" : null,
                  "causeNote" : "no answer is recorded",
                  "file" : "readings/a.csv",
                  "line" : 17
                }
              ],
              "slipsJudged" : {
                "resultsInPeriod" : 12,
                "judged" : 10
              },
        """;
    assertTrue(squeezed(json).contains(squeezed(expected)), json);
  }

  private static String squeezed(String json) {
    return json.replaceAll("\\s+", " ");
  }
}
