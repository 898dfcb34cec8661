package org.quietline.assess;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.quietline.assess.ControlHistory.Entry;

/**
 * Which stream each of several control results belongs to.
 *
 * @param of the number of its stream, from 0, for each result
 * @param count how many streams there are
 */
record StreamNumbers(List<Integer> of, int count) {
  StreamNumbers {
    of = List.copyOf(of);
  }

  static StreamNumbers of(List<Entry> entries) {
    List<List<String>> streams = new ArrayList<>();
    List<Integer> numbers = new ArrayList<>();
    for (Entry entry : entries) {
      List<String> stream = List.of(entry.instrument(), entry.material());
      if (!streams.contains(stream)) {
        streams.add(stream);
      }
      numbers.add(streams.indexOf(stream));
    }
    return new StreamNumbers(numbers, streams.size());
  }

  /** Values less the mean of each stream. */
  double[] centred(double[] values) {
    double[] sums = new double[count];
    int[] sizes = new int[count];
    for (int i = 0; i < values.length; i++) {
      sums[of.get(i)] += values[i];
      sizes[of.get(i)]++;
    }
    double[] centred = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      centred[i] = values[i] - sums[of.get(i)] / sizes[of.get(i)];
    }
    return centred;
  }

  /** A predictor, and one for each stream that is one there and zero elsewhere. */
  double[][] beside(List<Double> predictor) {
    double[][] points = new double[predictor.size()][1 + count];
    for (int i = 0; i < points.length; i++) {
      Arrays.fill(points[i], 0);
      points[i][0] = predictor.get(i);
      points[i][1 + of.get(i)] = 1;
    }
    return points;
  }
}
