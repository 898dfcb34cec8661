package org.quietline.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines counted by hand in the text below; the number at each line's end is its own. */
class TomlPlacesTest {
  private static final String TEXT =
      """
      # [[method]] in a comment               1
      name = "a # no comment [[method]]"    # 2
      text = ""\"
      [[method]]
      key = 1 \\""\"
      ""\"                                  # 6
      raw = '''
      [chart]
      ''' # 9
      list = [ 1, # ]
        "]", [ 2 ],
        ']' ]                               # 12
      [[method]]                            # 13
      key = "one"                           # 14
        "unit" = '%'                        # 15
      shelf.cold = 1                        # 16
      [method.more]                         # 17
      deep = 1                              # 18
      [[ method ]]                          # 19
      key = 'C:\\'                          # 20
      life = { a = 1, b = { c = 2 } }       # 21
      [[method.part]]                       # 22
      x = 1                                 # 23
      [[method.part]]                       # 24
      x = 2                                 # 25
      [chart] # [[method]]                    26
      w = 1""";

  @ParameterizedTest
  @CsvSource({
    "name, 2",
    "text, 3",
    "raw, 7",
    "list, 10",
    "list[2], 10",
    "method, 13",
    "method[0], 13",
    "method[0].key, 14",
    "method[0].unit, 15",
    "method[0].shelf, 16",
    "method[0].shelf.cold, 16",
    "method[0].more, 17",
    "method[0].more.deep, 18",
    "method[0].missing, 13",
    "method[1], 19",
    "method[1].key, 20",
    "method[1].life, 21",
    "method[1].life.b.c, 21",
    "method[1].part[0].x, 23",
    "method[1].part[1], 24",
    "method[1].part[1].x, 25",
    "chart, 26",
    "chart.w, 27",
    "method[2].key, 13",
    "nothing.at.all, 1",
    "'', 1",
  })
  void findsLines(String path, int line) {
    assertEquals(line, TomlPlaces.in(TEXT).line(path));
  }

  @Test
  void anEmptyTextHasOneLine() {
    assertEquals(1, TomlPlaces.in("").line("name"));
  }
}
