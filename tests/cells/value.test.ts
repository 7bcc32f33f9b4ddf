import { runInNewContext } from "node:vm";
import { describe, expect, it } from "vitest";
import { CellError, HostError, readCell } from "../../src/cells";
import { blanksButZero } from "./fixtures";

describe("a blank cell", () => {
  it.each(blanksButZero)("is null when it comes from %s", (_host, blank) => {
    expect(readCell(blank)).toBeNull();
  });

  it("stays 0 from desktop Excel, for only the quantity knows what zero means", () => {
    expect(readCell(0)).toBe(0);
  });
});

describe("a plain cell", () => {
  it.each([[100], [-2.5], [1e300], ["80kg"], ["DNS"], [" padded "], [true], [false]])(
    "is read as it is: %j",
    (raw) => {
      expect(readCell(raw)).toBe(raw);
    },
  );

  it("is an error where it holds a number that is none", () => {
    for (const raw of [NaN, Infinity, -Infinity]) {
      expect(readCell(raw)).toEqual(new HostError("#NUM!"));
    }
  });

  it("is a number where it holds an integer of any length", () => {
    expect(readCell(12n)).toBe(12);
    expect(readCell(10n ** 400n)).toEqual(new HostError("#NUM!"));
  });

  it("is blank where it holds what no cell can", () => {
    expect(readCell(() => 1)).toBeNull();
    expect(readCell(Symbol("cell"))).toBeNull();
  });
});

describe("a data type", () => {
  it.each([
    [
      "a formatted number",
      { type: "FormattedNumber", basicValue: 82.5, numberFormat: "0.0" },
      82.5,
    ],
    ["a double", { type: "Double", basicType: "Double", basicValue: 3 }, 3],
    ["a string", { type: "String", basicType: "String", basicValue: "squat" }, "squat"],
    ["a boolean", { type: "Boolean", basicType: "Boolean", basicValue: true }, true],
    ["a linked entity with a number", { type: "LinkedEntity", basicValue: 7 }, 7],
    ["an empty string", { type: "String", basicValue: "" }, null],
    ["a data type with a code of its own", { code: "A1", basicValue: 7 }, 7],
    [
      "a data type in a data type's text",
      { type: "String", basicValue: "#REF!" },
      new HostError("#REF!"),
    ],
  ])("gives its basic value: %s", (_kind, raw, value) => {
    expect(readCell(raw)).toEqual(value);
  });

  it("is an error where it has no basic value", () => {
    expect(readCell({ type: "Entity", text: "squat", properties: {} })).toEqual(
      new HostError("#VALUE!"),
    );
    expect(readCell({ type: "WebImage", basicValue: { nested: 1 } })).toEqual(
      new HostError("#VALUE!"),
    );
    expect(readCell({})).toEqual(new HostError("#VALUE!"));
  });
});

describe("an error in the sheet", () => {
  it.each([
    "#N/A",
    "#VALUE!",
    "#REF!",
    "#NAME?",
    "#DIV/0!",
    "#NUM!",
    "#NULL!",
    "#SPILL!",
    "#CALC!",
    "#ERROR!",
    "#EXTERNAL!",
    "#PYTHON!",
    "#GETTING_DATA",
  ])("keeps its code where Sheets passes it as text: %s", (text) => {
    expect(readCell(text)).toEqual(new HostError(text));
    expect(readCell(` ${text} `)).toEqual(new HostError(text));
  });

  it.each([
    [{ type: "Error", basicType: "Error", basicValue: "#DIV/0!", errorType: "Div0" }, "#DIV/0!"],
    [{ type: "Error", basicValue: "#REF!" }, "#REF!"],
    [{ basicType: "Error", basicValue: "#N/A" }, "#N/A"],
    [{ type: "Error", errorType: "NotAvailable" }, "#N/A"],
    [{ type: "Error", errorType: "Div0" }, "#DIV/0!"],
    [{ type: "Error", errorType: "Name" }, "#NAME?"],
    [{ type: "Error", errorType: "Ref" }, "#REF!"],
    [{ type: "Error", errorType: "Null" }, "#NULL!"],
    [{ type: "Error", errorType: "Num" }, "#NUM!"],
    [{ type: "Error", errorType: "GettingData" }, "#GETTING_DATA"],
    [{ type: "Error" }, "#VALUE!"],
    [{ code: "#N/A", message: "no such athlete" }, "#N/A"],
  ])("keeps its code where Excel passes it as an object: %j", (raw, code) => {
    expect(readCell(raw)).toEqual(new HostError(code));
  });

  it("is known where it is one of ours, in an array of Sheets or as an object", () => {
    expect(readCell("! the 7th row of load is text")).toEqual(new HostError("#VALUE!"));
    expect(readCell(new CellError("#N/A", "too few sets"))).toEqual(new HostError("#N/A"));
    // It stays what it is, though no spreadsheet of ours has such a code.
    const strange = new HostError("Err:508");
    expect(readCell(strange)).toBe(strange);
  });

  it.each(["#1", "# of reps", "!", "!bang", "N/A", "#", "PR #2!"])(
    "is not seen in text that only resembles one: %j",
    (text) => {
      expect(readCell(text)).toBe(text);
    },
  );
});

describe("a date", () => {
  it("is the serial number the sheet shows for its day and time of day", () => {
    expect(readCell(new Date(2024, 0, 1))).toBe(45292);
    expect(readCell(new Date(2024, 0, 1, 18, 0, 0))).toBe(45292.75);
    expect(readCell(new Date(1899, 11, 31))).toBe(1);
  });

  it("is the same on either side of a change to summer time", () => {
    expect(readCell(new Date(2024, 2, 31))).toBe(45382);
    expect(readCell(new Date(2024, 3, 1))).toBe(45383);
    expect(readCell(new Date(2024, 10, 4))).toBe(45600);
  });

  it("is known from another realm, whose Date is not ours", () => {
    const foreign: unknown = runInNewContext("new Date(2024, 0, 1)");
    expect(foreign).not.toBeInstanceOf(Date);
    expect(readCell(foreign)).toBe(45292);
  });

  it("is an error where it is no date", () => {
    expect(readCell(new Date(NaN))).toEqual(new HostError("#NUM!"));
  });
});
