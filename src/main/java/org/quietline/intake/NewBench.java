package org.quietline.intake;

import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The files of a bench that begins: settings made of method cards, and sheets with nothing but a
 * header. They are read without a remark, and nothing in them can be mistaken for data.
 *
 * @param name the bench's name
 * @param zone the time zone a person chose, if one did
 * @param machineZone the time zone of the computer, written to be checked where nobody chose
 * @param cards the method cards, at least one
 */
public record NewBench(String name, Optional<ZoneId> zone, ZoneId machineZone, List<String> cards) {

  /** The cards a bench begins with where nobody chooses others. */
  public static final List<String> USUAL_CARDS =
      List.of("acid-number", "free-fatty-acid", "total-glycerin");

  static final int READINGS = 2;
  static final int CALIBRATORS = 2;

  /** Checks the cards and the name. */
  public NewBench {
    cards = List.copyOf(cards);
    if (cards.isEmpty() || !MethodCards.NAMES.containsAll(cards)) {
      throw new IllegalArgumentException("no such cards: " + cards);
    }
    if (name.isBlank() || name.chars().anyMatch(Character::isISOControl)) {
      throw new IllegalArgumentException("no name of a bench: " + name);
    }
  }

  /**
   * Every method card there is.
   *
   * @return their names
   */
  public static List<String> knownCards() {
    return MethodCards.NAMES;
  }

  /**
   * The files.
   *
   * @return their content by their name in the folder; {@code bench.toml}, which makes a folder a
   *     bench, comes last
   */
  public Map<String, String> files() {
    Map<String, String> files = new LinkedHashMap<>();
    files.put(FolderListing.READINGS + "/results.csv", ResultRows.LAYOUT.headerLine(READINGS));
    files.put("calibrations.csv", CalibrationRows.LAYOUT.headerLine(CALIBRATORS));
    files.put("reagents.csv", ReagentRows.LAYOUT.headerLine(0));
    files.put("actions.csv", ActionRows.LAYOUT.headerLine(0));
    files.put("outside.csv", OutsideRows.LAYOUT.headerLine(0));
    files.put(SettingsNotes.FILE, new NewSettings(this).text());
    return files;
  }
}
