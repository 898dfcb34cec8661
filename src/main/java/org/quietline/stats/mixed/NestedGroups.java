package org.quietline.stats.mixed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Which values belong together, in one to three nested levels, the outermost first.
 *
 * <p>A group is known by its labels from the outermost level down, so that label 1 within 1 and
 * label 1 within 2 are two groups, and labels need no order. Sizes may differ.
 */
public final class NestedGroups {
  private static final int MOST_LEVELS = 3;

  /** For each level and value the number of its group, in order of first appearance. */
  private final int[][] group;

  private final List<List<List<Integer>>> paths;

  private NestedGroups(int[][] group, List<List<List<Integer>>> paths) {
    this.group = group;
    this.paths = paths;
  }

  /**
   * Takes labels.
   *
   * @param labels for each level, the outermost first, a label for each value
   * @return the groups
   * @throws IllegalArgumentException if there are no levels or more than three, the levels differ
   *     in length, or the outermost has fewer than two groups
   */
  public static NestedGroups of(int[]... labels) {
    if (labels.length < 1 || labels.length > MOST_LEVELS) {
      throw new IllegalArgumentException("needs 1 to 3 nested levels, has " + labels.length);
    }
    int n = labels[0].length;
    int[][] group = new int[labels.length][n];
    List<List<List<Integer>>> paths = new ArrayList<>();
    for (int level = 0; level < labels.length; level++) {
      if (labels[level].length != n) {
        throw new IllegalArgumentException(
            n + " labels in level 0 but " + labels[level].length + " in level " + level);
      }
      Map<List<Integer>, Integer> known = new LinkedHashMap<>();
      for (int i = 0; i < n; i++) {
        List<Integer> path = new ArrayList<>();
        for (int l = 0; l <= level; l++) {
          path.add(labels[l][i]);
        }
        group[level][i] = known.computeIfAbsent(path, unused -> known.size());
      }
      paths.add(known.keySet().stream().map(List::copyOf).toList());
    }
    if (paths.get(0).size() < 2) {
      throw new IllegalArgumentException(
          "needs at least 2 groups in the outermost level, has " + paths.get(0).size());
    }
    return new NestedGroups(group, List.copyOf(paths));
  }

  /**
   * How many levels are nested.
   *
   * @return 1 to 3
   */
  public int levels() {
    return group.length;
  }

  /**
   * How many values are labelled.
   *
   * @return the number
   */
  public int size() {
    return group[0].length;
  }

  /**
   * The groups of a level in order of first appearance, each as its labels from the outermost level
   * down.
   *
   * @param level from 0, the outermost
   * @return the label paths
   * @throws IllegalArgumentException if there is no such level
   */
  public List<List<Integer>> paths(int level) {
    requireLevel(level);
    return paths.get(level);
  }

  void requireLevel(int level) {
    if (level < 0 || level >= group.length) {
      throw new IllegalArgumentException(
          "level must be 0 to " + (group.length - 1) + ", is " + level);
    }
  }

  /** For each value the number of its group. */
  int[] groupOf(int level) {
    return group[level];
  }

  int count(int level) {
    return paths.get(level).size();
  }

  /** All but one level; the levels inside keep their groups. */
  NestedGroups without(int level) {
    int[][] fewer = new int[group.length - 1][];
    for (int l = 0; l < fewer.length; l++) {
      fewer[l] = group[l < level ? l : l + 1];
    }
    List<List<List<Integer>>> fewerPaths = new ArrayList<>(paths);
    fewerPaths.remove(level);
    return new NestedGroups(fewer, fewerPaths);
  }

  /** The innermost groups within each group of a level, each with the rows of its values. */
  List<List<int[]>> cells(int level) {
    List<Map<Integer, List<Integer>>> found = new ArrayList<>();
    for (int i = 0; i < count(level); i++) {
      found.add(new LinkedHashMap<>());
    }
    int[] innermost = group[group.length - 1];
    for (int i = 0; i < size(); i++) {
      found.get(group[level][i]).computeIfAbsent(innermost[i], unused -> new ArrayList<>()).add(i);
    }
    return found.stream()
        .map(
            cells ->
                cells.values().stream()
                    .map(rows -> rows.stream().mapToInt(Integer::intValue).toArray())
                    .toList())
        .toList();
  }
}
