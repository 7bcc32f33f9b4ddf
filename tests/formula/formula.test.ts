import { describe, expect, it } from "vitest";
import { needsArray } from "../../src/formula/arrays";
import { fromFile, toFile } from "../../src/formula/future";
import { splitArguments } from "../../src/formula/calls";
import { shiftFormula } from "../../src/formula/shift";
import type { Table } from "../../src/formula/tables";
import { resolveTables } from "../../src/formula/tables";
import { tokensOf } from "../../src/formula/tokens";
import { isDateFormat } from "../../src/xlsx/numberFormats";

describe("a formula's pieces", () => {
  it("are its text, whole, however odd", () => {
    const formula = `SUM('It''s A1'!A1:B$2,Log!A:A,"say ""A1""",T[[#All],[a b]],#N/A,A1#)%`;
    const pieces = tokensOf(formula);
    expect(pieces.map(({ text }) => text).join("")).toBe(formula);
    expect(pieces.filter(({ kind }) => kind === "cell").map(({ text }) => text)).toEqual([
      "A1",
      "B$2",
      "A1",
    ]);
  });
});

describe("a shared formula", () => {
  it("moves its references, but for what a $ holds, and nothing that only looks like one", () => {
    expect(shiftFormula(`A1+$B2*C$3+LOG10(D4)+'A1'!E5+"F6"+G:G+$G:H+7:7+$7:8+x1y`, 2, 1)).toBe(
      `B3+$B4*D$3+LOG10(E6)+'A1'!F7+"F6"+H:H+$G:I+9:9+$7:10+x1y`,
    );
  });

  it("is #REF! where it would leave the sheet", () => {
    expect(shiftFormula("A1+B2", -1, 0)).toBe("#REF!+B1");
    expect(shiftFormula("XFD1", 0, 1)).toBe("#REF!");
  });
});

describe("a formula in a file", () => {
  const pairs = [
    ["_xlfn.STDEV.S(A1:A3)", "STDEV.S(A1:A3)"],
    ["_xlfn._xlws.SORT(A1:A3)", "SORT(A1:A3)"],
    ["_xldudf_SPARE_E1RM(A1,B1)+1", "SPARE.E1RM(A1,B1)+1"],
    ["_xlfn.LET(_xlpm.x,A1,_xlpm.x*2)", "LET(x,A1,x*2)"],
    ["_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.q,_xlpm.q+1))", "MAP(A1:A3,LAMBDA(q,q+1))"],
    ["SUM(_xlfn.ANCHORARRAY(Log!F3))", "SUM(Log!F3#)"],
    ["_xlfn.SINGLE(_xldudf_SPARE_E1RM(A1:A3,5))*2", "@SPARE.E1RM(A1:A3,5)*2"],
    ["_xlfn.SINGLE(A1:A3)+1", "@A1:A3+1"],
    [`"_xlfn.SORT("&SUM(A1)`, `"_xlfn.SORT("&SUM(A1)`],
  ] as const;

  it.each(pairs)("%s is read as %s, and written back", (inFile, shown) => {
    expect(fromFile(inFile)).toBe(shown);
    expect(toFile(shown)).toBe(inFile);
  });
});

describe("a formula is marked as an array", () => {
  it("when it calls one of ours, could spill, or works on ranges cell by cell", () => {
    for (const formula of [
      "SPARE.E1RM(A1,B1)",
      "A1:A3*2",
      "SUM(A1:A3*B1:B3)",
      "SORT(A1)",
      "IF(A1:A3>1,1,0)",
      "A1#",
      "Loads+1",
      "SUM(ROUND(A1:A3,1))",
    ]) {
      expect([formula, needsArray(formula)]).toEqual([formula, true]);
    }
  });

  it("but not when each range goes whole to a function that answers with one value", () => {
    for (const formula of [
      "SUM(A1:A3)",
      "A1+B1",
      "ROUND(A1/3,1)",
      "AVERAGE('Week 1'!B2:B9,C1)",
      `IF(A1>3,"A1:A3",TRUE)`,
      "SUM(A:A)-MAX(1:1)",
    ]) {
      expect([formula, needsArray(formula)]).toEqual([formula, false]);
    }
  });
});

describe("a reference into a table", () => {
  const log: Table = {
    name: "Log",
    sheet: "My log",
    area: { startRow: 0, startColumn: 0, endRow: 10, endColumn: 3 },
    columns: ["load", "reps", "RPE's [x]", "notes"],
    headerRows: 1,
    totalsRows: 1,
  };
  const resolve = (formula: string, sheet = "Other", row = 3) =>
    resolveTables(formula, [log], { sheet, row, column: 1 });

  it("is the plain range it means", () => {
    expect(resolve("SUM(Log[load])")).toBe("SUM('My log'!$A$2:$A$10)");
    expect(resolve("Log[[#All],[load]:[notes]]")).toBe("'My log'!$A$1:$D$11");
    expect(resolve("Log[#Headers]")).toBe("'My log'!$A$1:$D$1");
    expect(resolve("Log[[#Totals],[load]]")).toBe("'My log'!$A$11");
    expect(resolve("ROWS(log)")).toBe("ROWS('My log'!$A$2:$D$10)");
    expect(resolve("Log[RPE''s '[x']]")).toBe("'My log'!$C$2:$C$10");
  });

  it("is the formula's own row where it says so", () => {
    expect(resolve("Log[@reps]*[@load]", "My log")).toBe("$B4*$A4");
    expect(resolve("Log[[#This Row],[load]:[reps]]", "My log", 5)).toBe("$A6:$B6");
    expect(resolve("Log[@reps]", "My log", 0)).toBe("#VALUE!");
  });

  it("is #REF! to a column that is not there, and left alone without its table", () => {
    expect(resolve("Log[sets]")).toBe("#REF!");
    expect(resolve("Gone[sets]")).toBe("Gone[sets]");
    expect(resolve('"Log[load]"')).toBe('"Log[load]"');
  });
});

describe("a number format shows dates", () => {
  it("when it has a day, a month or a year of its own", () => {
    expect(["yyyy-mm-dd", "d mmm", "mmm-yy", "[$-409]d/m/yy h:mm"].map(isDateFormat)).toEqual(
      Array(4).fill(true),
    );
    expect(
      ["0.0", '0.0" day"', "[h]:mm", "h:mm", "mm:ss", "General", "[Red]0"].map(isDateFormat),
    ).toEqual(Array(7).fill(false));
  });
});

describe("the arguments of a call", () => {
  it("are parted by the commas outside of texts, brackets, braces and references into tables", () => {
    expect(splitArguments(`Log[[#All],[load]],{1,2;3,4},"a, b",MAX(1,2),,'Week 1, 2'!A1`)).toEqual([
      "Log[[#All],[load]]",
      "{1,2;3,4}",
      '"a, b"',
      "MAX(1,2)",
      "",
      "'Week 1, 2'!A1",
    ]);
  });
});
