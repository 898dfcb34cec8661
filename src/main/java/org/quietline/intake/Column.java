package org.quietline.intake;

/**
 * A column of a sheet as the settings name it: by its name in the header, or by its number.
 *
 * @param name the name as written; empty where the column is named by its number
 * @param number the number, counted from 1; 0 where it is named by its name
 */
record Column(String name, int number) {
  static Column named(String name) {
    return new Column(Excerpt.strip(name), 0);
  }

  static Column numbered(int number) {
    return new Column("", number);
  }

  /** Whether it is the column that stands at a place, counted from 0, under a name. */
  boolean isAt(int place, String nameThere) {
    return number == 0 ? name.equalsIgnoreCase(nameThere) : number == place + 1;
  }

  @Override
  public String toString() {
    return number == 0 ? name : Integer.toString(number);
  }
}
