package org.quietline.intake;

import java.util.List;
import org.quietline.bench.Material;

/** Control materials are known by their method and their key together. */
final class Materials {
  private Materials() {}

  static String nameOf(String method, String key) {
    return method + "/" + key;
  }

  static Material need(Known<Material> materials, String field, String method, String key)
      throws Unusable {
    String name = nameOf(method, key);
    if (materials.get(name).isEmpty()) {
      throw new Unusable(field, key, why(materials, method, key));
    }
    return materials.need(field, name);
  }

  private static String why(Known<Material> materials, String method, String key) {
    List<String> ofMethod =
        materials.entries().stream()
            .filter(m -> m.method().equals(method))
            .map(Material::key)
            .toList();
    return materials
        .whyRefused(nameOf(method, key))
        .map(why -> Excerpt.quoted(key) + " cannot be used: " + why)
        .orElseGet(
            () ->
                Excerpt.quoted(key)
                    + " is no control material of "
                    + Excerpt.of(method)
                    + NearestName.hint(key, ofMethod)
                    + ".");
  }
}
