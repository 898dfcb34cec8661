package org.quietline.stats.mixed;

import java.util.List;

/**
 * Nested groups as blocks: the groups of one level are independent, and each is seen through its
 * innermost cells, {@code √n} times their means.
 */
final class NestedBlocks {
  private NestedBlocks() {}

  /** All levels random. */
  static Blocks of(FixedPart fixed, NestedGroups groups) {
    Blocks blocks = new Blocks(fixed, groups.levels());
    if (groups.levels() == 0) {
      int[] all = java.util.stream.IntStream.range(0, fixed.observations()).toArray();
      blocks.add(all, new double[0][], new double[0][][]);
      return blocks;
    }
    for (List<int[]> cells : groups.cells(0)) {
      double[][] unit = identity(cells.size());
      add(blocks, groups, 0, cells, unit);
    }
    return blocks;
  }

  /**
   * The levels inside one random, that level and those outside it fixed and projected out: each of
   * its groups is seen through the contrasts of its cells.
   *
   * @param inner the fixed part within the groups of that level
   */
  static Blocks within(FixedPart inner, NestedGroups groups, int level) {
    int first = level + 1;
    Blocks blocks = new Blocks(inner, groups.levels() - first);
    for (List<int[]> cells : groups.cells(level)) {
      add(blocks, groups, first, cells, contrasts(cells));
    }
    return blocks;
  }

  /** Adds a group seen through combinations (rows) of its normalised cells. */
  private static void add(
      Blocks blocks, NestedGroups groups, int first, List<int[]> cells, double[][] combinations) {
    int[] rows = cells.stream().flatMapToInt(java.util.Arrays::stream).toArray();
    double[][] units = new double[cells.size()][rows.length];
    int place = 0;
    for (int c = 0; c < cells.size(); c++) {
      for (int i = 0; i < cells.get(c).length; i++) {
        units[c][place++] = 1 / Math.sqrt(cells.get(c).length);
      }
    }
    double[][][] shapes = new double[groups.levels() - first][][];
    for (int k = 0; k < shapes.length; k++) {
      double[][] shape = shape(groups.groupOf(first + k), cells);
      shapes[k] =
          Blocks.product(Blocks.product(combinations, shape), Blocks.transposed(combinations));
    }
    blocks.add(rows, Blocks.product(combinations, units), shapes);
  }

  /** {@code √(na·nb)} for two cells of one group. */
  private static double[][] shape(int[] group, List<int[]> cells) {
    int r = cells.size();
    double[][] shape = new double[r][r];
    for (int a = 0; a < r; a++) {
      for (int b = 0; b < r; b++) {
        if (group[cells.get(a)[0]] == group[cells.get(b)[0]]) {
          shape[a][b] = Math.sqrt((double) cells.get(a).length * cells.get(b).length);
        }
      }
    }
    return shape;
  }

  private static double[][] identity(int n) {
    double[][] unit = new double[n][n];
    for (int i = 0; i < n; i++) {
      unit[i][i] = 1;
    }
    return unit;
  }

  /** Orthonormal rows orthogonal to the roots of the cell sizes, after Helmert. */
  private static double[][] contrasts(List<int[]> cells) {
    double[][] rows = new double[cells.size() - 1][cells.size()];
    double before = cells.get(0).length;
    for (int c = 1; c < cells.size(); c++) {
      double size = cells.get(c).length;
      double length = Math.sqrt(before * size * (before + size));
      for (int a = 0; a < c; a++) {
        rows[c - 1][a] = Math.sqrt(cells.get(a).length) * size / length;
      }
      rows[c - 1][c] = -Math.sqrt(size) * before / length;
      before += size;
    }
    return rows;
  }
}
