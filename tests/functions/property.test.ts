import { describe, expect, it } from "vitest";
import { CellError } from "../../src/cells";
import { implementations } from "../../src/functions/implementations";
import { only } from "../present";
import { expectNoFaultOfAnyCall, faultOfCall, firstFault, replaced, sample } from "./calls";
import { call, functions, wordsOf } from "./catalogue";
import { asText, faultOf } from "./faults";
import { everyPair } from "./matrix";
import { layouts } from "./plausible";

/*
 * What holds for every function whatever its cells hold. Of the matrix of hostile cells this runs every pair, and of
 * calls drawn at random a few; the project `hostile` runs the whole, and many more.
 */

/** What a busy machine may need for the hundreds of calls of one test. */
const TIME_LIMIT = 120_000;

it("every function of the catalogue is implemented", () => {
  const missing = functions.filter(({ id }) => typeof implementations[id] !== "function");
  expect(missing.map(({ id }) => id)).toEqual([]);
  expect(functions.length).toBeGreaterThan(0);
});

const byId = functions.map((entry) => [entry.id, entry] as const);

describe.each(byId)("%s", { timeout: TIME_LIMIT }, (id, entry) => {
  const { parameters } = entry;

  it("has a presentable result for every kind of cell in every argument", () => {
    expect(firstFault(entry, everyPair(parameters.length))).toBeUndefined();
  });

  it("has a presentable result for any arguments", () => {
    expectNoFaultOfAnyCall(entry, 50);
  });

  it("has a presentable result for any number of arguments", () => {
    for (let count = 0; count <= parameters.length + 2; count++) {
      expect(faultOfCall(id, Array<unknown>(count).fill(5))).toBeUndefined();
      expect(faultOfCall(id, Array<unknown>(count).fill([[5], [4], [3]]))).toBeUndefined();
      expect(faultOfCall(id, Array<unknown>(count).fill(null))).toBeUndefined();
    }
  });

  it("has a result for arguments as a coach would give them", () => {
    const results = layouts.flatMap((layout) =>
      sample(entry, layout, 20).map((args) => {
        const result = call(id, ...args);
        expect(faultOf(result, args), asText(args)).toBeUndefined();
        return result.flat();
      }),
    );
    const answered = results.filter((contents) =>
      contents.some((content) => content !== "" && !(content instanceof CellError)),
    );
    const firstError = results.flat().find((content) => content instanceof CellError);
    expect(answered.length, JSON.stringify(firstError)).toBeGreaterThanOrEqual(results.length / 4);
  });

  it("gives for each word of a choice, in any case, a result or the reason why not", () => {
    const args = only(sample(entry, "column", 1));
    parameters.forEach((parameter, position) => {
      for (const word of wordsOf(parameter)) {
        const spelt = (text: string) => call(id, ...replaced(args, position, [[text]]));
        const plain = spelt(word);
        expect(spelt(` ${word.toUpperCase()} `)).toEqual(plain);
        const messages = plain.flat().filter((content) => content instanceof CellError);
        // Beside another argument it may stand in the way; the word itself is one of those expected.
        const refusal = new RegExp(`^${parameter.name} is (?!given beside )`);
        expect(messages.filter(({ message }) => refusal.test(message))).toEqual([]);
      }
      const unknown = call(id, ...replaced(args, position, [["no such word"]]));
      if (wordsOf(parameter).length > 0) {
        expect(unknown.flat().some((content) => content instanceof CellError)).toBe(true);
      }
    });
  });
});
