package org.quietline.intake;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.quietline.bench.Acid;
import org.quietline.bench.Method;
import org.quietline.bench.Unit;

/**
 * Says why a unit does not convert, and which one was probably meant. A near spelling is never
 * taken for the unit: whether "%" is by mass or by volume only the bench can know.
 */
final class UnitWords {
  private static final List<Unit> KNOWN =
      List.of("% mass", "g/kg", "mg/g", "mg/kg", "ppm", "mg KOH/g", "\u00B5L", "mL").stream()
          .map(Unit::new)
          .toList();

  /** Other spellings, in small letters without spaces, brackets and dots. */
  private static final Map<String, String> OTHERWISE =
      Map.ofEntries(
          Map.entry("%", "% mass"),
          Map.entry("percent", "% mass"),
          Map.entry("wt%", "% mass"),
          Map.entry("%wt", "% mass"),
          Map.entry("w%", "% mass"),
          Map.entry("%w/w", "% mass"),
          Map.entry("m%", "% mass"),
          Map.entry("%m/m", "% mass"),
          Map.entry("mass%", "% mass"),
          Map.entry("g/100g", "% mass"),
          Map.entry("kohmg/g", "mg KOH/g"),
          Map.entry("mgkoh/goil", "mg KOH/g"),
          Map.entry("ug/g", "mg/kg"),
          Map.entry("ppmw", "ppm"),
          Map.entry("ppmw/w", "ppm"),
          Map.entry("ppmm/m", "ppm"));

  private static final Pattern WITH_BASIS =
      Pattern.compile("(.+?)\\s+as\\s+(\\p{L}+)(\\s+acid)?", Pattern.CASE_INSENSITIVE);

  private UnitWords() {}

  /** A unit written in a row that does not convert to the method's. */
  static Unusable doesNotConvert(Unit written, Method method) {
    Unit wanted = method.unit();
    return new Unusable(
        "unit",
        written.symbol(),
        Excerpt.quoted(written.symbol())
            + " does not convert to the unit of "
            + method.key()
            + why(written, wanted)
            + "; write "
            + String.join(" or ", wanted.writable().stream().map(Unit::symbol).toList())
            + ", or leave the field empty where it is "
            + wanted
            + ".");
  }

  /** What is known beyond that, in brackets; may be empty. */
  private static String why(Unit written, Unit wanted) {
    Optional<Unit> meant = meant(written);
    if (meant.isPresent() && meant.get().factorTo(wanted).isPresent()) {
      return " (did you mean " + meant.get() + "?)";
    }
    if (meant(wanted).isPresent()) {
      return " (did you mean " + meant(wanted).get() + " in bench.toml?)";
    }
    boolean fraction = wanted.isPlainMassFraction();
    if (isByVolume(written) && (fraction || wanted.basis().isPresent())) {
      return " (ppm is by mass here, and parts by volume do not convert)";
    }
    if (fraction && written.basis().isPresent()) {
      return " (the method names no basis; write basis = \""
          + written.basis().get().key()
          + "\" into it in bench.toml if it holds)";
    }
    if (fraction && written.isAcidNumber()) {
      return " (an acid number converts only to free fatty acid, and only where the method in"
          + " bench.toml names its basis)";
    }
    if (wanted.isAcidNumber() && written.isPlainMassFraction()) {
      return " (a mass fraction converts to acid number only with its basis)";
    }
    return "";
  }

  /**
   * The known unit that a spelling comes near; empty for a known unit and for a unit of its own.
   */
  static Optional<Unit> meant(Unit written) {
    if (written.isKnown()) {
      return Optional.empty();
    }
    Matcher parts = WITH_BASIS.matcher(written.symbol());
    if (parts.matches()) {
      Optional<Unit> fraction = near(parts.group(1));
      return Acid.parse(parts.group(2).toLowerCase(Locale.ROOT))
          .flatMap(acid -> fraction.flatMap(unit -> unit.as(acid)));
    }
    return near(written.symbol());
  }

  private static Optional<Unit> near(String symbol) {
    String bare = bare(symbol);
    return KNOWN.stream()
        .filter(unit -> bare(unit.symbol()).equals(bare))
        .findFirst()
        .or(() -> Optional.ofNullable(OTHERWISE.get(bare)).map(Unit::new));
  }

  private static String bare(String symbol) {
    return symbol
        .toLowerCase(Locale.ROOT)
        .replaceAll("[\\s\\h().]", "")
        .replace('\u00B5', 'u')
        .replace('\u03BC', 'u');
  }

  private static boolean isByVolume(Unit written) {
    return bare(written.symbol()).matches("(ppm|%)(v|vol|v/v)");
  }
}
