import { readFileSync, statSync } from "node:fs";
import { runInContext } from "node:vm";
import { describe, expect, test } from "vitest";
import type { Metadata } from "../../../src/functions/catalogue";
import { bareRealm } from "../../bareRealm";
import { built } from "../../built";
import { only } from "../../present";

const script = readFileSync(built("functions.js"), "utf8");
const metadata = JSON.parse(readFileSync(built("functions.json"), "utf8")) as Metadata;

class ExcelError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

/** The bundle loaded with nothing but `CustomFunctions`: no DOM, no network, no timers, no console. */
function load() {
  const functions = new Map<string, (...args: unknown[]) => unknown[][]>();
  const CustomFunctions = {
    associate: (id: string, compute: (...args: unknown[]) => unknown[][]) =>
      functions.set(id, compute),
    Error: ExcelError,
    ErrorCode: {
      invalidValue: "#VALUE!",
      notAvailable: "#N/A",
      divisionByZero: "#DIV/0!",
      invalidNumber: "#NUM!",
      nullReference: "#NULL!",
    },
  };
  const globals = bareRealm({ CustomFunctions });
  const before = Object.getOwnPropertyNames(globals);
  runInContext(script, globals);
  return {
    functions,
    added: Object.getOwnPropertyNames(globals).filter((g) => !before.includes(g)),
  };
}

const { functions, added } = load();
const call = (id: string, ...args: unknown[]) => functions.get(id)!(...args);

describe("the bundle for Excel's JavaScript-only runtime", () => {
  test("associates every function of functions.json, and nothing else", () => {
    expect([...functions.keys()].sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
  });

  test("leaves no global behind", () => {
    expect(added).toEqual([]);
  });

  test("stays below the 250 KiB that the whole catalogue may weigh", () => {
    expect(statSync(built("functions.js")).size).toBeLessThan(250 * 1024);
  });

  test("cuts off the invocation that Excel adds at the end", () => {
    const invocation = { functionName: "SPARE.E1RM" };
    expect(call("E1RM", [[100]], [[5]], [[2]], null, invocation)).toEqual([[123.333333333333]]);
    expect(call("RPETORIR", [[8]], invocation)).toEqual([[2]]);
  });

  test("takes an omitted argument as null or undefined", () => {
    expect(call("E1RM", [[100]], [[5]], null, null)).toEqual([[116.666666666667]]);
    expect(call("E1RM", [[100]], [[5]])).toEqual([[116.666666666667]]);
  });

  test("reads blanks of desktop Excel (0) and of Excel on the web (null, Empty)", () => {
    const blanks = [0, null, { type: "Empty", basicType: "Empty", basicValue: "" }];
    for (const blank of blanks) {
      expect(call("E1RM", [[100], [blank]], [[5], [blank]])).toEqual([[116.666666666667], [""]]);
    }
  });

  test("reads a formatted number as its number", () => {
    const formatted = { type: "FormattedNumber", basicValue: 100, numberFormat: "0.0 kg" };
    expect(call("E1RM", [[formatted]], [[5]])).toEqual([[116.666666666667]]);
  });

  test("throws the error of a single call, with its message", () => {
    expect(() => call("E1RM", [["80kg"]], [[5]])).toThrow(
      expect.objectContaining({
        code: "#VALUE!",
        message: 'load is text, "80kg"; expected a load above 0',
      }) as Error,
    );
  });

  test("puts the error of a bad row in that row's cell, and computes the others", () => {
    const [first, bad] = call("E1RM", [[100], ["80kg"]], [[5], [5]]).map((row) => only(row));
    expect(first).toBeCloseTo(116.667, 3);
    expect(bad).toBeInstanceOf(ExcelError);
    expect(bad).toMatchObject({ code: "#VALUE!" });
    expect((bad as ExcelError).message).toContain("the 2nd row of load is text");
  });

  test("passes on the error that a row already holds", () => {
    const error = (basicValue: string) => ({ type: "Error", basicType: "Error", basicValue });
    const loads = [[error("#N/A")], [error("#REF!")], [error("#DIV/0!")]];
    expect(call("E1RM", loads, [[5], [5], [5]])).toMatchObject([
      [{ code: "#N/A", message: "the 1st row of load holds #N/A" }],
      [{ code: "#VALUE!", message: "the 2nd row of load holds #REF!" }],
      [{ code: "#DIV/0!", message: undefined }],
    ]);
  });
});

describe("functions.json", () => {
  test("lets error cells and data types through, so that one bad row is not the whole column's", () => {
    expect(metadata.allowErrorForDataTypeAny).toBe(true);
    expect(metadata.allowCustomDataForDataTypeAny).toBe(true);
  });

  test("offers the choices while typing", () => {
    const ids = metadata.enums.map(({ id }) => id);
    expect(ids).toEqual(
      expect.arrayContaining(["EquationChoice", "ScaleChoice", "DirectionChoice"]),
    );
    const used = metadata.functions
      .flatMap(({ parameters }) => parameters)
      .flatMap(({ customEnumId }) => customEnumId ?? []);
    expect(new Set(used)).toEqual(new Set(ids));
  });

  test("offers the parts of every function that has them", () => {
    const withPart = metadata.functions.flatMap(({ id, parameters }) => {
      const part = parameters.findIndex(({ name }) => name === "part");
      return part === -1
        ? []
        : [{ id, isLast: part === parameters.length - 1, ...parameters[part] }];
    });
    expect(withPart.length).toBeGreaterThan(1);
    for (const part of withPart) {
      expect(part, part.id).toMatchObject({ isLast: part.optional === true, type: "string" });
      expect(part.customEnumId, part.id).toBeTruthy();
    }
  });

  test("takes and gives ranges everywhere, so that every argument lifts", () => {
    for (const { id, parameters, result } of metadata.functions) {
      expect(result.dimensionality, id).toBe("matrix");
      for (const parameter of parameters) {
        expect(parameter.dimensionality, `${id} ${parameter.name}`).toBe("matrix");
        expect(parameter.description.length, `${id} ${parameter.name}`).toBeLessThanOrEqual(512);
      }
    }
  });

  test("points every function's help at its place in the help page", () => {
    for (const { id, helpUrl } of metadata.functions)
      expect(helpUrl).toMatch(new RegExp(`#${id}$`));
  });
});
