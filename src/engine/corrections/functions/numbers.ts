import { getNumfmtParseValueFilter } from "@univerjs/core";
import { ErrorType } from "@univerjs/engine-formula";
import { Fault, type Plain } from "./plain";

export const notAvailable = new Fault(ErrorType.NA);
export const wrongValue = new Fault(ErrorType.VALUE);
export const wrongNumber = new Fault(ErrorType.NUM);

/** The number that a text spells, be it as a percentage, a date or a time; nothing for other text. */
export function numberIn(text: string): number | undefined {
  const trimmed = text.trim();
  if (trimmed === "") return undefined;
  const plain = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i.test(trimmed);
  if (plain) return Number(trimmed);
  const parsed = getNumfmtParseValueFilter(trimmed)?.v;
  return typeof parsed === "number" ? parsed : undefined;
}

/** A value where a number is asked for: blank is 0, a truth value 1 or 0, text what it spells. */
export function asNumber(value: Exclude<Plain, Fault>): number | undefined {
  if (value === null) return 0;
  if (typeof value === "string") return numberIn(value);
  return Number(value);
}

/**
 * A number as text, with the 15 digits that a spreadsheet gives one: `1/3&""` is 0.333333333333333.
 * Very large and very small numbers have an exponent of at least two digits.
 */
export function numberText(value: number): string {
  const [digits, exponent] = value.toExponential(14).split("e");
  const rounded = Number(`${digits}e${exponent}`);
  const power = Number(exponent);
  if (power >= LONGEST) return scientific(rounded);
  const places = Math.max(0, Math.min(100, 14 - power));
  const fixed = rounded.toFixed(places);
  const text = fixed.includes(".") ? fixed.replace(/\.?0+$/, "") : fixed;
  return text.length > 21 ? scientific(rounded) : text === "-0" ? "0" : text;
}

/** From 1E+16 on, an exponent is shorter than the digits. */
const LONGEST = 16;

function scientific(value: number): string {
  const [digits = "", exponent = ""] = value.toExponential(14).split("e");
  const shown = digits.includes(".") ? digits.replace(/\.?0+$/, "") : digits;
  const size = exponent.slice(1).padStart(2, "0");
  return `${shown}E${exponent.charAt(0)}${size}`;
}

/** A value where a text is asked for. */
export function asText(value: Exclude<Plain, Fault>): string {
  if (value === null) return "";
  if (typeof value === "number") return numberText(value);
  return typeof value === "boolean" ? String(value).toUpperCase() : value;
}
