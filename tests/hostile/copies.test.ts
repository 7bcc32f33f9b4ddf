import { describe, it } from "vitest";
import { compareWithCore } from "../recalculate/copies/againstCore";
import { draws } from "../recalculate/copies/draws";

/** Each run has other calls than the last, from its seed; `HOSTILE=all` tries four times as many. */
const CALLS = process.env.HOSTILE === "all" ? 1000 : 280;

describe("a copy's function, over hundreds of calls", () => {
  for (const id of Object.keys(draws)) {
    it(`answers as ${id} does, whatever the cells hold`, { timeout: 240_000 }, () => {
      compareWithCore(id, CALLS);
    });
  }
});
