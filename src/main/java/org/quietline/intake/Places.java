package org.quietline.intake;

/**
 * Where the records of one neighbourhood stand, found by their hash. Rows come mostly in time
 * order, so a table for each day is small and near at hand; one table for all days would be missed
 * by every look into it, and a map with a key for each record would need three times the memory.
 *
 * <p>Open addressing: at each place a hash in the upper half and one more than the number of a
 * record in the lower half, or 0.
 */
final class Places {
  private static final int SPREAD = 0x9E37_79B9;

  private long[] places = new long[1 << 3];
  private int taken;

  /** The place at which to begin to look for a hash: the upper bits of a product are well mixed. */
  int start(int hash) {
    return (hash * SPREAD) >>> (Integer.numberOfLeadingZeros(places.length) + 1);
  }

  int next(int place) {
    return (place + 1) & (places.length - 1);
  }

  boolean isTaken(int place) {
    return places[place] != 0;
  }

  int hashAt(int place) {
    return (int) (places[place] >>> Integer.SIZE);
  }

  /** The number of the record at a place that is taken. */
  int recordAt(int place) {
    return (int) places[place] - 1;
  }

  /** Puts a record at a free place at which the search for its hash has ended. */
  void put(int place, int hash, int record) {
    places[place] = ((long) hash << Integer.SIZE) | (record + 1);
    taken++;
    if (2 * taken > places.length) {
      grow();
    }
  }

  private void grow() {
    long[] old = places;
    places = new long[2 * old.length];
    for (long entry : old) {
      if (entry != 0) {
        int place = start((int) (entry >>> Integer.SIZE));
        while (isTaken(place)) {
          place = next(place);
        }
        places[place] = entry;
      }
    }
  }
}
