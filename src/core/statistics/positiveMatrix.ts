/** The inverse of a symmetric positive matrix, and the logarithm of its determinant. */
export interface PositiveInverse {
  readonly inverse: number[][];
  readonly logDeterminant: number;
}

/**
 * Inverts a symmetric positive matrix by Cholesky's triangle: the matrix is L L′, so its inverse is M′ M with
 * M = L⁻¹, and its determinant the square of the product of L's diagonal. No pivots are needed, and for the few
 * rows we have nothing is faster.
 */
export function invertPositive(matrix: readonly (readonly number[])[]): PositiveInverse {
  const size = matrix.length;
  const triangle = matrix.map((row) => [...row]);
  let logDeterminant = 0;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i][j];
      for (let k = 0; k < j; k++) rest -= triangle[i][k] * triangle[j][k];
      triangle[i][j] = i === j ? Math.sqrt(rest) : rest / triangle[j][j];
    }
    logDeterminant += 2 * Math.log(triangle[i][i]);
  }

  const inverted = matrix.map((row) => row.map(() => 0));
  for (let column = 0; column < size; column++) {
    for (let i = column; i < size; i++) {
      let rest = i === column ? 1 : 0;
      for (let k = column; k < i; k++) rest -= triangle[i][k] * inverted[k][column];
      inverted[i][column] = rest / triangle[i][i];
    }
  }
  const inverse = matrix.map((row, i) =>
    row.map((_, j) => {
      let sum = 0;
      for (let k = Math.max(i, j); k < size; k++) sum += inverted[k][i] * inverted[k][j];
      return sum;
    }),
  );
  return { inverse, logDeterminant };
}

/** u′ M v, for a matrix and two vectors. */
export function bilinear(
  u: readonly number[],
  matrix: readonly (readonly number[])[],
  v: readonly number[],
): number {
  let sum = 0;
  for (let i = 0; i < u.length; i++) {
    for (let j = 0; j < v.length; j++) sum += u[i] * matrix[i][j] * v[j];
  }
  return sum;
}
