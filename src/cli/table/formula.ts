import { argumentsIn } from "../../formula/calls";
import { fromFile } from "../../formula/future";
import { tokensOf, type Token } from "../../formula/tokens";
import { implementations } from "../../functions/implementations";
import { Refused } from "../problem";

/** What an argument of a formula over a table is: columns by their names, or one value for all rows. */
export type TableArgument =
  | { readonly columns: readonly string[]; readonly asText: boolean }
  | { readonly value: number | string | boolean | null };

/** One call of a function of ours over columns of a table. */
export interface TableFormula {
  /** As it was typed, without "=". */
  readonly text: string;
  readonly id: string;
  readonly arguments: readonly TableArgument[];
  /** Which argument names the keys, if one does: what comes of one key does not depend on the others. */
  readonly by: number | undefined;
}

/** Where the functions that answer a row a key have their keys. */
export const KEY_ARGUMENTS: Readonly<Record<string, number>> = {
  LOGSUMMARY: 0,
  VOLUMELOAD: 3,
  CLOSESETS: 4,
  MUSCLESETS: 6,
  SQUADTREND: 0,
  RESERVECHECK: 4,
};

/** Reads `SPARE.LOGSUMMARY([week], [load], [reps], [reserve]&"")`. */
export function readFormula(typed: string): TableFormula {
  const text = fromFile(typed.trim().replace(/^=/, ""));
  const [call, ...rest] = tokensOf(text).filter(({ kind }) => kind !== "space");
  const id = /^SPARE\.([A-Z0-9]+)$/i.exec(call?.kind === "call" ? call.text : "")?.[1] ?? "";
  const isWhole = rest[0]?.text === "(" && rest.at(-1)?.text === ")";
  if (!Object.hasOwn(implementations, id.toUpperCase()) || !isWhole) {
    throw new Refused(`the formula is "${text}"; expected one call, such as ${EXAMPLE}`);
  }
  const found = argumentsIn(rest.slice(1, -1)).map(readArgument);
  const key = KEY_ARGUMENTS[id.toUpperCase()];
  const by = key !== undefined && isColumns(found[key]) ? key : undefined;
  return { text, id: id.toUpperCase(), arguments: found, by };
}

const EXAMPLE = 'SPARE.LOGSUMMARY([week], [load], [reps], [reserve]&"")';

export const isColumns = (
  argument: TableArgument | undefined,
): argument is Extract<TableArgument, { columns: readonly string[] }> =>
  argument !== undefined && "columns" in argument;

function readArgument(tokens: readonly Token[]): TableArgument {
  const [first, ...more] = tokens;
  if (first === undefined) return { value: null };
  const rest = more.map(({ text }) => text).join("");
  if (first.kind === "structured" && (rest === "" || rest === '&""')) {
    return { columns: [columnName(first.text)], asText: rest !== "" };
  }
  if (first.kind === "call" && first.text.toUpperCase() === "HSTACK" && more.at(-1)?.text === ")") {
    const parts = argumentsIn(more.slice(1, -1));
    if (parts.every(([only, ...others]) => only?.kind === "structured" && others.length === 0)) {
      return { columns: parts.map(([only]) => columnName(only!.text)), asText: false };
    }
  }
  const whole = first.text + rest;
  if (first.kind === "text" && rest === "") {
    return { value: first.text.slice(1, -1).replaceAll('""', '"') };
  }
  if (/^[+-]?[\d.]+(?:e[+-]?\d+)?$/i.test(whole)) return { value: Number(whole) };
  if (/^(?:true|false)$/i.test(whole)) return { value: /^true$/i.test(whole) };
  throw new Refused(
    `an argument is "${whole}"; expected a column such as [load] or [reserve]&"", several as HSTACK([lifter],[week]), a number or a text`,
  );
}

/** The name in brackets; an apostrophe stands before a bracket that belongs to it. */
function columnName(text: string): string {
  const name = /^\[((?:[^[\]']|'.)*)\]$/.exec(text)?.[1];
  if (name === undefined) throw new Refused(`"${text}" is not one column, such as [load]`);
  return name.replace(/'(.)/g, "$1");
}
