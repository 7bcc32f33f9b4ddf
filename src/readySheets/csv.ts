/** Rows of text from comma-separated values; a value in double quotes may hold commas and "" for a quote. */
export function parseCsv(text: string): string[][] {
  const lines = text.split(/\r?\n/).filter((line) => line !== "");
  return lines.map((line) =>
    [...`,${line}`.matchAll(/,(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
      ([, quoted, plain = ""]) => quoted?.replaceAll('""', '"') ?? plain,
    ),
  );
}
