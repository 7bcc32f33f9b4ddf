import { expect } from "vitest";
import { NoAnswer } from "../../../src/core/problem";

/**
 * Holds a result to the rule that every value is a number, a text, or absent with a reason. To have no answer
 * at all is fine as well.
 */
export function expectNoNonsense(compute: () => object): void {
  let result: object;
  try {
    result = compute();
  } catch (problem) {
    expect(problem).toBeInstanceOf(NoAnswer);
    expect((problem as Error).message).not.toBe("");
    return;
  }
  expect(Object.entries(result).filter(([, value]) => !isSense(value))).toEqual([]);
}

const isSense = (value: unknown): boolean =>
  typeof value === "number"
    ? Number.isFinite(value)
    : typeof value === "string" ||
      (typeof value === "object" && value !== null && "absent" in value);

/** The reason why a value does not exist. */
export function reasonOf(value: unknown): string {
  expect(value).toHaveProperty("absent");
  return (value as { absent: string }).absent;
}
