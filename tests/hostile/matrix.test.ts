import { describe, expect, it } from "vitest";
import { expectNoFaultOfAnyCall, firstFault } from "../functions/calls";
import { functions } from "../functions/catalogue";
import { everyCall } from "../functions/matrix";

/** What a busy machine may need for the thousands of calls of one test. */
const TIME_LIMIT = 120_000;

const byId = functions.map((entry) => [entry.id, entry] as const);

describe.each(byId)("%s", { timeout: TIME_LIMIT }, (_id, entry) => {
  it("has a presentable result for every kind of cell in every wrapping in every argument", () => {
    expect(firstFault(entry, everyCall(entry.parameters.length))).toBeUndefined();
  });

  it("has a presentable result for any arguments", () => {
    expectNoFaultOfAnyCall(entry, 200, 1);
  });
});
