/** Rows of text with their columns under one another. */
export function columns(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((text, column) => {
      widths[column] = Math.max(widths[column] ?? 0, text.length);
    });
  }
  return rows.map((row) =>
    row
      .map((text, column) => text.padEnd(widths[column] ?? 0))
      .join("  ")
      .trimEnd(),
  );
}
