import { expect } from "vitest";

/** How closely a check value must be met: published digits computed exactly, or found by iteration. */
export const TIGHT = 1e-6;
export const ITERATED = 1e-5;
export const ITERATED_VARIANCE = 1e-4;

/** Meets a value to a relative closeness. */
export function expectNear(actual: unknown, expected: number, relative = TIGHT): void {
  expect(actual).toBeTypeOf("number");
  const off = Math.abs((actual as number) - expected);
  expect(
    off,
    `${actual as number} is not ${expected} to a relative ${relative}`,
  ).toBeLessThanOrEqual(relative * Math.abs(expected));
}

/** Meets each named value of a result to a relative closeness. */
export function expectAllNear(
  result: object,
  expected: Readonly<Record<string, number>>,
  relative = TIGHT,
): void {
  for (const [name, value] of Object.entries(expected)) {
    expect(result, name).toHaveProperty(name);
    expectNear((result as Record<string, unknown>)[name], value, relative);
  }
}

/** Is the printed number once rounded to the digits printed. */
export function expectPrinted(actual: unknown, printed: string): void {
  expect(actual).toBeTypeOf("number");
  const decimals = printed.split(".")[1]?.length ?? 0;
  expect((actual as number).toFixed(decimals)).toBe(printed);
}
