package org.quietline.samples;

import java.time.LocalDate;
import java.util.List;

/** The reagent lots of the invented bench, and which of them was in use on a day. */
final class TidewickLots {
  /** The box whose printed date had passed when batches were tested with it. */
  static final String OLD_BOX = "TG-L10";

  private static final List<Lot> LOTS =
      List.of(
          lot("TG-L01", "total-glycerin", "2025-08-25", "2025-09-01", "2026-05-31"),
          lot("TG-L02", "total-glycerin", "2025-10-06", "2025-10-29", "2026-07-31"),
          lot("TG-L03", "total-glycerin", "2025-12-01", "2025-12-23", "2026-08-31"),
          new Lot(
              "TG-L04",
              "total-glycerin",
              "2026-01-26",
              "2026-02-18",
              "2026-10-31",
              "ambient",
              "refrigerator under repair"),
          lot("TG-L05", "total-glycerin", "2026-03-02", "2026-03-13", "2026-11-30"),
          lot("TG-L06", "total-glycerin", "2026-04-20", "2026-05-11", "2027-01-31"),
          lot("TG-L07", "total-glycerin", "2026-06-15", "2026-06-23", "2027-03-31"),
          lot("TG-L08", "total-glycerin", "2026-07-20", "2026-08-06", "2027-04-30"),
          lot("TG-L09", "total-glycerin", "2026-08-31", "2026-09-17", "2027-05-31"),
          new Lot(
              OLD_BOX,
              "total-glycerin",
              "2026-02-09",
              "2026-10-14",
              "2026-10-16",
              "refrigerated",
              "half-size box"),
          lot("AN-L01", "acid-number", "2025-08-25", "2025-09-01", "2026-08-31"),
          lot("AN-L02", "acid-number", "2025-11-03", "2025-11-26", "2026-11-30"),
          lot("AN-L03", "acid-number", "2026-02-02", "2026-02-17", "2027-01-31"),
          lot("AN-L04", "acid-number", "2026-04-27", "2026-05-12", "2027-04-30"),
          lot("AN-L05", "acid-number", "2026-07-20", "2026-08-05", "2027-07-31"),
          lot("FA-L01", "free-fatty-acid", "2026-09-14", "2026-09-25", "2027-03-31"));

  private TidewickLots() {}

  /** The lot opened last, except that a few batches of October went into the old box. */
  static String inUse(String method, LocalDate on, String role) {
    boolean oldBox =
        method.equals("total-glycerin")
            && role.equals("product")
            && !on.isBefore(LocalDate.of(2026, 10, 15))
            && !on.isAfter(LocalDate.of(2026, 10, 21));
    if (oldBox) {
      return OLD_BOX;
    }
    String found = "";
    for (Lot lot : LOTS) {
      boolean opened = !LocalDate.parse(lot.opened()).isAfter(on);
      if (opened && lot.method().equals(method) && !lot.key().equals(OLD_BOX)) {
        found = lot.key();
      }
    }
    return found;
  }

  static String sheet() {
    Sheet sheet = new Sheet("reagent_lot,method,received_on,opened_on,expires_on,storage,remark");
    for (Lot lot : LOTS) {
      sheet.add(
          lot.key(),
          lot.method(),
          lot.received(),
          lot.opened(),
          lot.expires(),
          lot.storage(),
          lot.remark());
    }
    return sheet.text();
  }

  private static Lot lot(
      String key, String method, String received, String opened, String expires) {
    return new Lot(key, method, received, opened, expires, "refrigerated", "");
  }

  private record Lot(
      String key,
      String method,
      String received,
      String opened,
      String expires,
      String storage,
      String remark) {}
}
