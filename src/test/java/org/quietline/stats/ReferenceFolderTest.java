package org.quietline.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReferenceFolderTest {
  @Test
  void everyCaseIsThereAndNamesItsSource() {
    List<Path> files = Reference.files();
    assertEquals(35, files.size());
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
            .filter(r -> r.at("/provenance").asText().equals("computed by recompute.py"))
            .toList();
    assertEquals(13, computed.size());
    for (Reference reference : computed) {
      assertFalse(reference.at("/expression").asText().isBlank());
      assertFalse(reference.tolerance() > 1e-3);
    }
  }
}
