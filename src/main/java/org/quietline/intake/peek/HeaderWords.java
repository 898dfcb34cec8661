package org.quietline.intake.peek;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Words that head a column, in English, German, French and Spanish, and what they can mean. */
final class HeaderWords {
  private static final Map<Field, Set<String>> WORDS = new EnumMap<>(Field.class);
  private static final Pattern UNIT = Pattern.compile("(.*?)\\s*(?:\\(([^)]+)\\)|\\[([^]]+)])\\s*");
  private static final Pattern BARE_UNIT =
      Pattern.compile("(?i)(?:^|(?<=\\s))(?:% ?mass|mg ?KOH/g|mg/kg|mg/g|g/kg|ppm)(?=\\s|$)");
  private static final Pattern NUMBERED =
      Pattern.compile(
          "(?:r|x|m|rep|replicate|reading|result|value|test|measurement|messwert|wert|"
              + "lecture|mesure|valeur|lectura|medida|valor|wdh)[ _.#-]{0,2}(\\d{1,2})");

  /** The fields whose name is that of a column in the plain sheet. */
  private static final Set<Field> OWN = EnumSet.range(Field.TAKEN_AT, Field.SEQUENCE);

  static {
    words(
        Field.TAKEN_AT,
        "date, day, time, datetime, date time, date and time, timestamp, taken at, taken, measured"
            + " at, measured, tested at, datum, tag, uhrzeit, zeit, zeitpunkt, datum zeit, date"
            + " heure, heure, jour, fecha, hora, fecha hora, día");
    words(
        Field.METHOD,
        "method, test, assay, analysis, parameter, determination, methode, prüfung, analyse,"
            + " verfahren, méthode, essai, paramètre, método, ensayo, análisis, prueba, parámetro");
    words(
        Field.INSTRUMENT,
        "instrument, device, apparatus, analyser, analyzer, meter, gerät, messgerät, appareil,"
            + " aparato, equipo, instrumento");
    words(
        Field.ROLE,
        "role, type, kind, sample type, sample kind, category, art, probenart, typ, rolle, rôle,"
            + " genre, tipo, clase");
    words(
        Field.SAMPLE,
        "sample, sample id, sample no, vial, batch, batch no, specimen, lot, probe, probennummer,"
            + " probe nr, charge, échantillon, flacon, lote, muestra");
    words(
        Field.READINGS,
        "reading, result, value, measurement, messwert, wert, ergebnis, lecture, mesure, valeur,"
            + " résultat, lectura, medida, valor, resultado");
    words(Field.UNIT, "unit, units, einheit, unité, unidad");
    words(
        Field.CALIBRATION,
        "calibration, cal, cal id, cal no, kalibrierung, étalonnage, calibración");
    words(
        Field.REAGENT_LOT,
        "reagent lot, reagent, lot, kit lot, lot no, reagenz, reagenzcharge, lot réactif, réactif,"
            + " lote reactivo, reactivo");
    words(
        Field.OPERATOR,
        "operator, by, user, analyst, tech, technician, initials, tester, bediener, prüfer, kürzel,"
            + " bearbeiter, opérateur, analyste, operador, analista");
    words(
        Field.REMARK,
        "remark, remarks, note, notes, comment, comments, bemerkung, kommentar, notiz, remarque,"
            + " commentaire, observación, observaciones, nota, comentario");
    words(Field.SESSION, "session, run, series, sitzung, serie, série, sesión");
    words(
        Field.TEMPERATURE_C,
        "temperature, temp, temp c, temperature c, temperatur, température, temperatura");
    words(
        Field.SEQUENCE,
        "sequence, seq, no, nr, n°, #, number, line, lfd nr, numéro, número, num, index");
    words(
        Field.RESULT,
        "result id, result no, test no, test id, run, run no, id, measurement id, determination,"
            + " messung, messung nr, essai no, ensayo no");
    words(
        Field.READING_NUMBER,
        "reading no, reading number, rep, replicate, repeat, n, i, wiederholung, wdh, répétition,"
            + " réplica, repetición, no, nr, #");
    words(
        Field.AVERAGE,
        "average, mean, avg, mittelwert, mittel, durchschnitt, moyenne, media, promedio");
    words(
        Field.SPREAD,
        "sd, std, stdev, s, rsd, cv, range, spread, difference, diff, spannweite, écart, rango");
  }

  private HeaderWords() {}

  private static void words(Field field, String words) {
    WORDS.put(field, Set.of(words.split(", ")));
  }

  static boolean isKnown(String header) {
    return !fields(header).isEmpty();
  }

  /** The fields a header can mean; the plain sheet's own names mean one thing only. */
  static Set<Field> fields(String header) {
    String plain = plain(header);
    for (Field field : Field.values()) {
      if (OWN.contains(field) && field.key().equals(header.toLowerCase(Locale.ROOT))) {
        return EnumSet.of(field);
      }
    }
    Set<Field> found = EnumSet.noneOf(Field.class);
    WORDS.forEach(
        (field, words) -> {
          if (words.contains(plain)) {
            found.add(field);
          }
        });
    if (readingNumber(header).isPresent()) {
      found.add(Field.READINGS);
    }
    return found;
  }

  /** The number of a column such as R2 or Reading 2. */
  static Optional<Integer> readingNumber(String header) {
    Matcher m = NUMBERED.matcher(plain(header));
    return m.matches() ? Optional.of(Integer.valueOf(m.group(1))) : Optional.empty();
  }

  /** A name without the unit that stands in it. */
  static String bare(String header) {
    return BARE_UNIT.matcher(header).replaceAll(" ").strip();
  }

  /** The unit in brackets behind a name, or one that stands in it without. */
  static Optional<String> unit(String header) {
    Matcher m = UNIT.matcher(header);
    if (m.matches()) {
      return Optional.of(Line.stripped(m.group(2) == null ? m.group(3) : m.group(2)));
    }
    Matcher plain = BARE_UNIT.matcher(header);
    return plain.find() ? Optional.of(plain.group().strip()) : Optional.empty();
  }

  /** The name in small letters, without unit, strokes and points. */
  private static String plain(String header) {
    Matcher m = UNIT.matcher(header);
    String name = m.matches() && !m.group(1).isEmpty() ? m.group(1) : header;
    List<String> words = new ArrayList<>();
    for (String word : name.toLowerCase(Locale.ROOT).split("[\\s_./:-]+", -1)) {
      if (!word.isEmpty()) {
        words.add(word);
      }
    }
    return String.join(" ", words);
  }
}
