import { shortened } from "../cells/text";
import { visible } from "../cells/visible";
import { shownIn } from "../cells/shown";
import type { CellValue, StyleModel } from "../xlsx/model";
import type { ReadSheet } from "../xlsx/read/sheet";
import type { Outcome } from "../recalculate/calculate";
import { ownValue, type Failure } from "../recalculate/result";
import { changedCells, countChanges, type BookChanges } from "../recalculate/saveValues";
import { areaAddress, cellAddress, quoteSheet } from "../formula/address";
import { fromFile } from "../formula/future";
import { columns } from "./columns";
import { STANDARD } from "./files";

/** What came of the formulas, as `--json` prints it. */
export interface Report {
  readonly file: string;
  /** The file written, or nothing. */
  readonly output: string | null;
  readonly calculated: readonly Calculated[];
  readonly left: readonly Left[];
  readonly failed: readonly Failed[];
  /** Every cell that holds something else now than in the file. */
  readonly changed: readonly Changed[];
  /** Formulas calculated along with ours, because they read ours, or ours them and they had no value. */
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

interface Changed {
  readonly sheet: string;
  readonly cell: string;
  readonly old: CellValue;
  readonly new: CellValue;
}

/** What a run came to, before anything of it is written out. */
export interface Findings {
  readonly file: string;
  readonly output: string | null;
  readonly calculated: readonly Outcome[];
  readonly left: readonly Outcome[];
  readonly failed: readonly { readonly outcome: Outcome; readonly failure: Failure }[];
  readonly changes: BookChanges;
  /** The looks of the file's cells, by the numbers that cells name. */
  readonly styles: readonly StyleModel[];
  readonly others: number;
}

export function findingsOf(
  file: string,
  output: string | null,
  outcomes: readonly Outcome[],
  changes: BookChanges,
  styles: readonly StyleModel[],
): Findings {
  const tried = outcomes.filter(({ left }) => left === undefined);
  const ours = tried.filter((outcome) => outcome.ours);
  return {
    file,
    output,
    calculated: ours.filter(({ failures }) => failures.length === 0),
    left: outcomes.filter(({ left }) => left !== undefined),
    failed: ours.flatMap((outcome) => outcome.failures.map((failure) => ({ outcome, failure }))),
    changes,
    styles,
    others: tried.length - ours.length,
  };
}

/** 1 where a cell shows an error, or a formula could not be brought up to date. */
export function statusOf({ failed, left }: Findings): 0 | 1 {
  return failed.length + left.length > 0 ? 1 : 0;
}

/** The whole of it, for programs. */
export function reportOn(findings: Findings): Report {
  const { file, output, others } = findings;
  return {
    file,
    output,
    calculated: findings.calculated.map((outcome) => {
      return { ...entryOf(outcome), range: areaAddress(outcome.area), values: outcome.values };
    }),
    left: findings.left.map((outcome) => ({ ...entryOf(outcome), reason: outcome.left ?? "" })),
    failed: findings.failed.map(({ outcome, failure: { address, code, message } }) => {
      return { ...entryOf(outcome), cell: address, error: code, message: message ?? null };
    }),
    changed: Array.from(changedCells(findings.changes), ({ sheet, row, column, value }) => ({
      sheet: sheet.name,
      cell: cellAddress(row, column),
      old: sheet.cellAt(row, column)?.value ?? null,
      new: value,
    })),
    others,
  };
}

function entryOf({ cell: { sheet, row, column, text } }: Outcome): Entry {
  return { sheet: sheet.name, cell: cellAddress(row, column), formula: `=${fromFile(text)}` };
}

/** The same as text, with no character in it that a terminal would obey. */
export const writeJson = (report: object): string =>
  JSON.stringify(report, null, 2).split("\n").map(visible).join("\n");

/** The report for a person. */
export function writeReport(findings: Findings, dryRun = false): string {
  const { counts, calculated, changed, left, failed, end } = sectionsOf(findings, dryRun);
  return joined([counts, calculated, changed, left, failed, end]);
}

/** What a report for a person is made of: lines that belong together. */
export function sectionsOf(findings: Findings, dryRun = false) {
  const { file, output, calculated, left, failed, changes, others, styles } = findings;
  const shownAt = (sheet: ReadSheet, row: number, column: number) =>
    textIn(styles[sheet.cellAt(row, column)?.style ?? 0]?.format);
  const withErrors = new Set(failed.map(({ outcome }) => outcome.cell)).size;
  const counts = [
    ["calculated", calculated.length],
    ["with errors", withErrors],
    ["left as saved", left.length],
    ["other formulas calculated", others],
    ["cells changed", countChanges(changes)],
  ].filter(([, count]) => count !== 0) as [string, number][];
  const name = file === STANDARD ? "standard input" : visible(file);
  const isIdle = calculated.length + left.length + failed.length + others === 0;
  return {
    counts: isIdle
      ? [`${name}: no formula uses a SPARE function`]
      : [name, ...indented(counts.map(([name, count]) => [name, String(count)]))],
    calculated: list("Calculated", calculated, ({ cell, area, values }) => [
      placeOf(cell.sheet.name, areaAddress(area)),
      shown(values, shownAt(cell.sheet, area.startRow, area.startColumn)),
    ]),
    changed: list(
      "Changed",
      firstOf(changedCells(changes)),
      ({ sheet, row, column, value }) => [
        placeOf(sheet.name, cellAddress(row, column)),
        ...changeOf(sheet.cellAt(row, column)?.value ?? null, value, shownAt(sheet, row, column)),
      ],
      countChanges(changes),
    ),
    left: list("Left as saved", left, ({ cell, left: reason = "" }) => [
      placeOf(cell.sheet.name, cellAddress(cell.row, cell.column)),
      reason,
    ]),
    failed: list("Failed", failed, ({ failure: { sheet, address, code, message = "" } }) => [
      placeOf(sheet, address),
      code,
      message,
    ]),
    end: [closing(output, dryRun)],
  };
}

/** The sections that hold anything, parted by blank lines. */
export function joined(sections: readonly (readonly string[])[]): string {
  return sections
    .filter((section) => section.length > 0)
    .map((section) => section.join("\n"))
    .join("\n\n");
}

/** More lines than these are nobody's reading; `--json` has them all. */
const MOST_LINES = 20;

/** A section of so many entries, of which at least the first are given. */
export function list<T>(
  title: string,
  entries: readonly T[],
  row: (entry: T) => string[],
  count = entries.length,
): string[] {
  if (count === 0) return [];
  const more = count - MOST_LINES;
  const rest = more > 0 ? [`  and ${more} more, which --json lists`] : [];
  return [title, ...indented(entries.slice(0, MOST_LINES).map(row)), ...rest];
}

function firstOf<T>(entries: Iterable<T>): T[] {
  const first: T[] = [];
  for (const entry of entries) {
    first.push(entry);
    if (first.length === MOST_LINES) break;
  }
  return first;
}

const indented = (rows: readonly (readonly string[])[]) =>
  columns(rows.map((row) => row.map(visible))).map((line) => `  ${line}`);

/** A value as its cell shows it. */
const textIn =
  (format: string | undefined) =>
  (value: CellValue): string =>
    shortened(typeof value === "number" ? shownIn(value, format) : String(value ?? ""));

/** Old and new as the cell shows them; where that hides the change, with every digit. */
function changeOf(old: CellValue, now: CellValue, shownAs: (value: CellValue) => string): string[] {
  const isHidden = shownAs(old) === shownAs(now);
  const write = (value: CellValue) => {
    if (value === null) return "blank";
    return isHidden ? shortened(String(value)) : shownAs(value);
  };
  return [write(old), "→", write(now)];
}

export function placeOf(sheet: string, range: string): string {
  return `${quoteSheet(sheet)}!${range}`;
}

function shown(values: Outcome["values"], shownAs: (value: CellValue) => string): string {
  const text = shownAs(ownValue({ values }));
  const more = values.reduce((count, row) => count + row.length, -1);
  return more === 0 ? text : `${text} and ${more} more`;
}

/** What is said at the end where nothing was to be written. */
export const DRY_RUN = "Nothing was written: this was a dry run.";

function closing(output: string | null, dryRun: boolean): string {
  if (dryRun) return DRY_RUN;
  if (output === null) return "Nothing was written; -o or --in-place saves the values.";
  return writtenTo(output);
}

/** Where a result went. */
export const writtenTo = (output: string) =>
  `Written to ${output === STANDARD ? "standard output" : visible(output)}`;
