import type { CellValue } from "../xlsx/model";
import type { Outcome } from "../recalculate/calculate";
import { areaAddress, cellAddress, quoteSheet } from "../formula/address";
import { fromFile } from "../formula/future";

/** What came of the formulas, as `--json` prints it. */
export interface Report {
  readonly file: string;
  /** The file written, or nothing. */
  readonly output: string | null;
  readonly calculated: readonly Calculated[];
  readonly left: readonly Left[];
  readonly failed: readonly Failed[];
  /** Formulas calculated along with ours, because ours read them or they read ours. */
  readonly others: number;
}

interface Entry {
  readonly sheet: string;
  readonly cell: string;
  readonly formula: string;
}

interface Calculated extends Entry {
  /** The cells it fills. */
  readonly range: string;
  readonly values: readonly (readonly CellValue[])[];
}

interface Left extends Entry {
  readonly reason: string;
}

interface Failed extends Entry {
  readonly error: string;
  readonly message: string | null;
}

export function reportOn(
  file: string,
  output: string | null,
  outcomes: readonly Outcome[],
): Report {
  const calculated: Calculated[] = [];
  const left: Left[] = [];
  const failed: Failed[] = [];
  let others = 0;
  for (const { cell, ours, area, values, left: reason, failures } of outcomes) {
    const formula = `=${fromFile(cell.text)}`;
    const entry = { sheet: cell.sheet.name, cell: cellAddress(cell.row, cell.column), formula };
    if (reason !== undefined) left.push({ ...entry, reason });
    else if (!ours) others++;
    else if (failures.length === 0) {
      calculated.push({ ...entry, range: areaAddress(area), values });
    } else {
      for (const { address, code, message } of failures) {
        failed.push({ ...entry, cell: address, error: code, message: message ?? null });
      }
    }
  }
  return { file, output, calculated, left, failed, others };
}

/** The report for a person. */
export function writeReport(report: Report): string {
  const { file, output, calculated, left, failed, others } = report;
  const formulas = new Set(failed.map(({ sheet, formula }) => `${sheet} ${formula}`)).size;
  if (calculated.length + left.length + failed.length + others === 0) {
    return `${file}: no formula uses a SPARE function\n${closing(output)}`;
  }
  const counts = [
    ["calculated", calculated.length],
    ["with errors", formulas],
    ["left as saved", left.length],
    ["other formulas calculated", others],
  ].filter(([, count]) => count !== 0) as [string, number][];
  const sections = [
    [`${file}`, ...columns(counts.map(([name, count]) => [name, String(count)]))],
    list("Calculated", calculated, (entry) => [placeOf(entry, entry.range), shown(entry)]),
    list("Left as saved", left, (entry) => [placeOf(entry), entry.reason]),
    list("Failed", failed, (entry) => [placeOf(entry), entry.error, entry.message ?? ""]),
    [closing(output)],
  ];
  return sections
    .filter((section) => section.length > 0)
    .map((section) => section.join("\n"))
    .join("\n\n");
}

/** More lines than these are nobody's reading; `--json` has them all. */
const mostLines = 20;

function list<T>(title: string, entries: readonly T[], row: (entry: T) => string[]): string[] {
  if (entries.length === 0) return [];
  const more = entries.length - mostLines;
  const rest = more > 0 ? [`  and ${more} more, which --json lists`] : [];
  return [title, ...columns(entries.slice(0, mostLines).map(row)), ...rest];
}

/** Rows of text with their columns under one another. */
function columns(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]?.map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  return rows.map((row) =>
    `  ${row.map((text, column) => text.padEnd(widths[column])).join("  ")}`.trimEnd(),
  );
}

function placeOf({ sheet, cell }: Entry, range = cell): string {
  return `${quoteSheet(sheet)}!${range}`;
}

function shown({ values }: Calculated): string {
  const [[first]] = values;
  const cells = values.length * values[0].length;
  const text = first === null ? "" : String(first);
  return cells === 1 ? text : `${text} and ${cells - 1} more`;
}

function closing(output: string | null): string {
  return output === null
    ? "Nothing was written; -o or --in-place saves the values."
    : `Written to ${output}`;
}
