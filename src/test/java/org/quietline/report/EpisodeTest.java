package org.quietline.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.quietline.assess.StreamFindings;

class EpisodeTest {
  private static final StreamFindings STREAM = Invented.glycerin().streams().get(0);

  @Test
  void neighboursAreOneStoryUnderOneLetter() {
    List<Episode> episodes = Episode.of(STREAM, LocalDateTime.MIN);
    assertEquals(2, episodes.size());
    assertEquals("a", episodes.get(0).letter());
    assertFalse(episodes.get(0).open());
    assertEquals("b", episodes.get(1).letter());
    assertTrue(episodes.get(1).open());
    assertEquals(
        STREAM.signals().size(),
        episodes.get(0).signals().size() + episodes.get(1).signals().size());
    assertEquals(
        "weighted mean beyond its limit, result beyond the action limit", episodes.get(1).rules());
  }

  @Test
  void earlierOnesCanBeLeftOut() {
    List<Episode> late = Episode.of(STREAM, Invented.NOW.minusMonths(1));
    assertEquals(1, late.size());
    assertEquals("a", late.get(0).letter());
  }

  @Test
  void lettersGoOnAfterZ() {
    assertEquals("z", Episode.letter(25));
    assertEquals("aa", Episode.letter(26));
    assertEquals("ab", Episode.letter(27));
    assertEquals("ba", Episode.letter(52));
  }

  @Test
  void aQuietStreamHasNone() {
    assertEquals(List.of(), Episode.of(Invented.acid().streams().get(0), LocalDateTime.MIN));
  }
}
