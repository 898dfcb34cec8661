package org.quietline.assess;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.quietline.bench.Method;
import org.quietline.bench.ReplicateKind;
import org.quietline.bench.Unit;

class FattyAcidTest {
  private static Method method(String key, String unit) {
    return new Method(
        key,
        key,
        new Unit(unit),
        2,
        2,
        ReplicateKind.RE_PREPARED,
        OptionalInt.empty(),
        Optional.empty(),
        Optional.empty(),
        Method.ShelfLife.NOT_SET,
        Optional.empty());
  }

  /** Five factors to the printed digit; hand tables of the trade give the same. */
  @Test
  void the_factor_follows_the_acid_that_the_unit_names() {
    assertEquals(1.9863, FattyAcid.acidNumberPerUnit(method("free-fatty-acid", "% mass")), 5e-5);
    assertEquals(1.9863, FattyAcid.acidNumberPerUnit(method("f", "% mass as oleic")), 5e-5);
    assertEquals(1.9863, FattyAcid.acidNumberPerUnit(method("acid-number", "mg KOH/g")), 5e-5);
    assertEquals(0.19863, FattyAcid.acidNumberPerUnit(method("f", "g/kg as oleic")), 5e-6);
    assertEquals(2.1880, FattyAcid.acidNumberPerUnit(method("f", "% mass as palmitic")), 5e-5);
    assertEquals(2.8008, FattyAcid.acidNumberPerUnit(method("f", "% mass as lauric")), 5e-5);
    assertEquals(1.9722, FattyAcid.acidNumberPerUnit(method("f", "% mass as stearic")), 5e-5);
    assertEquals(2.0006, FattyAcid.acidNumberPerUnit(method("f", "% mass as linoleic")), 5e-5);
  }

  @Test
  void only_an_acid_number_and_a_free_fatty_acid_are_related() {
    Method number = method("acid-number", "mg KOH/g");
    Method free = method("free-fatty-acid", "% mass");
    Method glycerin = method("total-glycerin", "% mass");
    assertTrue(FattyAcid.areRelated(number, free));
    assertTrue(FattyAcid.areRelated(method("a", "% mass as oleic"), number));
    assertFalse(FattyAcid.areRelated(number, method("other", "mg KOH/g")));
    assertFalse(FattyAcid.areRelated(free, glycerin));
    assertEquals(Optional.empty(), FattyAcid.of(glycerin));
  }
}
