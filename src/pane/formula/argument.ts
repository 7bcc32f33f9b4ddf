import { widthOf } from "../../cells";
import type { Parameter } from "../../functions/catalogue";
import { isReference, seenFrom } from "./reference";

/** What stands in one place of a call. */
export type Argument =
  | { readonly kind: "omitted" }
  | { readonly kind: "value"; readonly value: number | string | boolean; readonly text: string }
  | { readonly kind: "array"; readonly rows: (number | string)[][]; readonly text: string }
  /** With `asText`, blanks stay blanks on every host: `D2:D20&""`; with `only`, some of the rows. */
  | {
      readonly kind: "cells";
      readonly reference: string;
      readonly asText: boolean;
      readonly only?: readonly Only[];
    }
  /** Any other formula, which only the spreadsheet itself can work out. */
  | { readonly kind: "formula"; readonly text: string };

/** The rows in which another column says so: one lifter's. */
export interface Only {
  readonly reference: string;
  readonly is: string | number;
}

const NUMBER = /^[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
const AS_TEXT = /\s*&\s*""\s*$/;

/**
 * Reads what somebody typed for an argument, or what stands in an example: a number (2.5, 2,5, 95%,
 * 2/3), cells (B2:B20), a list ({1;2;3}), a formula (=B2+1, SPARE.FITCURVE(…)) or else plain words.
 */
export function readArgument(typed: string): Argument {
  const isFormula = typed.trim().startsWith("=");
  const text = typed.trim().replace(/^=\s*/, "");
  if (text === "") return { kind: "omitted" };
  const number = readNumber(text);
  if (number !== undefined) return number;
  if (/^(?:true|false)$/i.test(text)) {
    return { kind: "value", value: /^t/i.test(text), text: text.toUpperCase() };
  }
  if (isReference(text.replace(AS_TEXT, ""))) {
    return { kind: "cells", reference: text.replace(AS_TEXT, ""), asText: AS_TEXT.test(text) };
  }
  if (/^"(?:[^"]|"")*"$/.test(text)) {
    return { kind: "value", value: text.slice(1, -1).replaceAll('""', '"'), text };
  }
  if (/^\{.*\}$/s.test(text)) {
    const rows = readArray(text);
    return rows ? { kind: "array", rows, text } : { kind: "formula", text };
  }
  if (isFormula || looksLikeFormula(text)) return { kind: "formula", text };
  return { kind: "value", value: text, text: quoted(text) };
}

/**
 * The argument of a parameter. Cells that hold reserves get `&""`: desktop Excel shows our functions
 * a blank as 0, and a reserve of 0 is a set to failure.
 */
export function argumentFor({ name }: Pick<Parameter, "name">, typed: string): Argument {
  const argument = readArgument(typed);
  return argument.kind === "cells" && holdsReserve(name) ? { ...argument, asText: true } : argument;
}

/** reserve, calledReserve, plannedReserve, targetReserve: where 0 and blank are two things. */
const holdsReserve = (name: string) => /reserve$/i.test(name);

/** The argument as it is written in a formula on that sheet. */
export function spelled(argument: Argument, sheet: string): string {
  switch (argument.kind) {
    case "omitted":
      return "";
    case "cells":
      return cellsOn(sheet, argument) + (argument.asText ? '&""' : "");
    default:
      return argument.text;
  }
}

function cellsOn(sheet: string, { reference, only = [] }: Argument & { kind: "cells" }): string {
  const cells = seenFrom(sheet, reference);
  if (only.length === 0) return cells;
  const conditions = only.map((one) => {
    const value = typeof one.is === "number" ? String(one.is) : quoted(one.is);
    return `${seenFrom(sheet, one.reference)}=${value}`;
  });
  const [first] = conditions;
  const all = conditions.length === 1 ? first : conditions.map((one) => `(${one})`).join("*");
  return `FILTER(${cells}, ${all})`;
}

export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

function readNumber(text: string): Argument | undefined {
  const percent = text.endsWith("%");
  const digits = (percent ? text.slice(0, -1) : text).trim();
  const fraction = /^(\d+)\s*\/\s*(\d*[1-9]\d*)$/.exec(digits);
  if (fraction && !percent) {
    const [, over, under] = fraction;
    return { kind: "value", value: Number(over) / Number(under), text: `${over}/${under}` };
  }
  if (!NUMBER.test(digits)) return undefined;
  const value = Number(digits.replace(",", ".")) / (percent ? 100 : 1);
  return { kind: "value", value, text: String(value) };
}

/** The rows of an array constant; nothing where it holds more than numbers and texts. */
function readArray(text: string): (number | string)[][] | undefined {
  const parts = text.slice(1, -1).match(/"(?:[^"]|"")*"|[,;]|[^",;]+/g) ?? [];
  let row: (number | string)[] = [];
  const rows = [row];
  for (const part of parts) {
    if (part === ";") {
      row = [];
      rows.push(row);
    } else if (part !== "," && part.trim() !== "") {
      const content = readArgument(part);
      if (content.kind !== "value" || typeof content.value === "boolean") return undefined;
      if (typeof content.value === "string" && !part.trim().startsWith('"')) return undefined;
      row.push(content.value);
    }
  }
  return rows.every((row) => row.length === widthOf(rows) && row.length > 0) ? rows : undefined;
}

/** A call, or something reckoned with a cell: words have neither. */
function looksLikeFormula(text: string): boolean {
  return (
    /^[\p{L}_][\p{L}\p{N}_.]*\(.*\)$/su.test(text) ||
    text.split(/[-+*/&]/).some((part, _index, all) => all.length > 1 && isReference(part.trim()))
  );
}
