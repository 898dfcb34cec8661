package org.quietline.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.junit.jupiter.api.Test;

class SymmetricFactorTest {
  private static double[][] copy(double[][] matrix) {
    return new Array2DRowRealMatrix(matrix).getData();
  }

  @Test
  void agreesWithDecompositionByAnotherMethod() {
    Random random = new Random(8);
    for (int trial = 0; trial < 20; trial++) {
      int n = 1 + trial % 6;
      double[][] a = new double[n][n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          a[i][j] = random.nextGaussian() + (i == j ? 6 : 0);
          a[j][i] = a[i][j];
        }
      }
      LUDecomposition lu = new LUDecomposition(new Array2DRowRealMatrix(a));
      SymmetricFactor factor = SymmetricFactor.inPlace(copy(a));
      double[][] inverse = lu.getSolver().getInverse().getData();
      double[] right = random.doubles(n).toArray();
      double[] solution = new Array2DRowRealMatrix(inverse).operate(right);
      assertArrayEquals(solution, factor.solve(right), 1e-13);
      for (int i = 0; i < n; i++) {
        assertArrayEquals(inverse[i], factor.inverse()[i], 1e-13);
      }
      assertEquals(Math.log(lu.getDeterminant()), factor.logDeterminant(), 1e-12);
      assertTrue(factor.isDefinite(0));
      assertEquals(0, factor.negatives());
    }
  }

  @Test
  void countsNegativeEigenvalues() {
    SymmetricFactor factor =
        SymmetricFactor.inPlace(new double[][] {{2, 0, 0}, {3, 1, 0}, {0, 0, -5}});
    assertEquals(2, factor.negatives());
    assertEquals(2, factor.pivot(0));
    assertEquals(-3.5, factor.pivot(1));
    assertFalse(factor.isDefinite(0));
    SymmetricFactor small = SymmetricFactor.inPlace(new double[][] {{2, 0}, {0, 1e-3}});
    assertTrue(small.isDefinite(1e-4));
    assertFalse(small.isDefinite(1e-3));
    assertFalse(SymmetricFactor.inPlace(new double[][] {{Double.NaN}}).isDefinite(0));
  }
}
