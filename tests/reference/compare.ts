import { CellError, type Content } from "../../src/cells";
import { named } from "../present";
import type { ExpectedValue, Match } from "./data";

/** The last binary digits of a product are not what a hand-written value is about. */
const BINARY_DUST = 1e-12;

/**
 * What is wrong with a value, or nothing where it is as expected. `label` is the part of a report it is, where it
 * is one: a print may be to other decimals there, and a variance found by iteration is less exact.
 */
export function difference(
  actual: Content | undefined,
  expected: ExpectedValue,
  match: Match,
  label?: string,
): string | undefined {
  if (typeof expected === "object") {
    if (!(actual instanceof CellError)) return `${shown(actual)} instead of ${expected.error}`;
    if (actual.code !== expected.error) return `${shown(actual)} instead of ${expected.error}`;
    const pattern = new RegExp(expected.message ?? "", "i");
    return pattern.test(actual.message) && actual.message !== ""
      ? undefined
      : `the message "${actual.message}" does not say ${expected.message ?? "anything"}`;
  }
  const same =
    typeof expected === "number" && typeof actual === "number"
      ? Math.abs(actual - expected) <= allowance(expected, match, label)
      : actual === expected;
  return same ? undefined : `${shown(actual)} instead of ${shown(expected)}`;
}

/** How far a number may lie from the expected one. */
export function allowance(expected: number, match: Match, label = ""): number {
  const size = Math.abs(expected);
  const dust = BINARY_DUST * Math.max(size, 1);
  if (typeof match === "number") return match * size;
  if (typeof match === "object") {
    if ("within" in match) return match.within;
    const decimals = typeof match.print === "number" ? match.print : named(match.print, label);
    return 0.5 * 10 ** -decimals + dust;
  }
  switch (match) {
    case "exact":
      return dust;
    case "tight":
      return Math.max(1e-6 * size, dustOfZero(size));
    case "iter":
      return Math.max((label.endsWith("variance") ? 1e-4 : 1e-5) * size, dustOfZero(size));
    case "trend":
      return Math.max(1e-3 * size, dustOfZero(size));
  }
}

/** Nothing is relatively near zero; a zero of arithmetic may come out as dust. */
const dustOfZero = (size: number) => (size === 0 ? BINARY_DUST : 0);

export const shown = (content: Content | null | undefined) =>
  content instanceof CellError
    ? `${content.code} "${content.message}"`
    : (JSON.stringify(content) ?? "nothing");
