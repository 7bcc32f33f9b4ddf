import { describe, expect, it } from "vitest";
import { hostileCells, wrappings } from "./hostile";
import { everyCall, everyPair, type HostileCall } from "./matrix";

const factors = ["layout", "position", "wrap", "cell"] as const;

/** How many different pairs of two factors some calls hold. */
function pairsIn(calls: readonly HostileCall[], one: number, other: number): number {
  const seen = new Map<unknown, Set<unknown>>();
  for (const call of calls) {
    const [a, b] = [call[factors[one]!], call[factors[other]!]];
    seen.set(a, (seen.get(a) ?? new Set()).add(b));
  }
  return [...seen.values()].reduce((sum, { size }) => sum + size, 0);
}

describe.each([1, 2, 3, 5, 6, 11, 14])("hostile cells in %i arguments", (parameters) => {
  const every = everyCall(parameters);
  const pairs = everyPair(parameters);

  it("are all there in the whole matrix", () => {
    const wraps = Object.values(wrappings).length;
    expect(every).toHaveLength(2 * parameters * wraps * hostileCells.length);
  });

  it("meet every layout, argument and wrapping in the part that is run first, and so do these", () => {
    for (let one = 0; one < factors.length; one++) {
      for (let other = one + 1; other < factors.length; other++) {
        expect(pairsIn(pairs, one, other)).toBe(pairsIn(every, one, other));
      }
    }
    expect(pairs.length).toBeLessThan(every.length);
  });
});
