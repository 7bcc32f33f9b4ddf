import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CellError } from "../../src/cells";
import { implementations } from "../../src/functions/implementations";
import { call, functions, wordsOf } from "./catalogue";
import { asText, faultOf } from "./faults";
import { anyArgument, hostileCells, wrappings } from "./hostile";
import { layouts, plausibleArguments, type Layout } from "./plausible";

/** What a busy machine may need for the thousands of calls of one test. */
const TIME_LIMIT = 120_000;

/** Random calls are the same in every run, so that a failure can be looked at. */
const SEED = 2024;

/** Runs a call; what is wrong with its result, with the call, or nothing. */
function faultOfCall(id: string, args: unknown[]): string | undefined {
  try {
    const fault = faultOf(call(id, ...args), args);
    return fault === undefined ? undefined : `${id} ${asText(args)}: ${fault}`;
  } catch (error) {
    return `${id} ${asText(args)} threw ${String(error)}`;
  }
}

const replaced = (args: readonly unknown[], position: number, argument: unknown) =>
  args.map((given, index) => (index === position ? argument : given));

/** Arguments the function could be called with, the same each time. */
const sample = (entry: (typeof functions)[number], layout: Layout, count: number) =>
  fc.sample(plausibleArguments(entry, layout), { numRuns: count, seed: SEED });

it("every function of the catalogue is implemented", () => {
  const missing = functions.filter(({ id }) => typeof implementations[id] !== "function");
  expect(missing.map(({ id }) => id)).toEqual([]);
  expect(functions.length).toBeGreaterThan(0);
});

const byId = functions.map((entry) => [entry.id, entry] as const);

describe.each(byId)("%s", { timeout: TIME_LIMIT }, (id, entry) => {
  const { parameters } = entry;

  it("has a presentable result for every kind of cell in every argument", () => {
    const faults = (["single", "headed column"] as const).flatMap((layout) => {
      const [args] = sample(entry, layout, 1);
      return parameters.flatMap((_parameter, position) =>
        Object.values(wrappings).flatMap((wrap) =>
          hostileCells.map((cell) => faultOfCall(id, replaced(args, position, wrap(cell)))),
        ),
      );
    });
    expect(faults.find((fault) => fault !== undefined)).toBeUndefined();
    expect(faults.length).toBeGreaterThan(parameters.length * hostileCells.length);
  });

  it("has a presentable result for any arguments", () => {
    fc.assert(
      fc.property(fc.tuple(...parameters.map(() => anyArgument)), (args) => {
        expect(faultOfCall(id, args)).toBeUndefined();
      }),
      { numRuns: 150, seed: SEED },
    );
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
        expect(faultOfCall(id, args)).toBeUndefined();
        return call(id, ...args).flat();
      }),
    );
    const answered = results.filter((contents) =>
      contents.some((content) => content !== "" && !(content instanceof CellError)),
    );
    const firstError = results.flat().find((content) => content instanceof CellError);
    expect(answered.length, JSON.stringify(firstError)).toBeGreaterThanOrEqual(results.length / 4);
  });

  it("gives for each word of a choice, in any case, a result or the reason why not", () => {
    const [args] = sample(entry, "column", 1);
    parameters.forEach((parameter, position) => {
      for (const word of wordsOf(parameter)) {
        const spelt = [word, ` ${word.toUpperCase()} `].map((text) =>
          call(id, ...replaced(args, position, [[text]])),
        );
        expect(spelt[1]).toEqual(spelt[0]);
        const messages = spelt[0].flat().filter((content) => content instanceof CellError);
        expect(
          messages.filter(({ message }) => message.startsWith(`${parameter.name} is`)),
        ).toEqual([]);
      }
      const unknown = call(id, ...replaced(args, position, [["no such word"]]));
      if (wordsOf(parameter).length > 0) {
        expect(unknown.flat().some((content) => content instanceof CellError)).toBe(true);
      }
    });
  });
});
