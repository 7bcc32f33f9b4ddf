/** Comma-separated values, as RFC 4180 has them: quotes around a value, two of them for one in it. */

/** What may stand between the values of a line. */
export type Separator = "," | ";" | "\t";

/** The rows of a text, every value as it is written. */
export function parseCsv(text: string, separator: Separator): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  const end = separator === "\t" ? "\\t" : separator;
  const quoted = '"([^"]*(?:""[^"]*)*)"';
  const plain = `([^"${end}\\r\\n][^${end}\\r\\n]*)?`;
  const value = new RegExp(`(?:${quoted}|${plain})(${end}|\\r\\n|\\n|\\r|$)`, "y");
  while (value.lastIndex < text.length) {
    const at = value.lastIndex;
    const found = value.exec(text);
    if (!found) throw new Error(`a quote in line ${lineOf(text, at)} is not closed, or not alone`);
    const [, inQuotes, bare = "", ending = ""] = found;
    row.push(inQuotes?.replaceAll('""', '"') ?? bare);
    if (ending === separator) continue;
    rows.push(row);
    row = [];
  }
  // A separator at the very end is followed by one more value, which is blank.
  if (row.length > 0) rows.push([...row, ""]);
  return rows;
}

/** Rows of values as a text. */
export function writeCsv(
  rows: readonly (readonly (string | number | boolean | null)[])[],
  separator: Separator = ",",
): string {
  const written = (value: string | number | boolean | null) => {
    if (value === null) return "";
    if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
    const text = String(value);
    return /["\r\n]/.test(text) || text.includes(separator)
      ? `"${text.replaceAll('"', '""')}"`
      : text;
  };
  return rows.map((row) => `${row.map(written).join(separator)}\n`).join("");
}

/** The separator that a text's first line has most of. */
export function separatorOf(text: string): Separator {
  const [line = ""] = text.replace(/"(?:[^"]|"")*"/g, "").split(/[\r\n]/, 1);
  const count = (separator: Separator) => line.split(separator).length;
  return SEPARATORS.reduce((most, one) => (count(one) > count(most) ? one : most));
}

const SEPARATORS: readonly Separator[] = [",", ";", "\t"];

const lineOf = (text: string, at: number) => text.slice(0, at).split(/\r\n|\n|\r/).length;
