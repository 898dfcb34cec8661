package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReferenceFolderTest {
  @Test
  void everyCaseIsThereAndNamesItsSource() {
    List<Path> files = Reference.files();
    assertEquals(228, files.size());
    for (Path file : files) {
      Reference reference = Reference.read(file);
      assertEquals(file.getFileName().toString(), reference.at("/id").asText() + ".json");
      assertFalse(reference.at("/source").asText().isBlank(), file.toString());
      assertFalse(reference.at("/provenance").asText().isBlank(), file.toString());
      assertFalse(reference.at("/expected").isEmpty(), file.toString());
    }
  }

  @Test
  void recomputedCasesSayHowAndHowClosely() {
    List<Reference> computed =
        Reference.files().stream()
            .map(Reference::read)
            .filter(r -> r.at("/provenance").asText().startsWith("computed by recompute"))
            .toList();
    assertEquals(113, computed.size());
    for (Reference reference : computed) {
      assertFalse(reference.at("/expression").asText().isBlank(), reference.at("/id").asText());
      boolean simulated =
          (reference.at("/title").asText() + reference.at("/source").asText()).contains("simulat");
      assertTrue(simulated || reference.tolerance() <= 1e-3, reference.at("/id").asText());
    }
  }
}
