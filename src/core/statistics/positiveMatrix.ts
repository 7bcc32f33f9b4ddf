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
  triangle.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      const other = triangle[j]!;
      let rest = row[j]!;
      for (let k = 0; k < j; k++) rest -= row[k]! * other[k]!;
      row[j] = i === j ? Math.sqrt(rest) : rest / other[j]!;
    }
    logDeterminant += 2 * Math.log(row[i]!);
  });

  // The columns of L⁻¹, a list each.
  const inverted = matrix.map((_, column) => {
    const values = matrix.map(() => 0);
    for (let i = column; i < size; i++) {
      const row = triangle[i]!;
      let rest = i === column ? 1 : 0;
      for (let k = column; k < i; k++) rest -= row[k]! * values[k]!;
      values[i] = rest / row[i]!;
    }
    return values;
  });
  const inverse = inverted.map((one, i) =>
    inverted.map((other, j) => {
      let sum = 0;
      for (let k = Math.max(i, j); k < size; k++) sum += one[k]! * other[k]!;
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
  u.forEach((left, i) => {
    const row = matrix[i]!;
    v.forEach((right, j) => (sum += left * row[j]! * right));
  });
  return sum;
}
