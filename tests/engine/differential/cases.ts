import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { CellValue } from "../../../src/xlsx/model";
import { elementAt } from "../../present";

/*
 * The formulas are kept as text, a file an area, a formula a line with what it should come to:
 *
 *     =ROUND(2.5,0) → 3
 *     {=LARGE(D2:D15,{1;2})} → {140;120}
 *
 * Braces mark a formula that was entered as an array, and "left" stands for one that we say we cannot compute. `## LibreOffice` stands above those whose values LibreOffice
 * worked out (`npx tsx tests/engine/differential/report.ts --record` asks it for those that have none), `## By hand`
 * above those that were worked out from what each function is documented to do.
 */

export type Source = "LibreOffice" | "by hand";
export type Values = readonly (readonly CellValue[])[];

export interface Case {
  /** The name of its file. */
  readonly area: string;
  readonly line: number;
  /** With its "=", without braces. */
  readonly formula: string;
  readonly isArray: boolean;
  readonly source: Source;
  /** Nothing where it was not recorded yet, or where we know that we cannot compute it. */
  readonly expected?: Values;
  /** Whether we say that we cannot compute it: a file's saved value then stays. */
  readonly isLeft: boolean;
  /** How many rows and columns it fills. */
  readonly rows: number;
  readonly columns: number;
}

const fileOf = (area: string) => join(import.meta.dirname, `${area}.txt`);

const areas = () =>
  readdirSync(import.meta.dirname)
    .filter((file) => file.endsWith(".txt"))
    .map((file) => basename(file, ".txt"))
    .sort();

export const readCases = (): Case[] => areas().flatMap(readArea);

function readArea(area: string): Case[] {
  let source: Source | undefined;
  return readFileSync(fileOf(area), "utf8")
    .split("\n")
    .flatMap((text, at): Case[] => {
      if (text.startsWith("## "))
        source = text.startsWith("## By hand") ? "by hand" : "LibreOffice";
      if (!/^[{=]/.test(text)) return [];
      if (!source)
        throw new Error(`${area}, line ${at + 1}: no heading says where values come from`);
      return [{ area, line: at + 1, source, ...readLine(text) }];
    });
}

function readLine(
  text: string,
): Pick<Case, "formula" | "isArray" | "isLeft" | "expected" | "rows" | "columns"> {
  const [entered = text, result] = text.split(" → ");
  const isArray = entered.startsWith("{=");
  const formula = isArray ? entered.slice(1, -1) : entered;
  const shape = /^\?(\d+)x(\d+)$/.exec(result ?? "");
  const isLeft = result === "left";
  const entry = { formula, isArray, isLeft };
  if (shape) return { ...entry, rows: Number(shape[1]), columns: Number(shape[2]) };
  if (result === undefined || isLeft) return { ...entry, rows: 1, columns: 1 };
  const expected = readValues(result);
  return { ...entry, expected, rows: expected.length, columns: elementAt(expected, 0).length };
}

/** `{1,"a";2,#N/A}`, or one value without braces. */
function readValues(text: string): Values {
  if (!text.startsWith("{")) return [[readValue(text)]];
  const pieces = text.slice(1, -1).match(/"(?:[^"]|"")*"|[^,;"]+|[,;]/g) ?? [];
  let row: CellValue[] = [];
  const rows = [row];
  for (const piece of pieces) {
    if (piece === ";") rows.push((row = []));
    else if (piece !== ",") row.push(readValue(piece));
  }
  return rows;
}

function readValue(text: string): CellValue {
  if (text.startsWith('"')) return text.slice(1, -1).replaceAll('""', '"').replaceAll("\\n", "\n");
  if (text === "TRUE" || text === "FALSE") return text === "TRUE";
  const number = Number(text);
  return Number.isNaN(number) ? text : number;
}

/** Values as a line of a file has them. */
export function showValues(values: Values): string {
  const rows = values.map((row) => row.map(showValue).join(","));
  return values.flat().length === 1 ? rows.join("") : `{${rows.join(";")}}`;
}

function showValue(value: CellValue): string {
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value !== "string") return value === null ? '""' : String(value);
  return /^#[A-Z]/.test(value) ? value : `"${value.replaceAll('"', '""').replaceAll("\n", "\\n")}"`;
}

/** Writes what LibreOffice came to beside the formulas that have no value yet. */
export function record(values: ReadonlyMap<Case, Values>): void {
  for (const area of areas()) {
    const lines = readFileSync(fileOf(area), "utf8").split("\n");
    for (const [{ area: own, line }, found] of values) {
      if (own !== area) continue;
      const [entered] = elementAt(lines, line - 1).split(" → ");
      lines[line - 1] = `${entered} → ${showValues(found)}`;
    }
    writeFileSync(fileOf(area), lines.join("\n"));
  }
}

/** Whether two results are the same: numbers to nine digits, as an answer is taken for another's everywhere here. */
export function agree(one: Values, other: Values): boolean {
  return (
    one.length === other.length &&
    one.every((row, at) => {
      const theirs = elementAt(other, at);
      return (
        row.length === theirs.length &&
        row.every((value, column) => same(value, elementAt(theirs, column)))
      );
    })
  );
}

function same(one: CellValue, other: CellValue): boolean {
  if (typeof one !== "number" || typeof other !== "number") return (one ?? "") === (other ?? "");
  return Math.abs(one - other) <= 1e-9 * Math.max(1e-6, Math.abs(one), Math.abs(other));
}
