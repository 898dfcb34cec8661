package org.quietline.intake.peek;

/**
 * How far bytes are valid UTF-8 (RFC 3629).
 *
 * @param signs how many signs of more than one byte are valid
 * @param spoilt how many bytes above 127 belong to no valid sign
 * @param middle how many of those are from 80 to 9F
 */
record Utf8(int signs, int spoilt, int middle) {
  static Utf8 in(FileHead head) {
    int signs = 0;
    int spoilt = 0;
    int middle = 0;
    int i = 0;
    while (i < head.length()) {
      int b = head.at(i);
      int more = b < 0x80 ? 0 : b >= 0xC2 && b < 0xE0 ? 1 : b < 0xE0 ? -1 : b < 0xF0 ? 2 : 3;
      if (b < 0x80) {
        i++;
      } else if (more < 0 || b > 0xF4 || !follow(head, i, more)) {
        boolean cutByTheHead = !head.isWhole() && i + 4 > head.length();
        spoilt += cutByTheHead ? 0 : 1;
        middle += !cutByTheHead && b < 0xA0 ? 1 : 0;
        i++;
      } else {
        signs++;
        i += more + 1;
      }
    }
    return new Utf8(signs, spoilt, middle);
  }

  private static boolean follow(FileHead head, int start, int more) {
    if (start + more >= head.length()) {
      return false;
    }
    for (int k = 1; k <= more; k++) {
      if ((head.at(start + k) & 0xC0) != 0x80) {
        return false;
      }
    }
    return true;
  }
}
