import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { transformSync } from "esbuild";
import { expect, it } from "vitest";
import fieldsLoader from "../../src/tools/fieldsLoader.mjs";

const helper = `function _defineProperty(e, r, t) {
  return r in e ? Object.defineProperty(e, r, { value: t, enumerable: true, configurable: true, writable: true }) : e[r] = t, e;
}`;

it("fields are set in the order and to the values that they were set to by the helper", () => {
  const source = `class Cell {
  constructor(given) {
    _defineProperty(this, "value", void 0);
    _defineProperty(this, "later", (a, b) => a + b);
    _defineProperty(this, "list", [given, (1, 2)]);
    this.value = given;
  }
}
_defineProperty(Cell, "count", 3);`;
  const make = (code: string) =>
    Function(`${helper}${code}; return [new Cell(7), Cell.count];`)() as [object, number];
  const [before, count] = make(source);
  const [after, sameCount] = make(fieldsLoader(source));
  expect(fieldsLoader(source)).toContain("this.later = ((a, b) => a + b);");
  expect(Object.entries(after).map(String)).toEqual(Object.entries(before).map(String));
  expect(sameCount).toBe(count);
});

it("the engine's own source stays a program, without such a call for a field", () => {
  const path = createRequire(import.meta.url).resolve("@univerjs/engine-formula");
  const source = readFileSync(path.replace(/lib[\\/]cjs/, "lib/es"), "utf8");
  const calls = (code: string) => code.match(/_defineProperty\(this, "/g)?.length ?? 0;
  expect(calls(source)).toBeGreaterThan(1000);
  const changed = fieldsLoader(source);
  expect(calls(changed)).toBe(0);
  expect(() => transformSync(changed, { format: "esm" })).not.toThrow();
});
