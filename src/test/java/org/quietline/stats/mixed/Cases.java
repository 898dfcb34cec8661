package org.quietline.stats.mixed;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.StreamSupport;
import org.quietline.stats.Reference;

/** Reading the mixed-model cases. */
final class Cases {
  private Cases() {}

  static double[] numbers(Reference reference, String pointer) {
    return StreamSupport.stream(reference.at(pointer).spliterator(), false)
        .mapToDouble(Reference::number)
        .toArray();
  }

  static int[] labels(Reference reference, String pointer) {
    return StreamSupport.stream(reference.at(pointer).spliterator(), false)
        .mapToInt(JsonNode::asInt)
        .toArray();
  }

  /** Value, standard error and degrees of freedom. */
  static void check(
      Reference reference, Class<?> subject, String what, String pointer, StudentEstimate got) {
    reference.check(subject, what, pointer + "/0", got.value());
    reference.check(subject, what + ": standard error", pointer + "/1", got.standardError());
    reference.check(subject, what + ": degrees of freedom", pointer + "/2", got.degreesOfFreedom());
  }

  /** Components in the order of the file. */
  static void check(
      Reference reference, Class<?> subject, String what, String pointer, List<Double> got) {
    for (int i = 0; i < got.size(); i++) {
      String place = pointer + "/" + i;
      if (reference.number(place) == 0) {
        reference.check(subject, what + " " + i, place, got.get(i), 0);
      } else {
        reference.check(subject, what + " " + i, place, got.get(i));
      }
    }
  }
}
