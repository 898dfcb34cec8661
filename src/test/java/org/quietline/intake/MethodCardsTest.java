package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.quietline.bench.Accounting.SetAside;
import org.quietline.bench.Method;
import org.quietline.bench.Method.ProductLimits;
import org.quietline.bench.Method.ShelfLife;
import org.quietline.bench.RepeatPolicy;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Unit;

class MethodCardsTest {
  private static final Path CARDS = Path.of("shared", "methods");
  private static final String D6751 = "ASTM D6751, check the edition";

  @TempDir private Path folder;
  private TempBench bench;

  @BeforeEach
  void makeBench() {
    bench = new TempBench(folder);
  }

  private TempBench methods(String... entries) {
    return bench.put(
        "bench.toml",
        """
        name = "Invented bench"
        timezone = "Europe/Dublin"

        [[method]]
        """
            + String.join("\n[[method]]\n", entries)
            + "\n");
  }

  private Method only(String entry) {
    Intake intake = methods(entry).read();
    assertEquals(List.of(), intake.accounting().settingsAside());
    return intake.bench().settings().methods().get(0);
  }

  private static Optional<ProductLimits> atMost(String limit) {
    return Optional.of(
        new ProductLimits(
            Optional.empty(), Optional.of(new BigDecimal(limit)), Optional.of(D6751)));
  }

  private static Method card(
      String key,
      String title,
      String unit,
      int decimals,
      Optional<ProductLimits> limits,
      Optional<String> partOf) {
    return new Method(
        key,
        title,
        new Unit(unit),
        decimals,
        2,
        ReplicateKind.RE_READ,
        RepeatPolicy.ONE_MORE,
        OptionalInt.of(30),
        Optional.empty(),
        limits,
        ShelfLife.NOT_SET,
        Optional.empty(),
        partOf,
        Optional.empty(),
        Optional.empty());
  }

  @Test
  void every_card_says_what_the_trade_says_and_leaves_to_the_plant_what_is_the_plant_s() {
    assertEquals(
        List.of(
            card(
                "acid-number",
                "Acid number, kit, photometric",
                "mg KOH/g",
                2,
                atMost("0.50"),
                Optional.empty()),
            card(
                "free-fatty-acid",
                "Free fatty acid, kit, photometric",
                "% mass as oleic",
                2,
                Optional.empty(),
                Optional.empty()),
            card(
                "total-glycerin",
                "Total glycerin, kit, photometric",
                "% mass",
                3,
                atMost("0.240"),
                Optional.empty()),
            card(
                "free-glycerin",
                "Free glycerin, kit, photometric",
                "% mass",
                3,
                atMost("0.020"),
                Optional.of("total-glycerin"))),
        methods(
                "card = \"acid-number\"",
                "card = \"free-fatty-acid\"",
                "card = \"total-glycerin\"",
                "card = \"free-glycerin\"")
            .read()
            .bench()
            .settings()
            .methods());
    assertEquals(List.of(), bench.settingsAside());
  }

  @Test
  void the_folder_holds_the_known_cards_and_each_is_packed_as_it_lies_there() throws IOException {
    try (Stream<Path> files = Files.list(CARDS)) {
      Set<String> names = new HashSet<>();
      files
          .map(f -> f.getFileName().toString())
          .filter(name -> name.endsWith(".toml"))
          .forEach(name -> names.add(name.replace(".toml", "")));
      assertEquals(4, names.size());
      assertEquals(Set.copyOf(MethodCards.NAMES), names);
    }
    for (String name : MethodCards.NAMES) {
      String text = Files.readString(CARDS.resolve(name + ".toml"));
      assertEquals(SettingsFile.TOML.readTree(text), MethodCards.treeOf(name));
      assertEquals(name, MethodCards.treeOf(name).path("key").asText());
      for (String own : List.of("allowable-bias", "shelf-life-days", "published-repeatability")) {
        assertTrue(text.contains("\n#   " + own), name + " names " + own);
        assertTrue(MethodCards.treeOf(name).path(own).isMissingNode(), name + " leaves " + own);
      }
    }
  }

  @Test
  void what_the_entry_says_goes_before() {
    Method method =
        only(
            """
            card = "total-glycerin"
            key = "TG-2"
            title = "Total glycerin, second kit"
            decimals = 4
            replicates = 3
            replicate-kind = "re-prepared"
            calibration-valid-days = 14
            allowable-bias = 0.012
            """);
    assertEquals("TG-2", method.key());
    assertEquals("Total glycerin, second kit", method.title());
    assertEquals(4, method.decimals());
    assertEquals(3, method.replicates());
    assertEquals(ReplicateKind.RE_PREPARED, method.replicateKind());
    assertEquals(OptionalInt.of(14), method.calibrationValidDays());
    assertEquals(0.012, method.allowance().orElseThrow().at(1));
    assertEquals(atMost("0.240"), method.limits(), "the card's, where the entry is silent");
  }

  @Test
  void a_limit_of_one_s_own_does_not_carry_the_card_s_source() {
    ProductLimits limits =
        only("card = \"acid-number\"\nproduct-upper-limit = 0.40").limits().orElseThrow();
    assertEquals(Optional.of(new BigDecimal("0.40")), limits.upper());
    assertEquals(Optional.empty(), limits.source());
    assertEquals(
        atMost("0.5"),
        only("card = \"acid-number\"\nproduct-upper-limit = 0.5").limits(),
        "the same limit, written again");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "basis = \"palmitic\"|% mass as palmitic",
        "unit = \"% mass as lauric\"|% mass as lauric",
        "unit = \"% mass\"|% mass as oleic",
        "unit = \"g/kg\"; decimals = 1|g/kg as oleic",
        "unit = \"mg KOH/g\"; decimals = 2|mg KOH/g",
        "unit = \"g/kg\"; decimals = 1; basis = \"oleic\"|g/kg as oleic"
      })
  void the_basis_of_acidity_can_be_another(String lines, String unit) {
    String entry = "card = \"free-fatty-acid\"\n" + lines.replace("; ", "\n");
    assertEquals(new Unit(unit), only(entry).unit());
  }

  @Test
  void two_methods_can_be_made_of_one_card() {
    Intake intake =
        methods("card = \"acid-number\"", "card = \"acid-number\"\nkey = \"acid-number-2\"").read();
    assertEquals(List.of(), intake.accounting().settingsAside());
    assertEquals(
        List.of("acid-number", "acid-number-2"),
        intake.bench().settings().methods().stream().map(Method::key).toList());
  }

  @Test
  void a_part_finds_its_whole_under_whatever_key_or_does_without() {
    assertEquals(Optional.empty(), only("card = \"free-glycerin\"").partOf());
    assertEquals(
        Optional.of("TG"),
        methods("card = \"free-glycerin\"", "card = \"total-glycerin\"\nkey = \"TG\"")
            .read()
            .bench()
            .settings()
            .methods()
            .get(0)
            .partOf());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "card = \"total-glycerine\"|card|total-glycerine|\"total-glycerine\" is no method card (did"
            + " you mean total-glycerin?); there are acid-number, free-fatty-acid, total-glycerin,"
            + " free-glycerin.",
        "card = \"zinc\"|card|zinc|\"zinc\" is no method card; there are acid-number,"
            + " free-fatty-acid, total-glycerin, free-glycerin.",
        "card = 7|card|7|card is 7; it must be text in quotes.",
        "card = \"total-glycerin\"; unit = \"mg/kg\"|unit|mg/kg|The card total-glycerin is for %"
            + " mass; with another unit write decimals and product-upper-limit too.",
        "card = \"free-fatty-acid\"; unit = \"g/kg\"|unit|g/kg|The card free-fatty-acid is for %"
            + " mass; with another unit write decimals too.",
        "card = \"acid-number\"; unit = \"\"; decimals = 2; product-upper-limit = 1|unit|``|unit is"
            + " empty; write it or take the line out.",
        "card = \"acid-number\"|key|acid-number|There is a method \"acid-number\" already; each is"
            + " named once.",
      })
  void an_entry_that_cannot_be_used(String lines, String field, String text, String reason) {
    methods("card = \"acid-number\"", lines.replace("; ", "\n"));
    int line = field.equals("unit") ? 8 : field.equals("key") ? 6 : 7;
    assertEquals(
        List.of(
            new SetAside(
                "bench.toml", line, field, text, reason + " The method was set aside.", 1)),
        bench.settingsAside());
  }

  @Test
  void a_slip_beside_a_card_is_told_like_any_other() {
    methods("card = \"total-glycerin\"\nallowable-bais = 0.012");
    assertEquals(
        List.of(
            new SetAside(
                "bench.toml",
                6,
                "allowable-bais",
                "0.012",
                "\"allowable-bais\" is not a setting of a method (did you mean allowable-bias?). It"
                    + " was not used; the rest of the method was.",
                1)),
        bench.settingsAside());
  }

  @Test
  void the_fingerprint_of_the_settings_covers_the_cards_used() throws IOException {
    String one = methods("card = \"acid-number\"").read().settingsFingerprint();
    byte[] file = Files.readAllBytes(folder.resolve("bench.toml"));
    assertNotEquals(Fingerprint.shortOf(file), one);
    byte[] card = Files.readAllBytes(CARDS.resolve("acid-number.toml"));
    assertEquals(Fingerprint.shortOf(Fingerprint.joined(file, card)), one);
    bench.put("bench.toml", TempBench.SETTINGS);
    assertEquals(
        Fingerprint.shortOf(Files.readAllBytes(folder.resolve("bench.toml"))),
        bench.read().settingsFingerprint(),
        "without cards it is the file's own");
  }
}
