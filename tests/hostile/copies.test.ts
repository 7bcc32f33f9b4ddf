import { describe, it } from "vitest";
import { compareWithCore } from "../recalculate/copies/againstCore";
import { draws } from "../recalculate/copies/draws";

const CALLS = 1000;

describe("a copy's function, over thousands of calls", () => {
  for (const id of Object.keys(draws)) {
    it(`answers as ${id} does, whatever the cells hold`, { timeout: 240_000 }, () => {
      compareWithCore(id, CALLS);
    });
  }
});
