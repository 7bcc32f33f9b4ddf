/**
 * Ordinary least squares by the normal equations, solved by elimination: slow and plain, to check the closed
 * forms against. Returns coefficients, their standard errors and the residual degrees of freedom.
 */
export function leastSquares(rows: readonly (readonly number[])[], y: readonly number[]) {
  const k = rows[0]!.length;
  const columns = [...Array(k).keys()];
  const inverse = invert(
    columns.map((i) => columns.map((j) => total(rows.map((row) => row[i]! * row[j]!)))),
  );
  const moments = columns.map((i) => total(rows.map((row, r) => row[i]! * y[r]!)));
  const coefficients = inverse.map((line) => total(line.map((cell, j) => cell * moments[j]!)));
  const residuals = rows.map(
    (row, r) => y[r]! - total(row.map((cell, j) => cell * coefficients[j]!)),
  );
  const df = rows.length - k;
  const spread = total(residuals.map((residual) => residual ** 2)) / df;
  return {
    coefficients,
    standardErrors: inverse.map((line, i) => Math.sqrt(spread * line[i]!)),
    df,
  };
}

const total = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

/** Gauss and Jordan, with the largest pivot of each column. */
function invert(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const work = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column; row < n; row++) {
      if (Math.abs(work[row]![column]!) > Math.abs(work[pivot]![column]!)) pivot = row;
    }
    [work[column], work[pivot]] = [work[pivot]!, work[column]!];
    const scale = work[column]![column]!;
    work[column] = work[column]!.map((cell) => cell / scale);
    for (let row = 0; row < n; row++) {
      const factor = work[row]![column]!;
      if (row !== column) {
        work[row] = work[row]!.map((cell, j) => cell - factor * work[column]![j]!);
      }
    }
  }
  return work.map((row) => row.slice(n));
}
