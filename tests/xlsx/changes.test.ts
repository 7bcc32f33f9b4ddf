import { describe, expect, it } from "vitest";
import { createChanges } from "../../src/xlsx/patch/changes";

const rowsOf = (changes: ReturnType<typeof createChanges>) => [...changes.rows()];

describe("the changes to a sheet", () => {
  it("come row by row and from the left, in whatever order they were put", () => {
    const changes = createChanges();
    changes.put(7, 2, { value: "c" });
    changes.put(1_048_575, 16_383, { value: true });
    changes.put(7, 0, { value: null });
    changes.put(0, 16_383, { value: 1.5 });
    expect(rowsOf(changes)).toEqual([
      [0, [{ column: 16_383, value: 1.5 }]],
      [
        7,
        [
          { column: 0, value: null },
          { column: 2, value: "c" },
        ],
      ],
      [1_048_575, [{ column: 16_383, value: true }]],
    ]);
    expect(changes.count()).toBe(4);
  });

  it("are of each cell what was put last, which may be nothing", () => {
    const changes = createChanges();
    changes.put(3, 0, { value: null });
    changes.put(3, 1, { value: null });
    changes.put(3, 0, undefined);
    changes.put(3, 1, { value: 20 });
    changes.put(9, 9, undefined);
    expect(rowsOf(changes)).toEqual([[3, [{ column: 1, value: 20 }]]]);
    changes.put(3, 1, undefined);
    changes.put(3, 0, { value: 10 });
    expect(rowsOf(changes)).toEqual([[3, [{ column: 0, value: 10 }]]]);
  });

  it("keep what is said beside the value", () => {
    const changes = createChanges();
    const area = { startRow: 4, startColumn: 4, endRow: 6, endColumn: 4 };
    changes.put(4, 4, { value: 1, area });
    changes.put(5, 4, { value: 2, formula: null });
    expect(changes.at(4, 4)).toEqual({ value: 1, area });
    expect(changes.at(5, 4)).toEqual({ value: 2, formula: null });
    expect(changes.at(4, 5)).toBeUndefined();
  });
});
