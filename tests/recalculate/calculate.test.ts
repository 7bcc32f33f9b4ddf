import { describe, expect, it } from "vitest";
import { cellAddress } from "../../src/formula/address";
import { implementations } from "../../src/functions/implementations";
import { bookOf } from "../../src/recalculate/book";
import { calculate } from "../../src/recalculate/calculate";
import { changedCells, changesOf } from "../../src/recalculate/saveValues";
import { readPackage, readWorkbook } from "../../src/xlsx";
import { escapeXml } from "../../src/xlsx/package";
import { buildBook, type BookParts } from "../cli/support";

/*
 * What `calc` touches: formulas of ours and those that read from them, and of the latter only those
 * whose saved value the engine reproduces from saved inputs. Every other value stays.
 */

const metadata = {
  functions: Object.keys(implementations).map((id) => ({ id, parameters: [] })),
};

/** A cell: a value, or a formula with the value it was saved with, if it was. */
type Cell = number | string | readonly [formula: string, saved?: number | string];

/** What changes in a workbook, what is left with its reason, and what fails. */
async function played(
  sheets: Readonly<Record<string, Readonly<Record<string, Cell>>>>,
  more: Omit<BookParts, "sheets"> = {},
) {
  const xml = Object.entries(sheets).map(([name, cells]) => [name, rowsOf(cells)]);
  const bytes = buildBook({ sheets: Object.fromEntries(xml) as Record<string, string>, ...more });
  const book = bookOf(readWorkbook(readPackage(bytes)));
  const outcomes = await calculate(book, { metadata, implementations });
  const changes: Record<string, unknown> = {};
  for (const { sheet, row, column, value } of changedCells(changesOf(outcomes))) {
    changes[`${sheet.name}!${cellAddress(row, column)}`] = value;
  }
  const left = outcomes.flatMap(({ cell, left }) =>
    left === undefined ? [] : [[cellAddress(cell.row, cell.column), left]],
  );
  return { changes, left: Object.fromEntries(left) as Record<string, string>, outcomes };
}

function rowsOf(cells: Readonly<Record<string, Cell>>): string {
  const rows = new Map<string, string[]>();
  for (const [address, cell] of Object.entries(cells)) {
    const row = /\d+$/.exec(address)![0];
    rows.set(row, [...(rows.get(row) ?? []), cellXml(address, cell)]);
  }
  return [...rows].map(([row, written]) => `<row r="${row}">${written.join("")}</row>`).join("");
}

function cellXml(address: string, cell: Cell): string {
  if (typeof cell === "number") return `<c r="${address}"><v>${cell}</v></c>`;
  if (typeof cell === "string") {
    return `<c r="${address}" t="inlineStr"><is><t>${escapeXml(cell)}</t></is></c>`;
  }
  const [formula, saved] = cell;
  const type = typeof saved !== "string" ? "" : saved.startsWith("#") ? ' t="e"' : ' t="str"';
  const value = saved === undefined ? "" : `<v>${escapeXml(String(saved))}</v>`;
  return `<c r="${address}"${type}><f>${escapeXml(formula)}</f>${value}</c>`;
}

const e1rm = expect.closeTo(116.666_667, 5);

describe("a value that has nothing to do with ours", () => {
  it("stays, be it volatile, a converged circle, or wrong", async () => {
    const { changes, left } = await played({
      Log: {
        A1: ["SPARE.E1RM(100,5)"],
        B1: ["TODAY()", 40_000],
        C1: ["NOW()-B1", 0.25],
        D1: ["RAND()", 0.5],
        A2: ["B2*0.5+1", 2],
        B2: ["A2", 2],
        C2: ["1+1", 3],
        D2: ["[1]Plan!$A$1", 7],
      },
    });
    expect(changes).toEqual({ "Log!A1": e1rm });
    expect(left).toEqual({});
  });

  it("stays where ours read it, whatever the engine would make of it", async () => {
    const { changes, left } = await played({
      Log: { A1: ["TODAY()-39900", 100], B1: ["SPARE.E1RM(A1,5)", 1] },
    });
    expect(changes).toEqual({ "Log!B1": e1rm });
    expect(left).toEqual({});
  });
});

describe("a formula that reads from ours", () => {
  it("is worked out where the engine comes from saved values to the saved value", async () => {
    const { changes, left } = await played({
      Log: {
        A1: 100,
        B1: ["SPARE.E1RM(A1,5)", 58.333_333_333_333_3],
        C1: ["B1*2", 116.666_666_666_666_6],
        D1: ['IF(C1>200,"heavy","light")', "light"],
        E1: ["SUM(Other!A1:A9)", 58.333_333_333_333_3],
      },
      Other: { A1: ["Log!B1", 58.333_333_333_333_3] },
    });
    expect(changes).toEqual({
      "Log!B1": e1rm,
      "Log!C1": expect.closeTo(233.333_333, 5),
      "Log!D1": "heavy",
      "Log!E1": e1rm,
      "Other!A1": e1rm,
    });
    expect(left).toEqual({});
  });

  it("keeps its value where the engine does not, and is named with the reason", async () => {
    const { changes, left } = await played({
      Log: {
        A1: ["SPARE.E1RM(100,5)", 50],
        B1: ["A1*2", 90],
        C1: ["TODAY()+A1", 40_050],
        D1: ["B1+1", 91],
        E1: ["A1+B1", 140],
      },
    });
    expect(changes).toEqual({ "Log!A1": e1rm, "Log!E1": expect.closeTo(206.666_667, 5) });
    expect(left).toEqual({
      B1: "from what was saved the engine comes to 100, and not to 90",
      C1: expect.stringMatching(/^from what was saved the engine comes to \d+, and not to 40050$/),
    });
  });

  it("is worked out where there is no evidence: it has no value, or what it reads had none", async () => {
    const { changes, left } = await played({
      Log: {
        A1: ["SPARE.E1RM(100,5)"],
        B1: ["A1*2", 7],
        C1: ["SPARE.E1RM(100,5)", 50],
        D1: ["C1*2"],
      },
    });
    const twice = expect.closeTo(233.333_333, 5);
    expect(changes).toEqual({ "Log!A1": e1rm, "Log!B1": twice, "Log!C1": e1rm, "Log!D1": twice });
    expect(left).toEqual({});
  });

  it("stays to the last digit where ours came to what was saved", async () => {
    const { changes } = await played({
      Log: {
        A1: ["SPARE.E1RM(100,5)", 116.666_666_666_667],
        B1: ["A1/7", 16.666_666_666_7],
        C1: ["TODAY()+A1", 3],
      },
    });
    expect(changes).toEqual({});
  });

  it("that is stale is not named where nothing it reads has changed", async () => {
    const { left } = await played({
      Log: { A1: ["SPARE.E1RM(100,5)", 116.666_666_666_667], B1: ["A1*2", 90] },
    });
    expect(left).toEqual({});
  });

  it("is found by a name, a Table's or a whole column, and through INDIRECT", async () => {
    const { changes } = await played(
      {
        Log: {
          A1: ["SPARE.E1RM(100,5)", 50],
          B1: ["best+0", 50],
          C1: ["MAX(A:A)", 50],
          D1: ['INDIRECT("A1")+0', 50],
          E1: ["SUM(1:1)*0+A1", 50],
        },
      },
      { workbook: `<definedNames><definedName name="best">Log!$A$1</definedName></definedNames>` },
    );
    expect(Object.keys(changes)).toEqual(["Log!A1", "Log!B1", "Log!C1", "Log!D1"]);
  });
});

describe("a formula of ours that cannot be computed", () => {
  it("keeps its value and is named: cells of several sheets, another workbook", async () => {
    const { changes, left } = await played({
      W1: { A1: 100 },
      W2: { A1: 110 },
      Log: {
        A1: ["SPARE.SWC(W1:W2!A1)", 3],
        B1: ["SPARE.E1RM([1]Plan!A1,5)", 4],
        C1: ["A1+1", 4],
      },
    });
    expect(changes).toEqual({});
    expect(left).toEqual({
      A1: "it reads the same cells of several sheets",
      B1: "it reads another workbook",
    });
  });

  it("keeps its value where it reads, by whatever way, a formula that has none", async () => {
    const { changes, left } = await played({
      Log: {
        A1: ["CUBEVALUE(1)"],
        B1: ["A1+1"],
        C1: ["SPARE.E1RM(B1,5)", 50],
        D1: ["SPARE.E1RM(C1,5)"],
      },
    });
    expect(left.C1).toBe("it reads Log!B1, which has no value");
    expect(changes).toEqual({ "Log!D1": expect.closeTo(58.333_333, 5) });
  });

  it("keeps its value where it reads its own result", async () => {
    const { changes, left } = await played({
      Log: {
        A1: ["SPARE.E1RM(B1,5)", 40],
        B1: ["A1/2+10", 30],
        C1: ["SPARE.E1RM(C1,5)", 3],
        D1: ["SPARE.E1RM(E1,5)", 9],
        E1: ["SPARE.E1RM(D1,5)", 9],
      },
    });
    expect(changes).toEqual({});
    const reason = "it reads its own result";
    expect(left).toEqual({ A1: reason, C1: reason, D1: reason, E1: reason });
  });
});

describe("a formula without a value", () => {
  it("is worked out where ours read it, and only there", async () => {
    const { changes } = await played({
      Log: { A1: ["50*2"], B1: ["A1/20"], C1: ["SPARE.E1RM(A1,B1)"], D1: ["1+1"] },
    });
    expect(changes).toEqual({ "Log!A1": 100, "Log!B1": 5, "Log!C1": e1rm });
  });
});

describe("a result that spills", () => {
  const array = (address: string, ref: string, formula: string, saved: number) =>
    `<c r="${address}" cm="1"><f t="array" ref="${ref}">${formula}</f><v>${saved}</v></c>`;
  const row = (number: number, ...cells: string[]) => `<row r="${number}">${cells.join("")}</row>`;
  const value = (address: string, number: number) => cellXml(address, number);

  it("over new cells brings those that read these up to date, if they are right", async () => {
    const { changes, left } = await played({}, {
      sheets: {
        Log:
          row(
            1,
            value("A1", 3),
            array("C1", "C1:C2", "SPARE.RESERVETAPER(A1,2,0)", 2),
            cellXml("E1", ["C3+1", 1]),
            cellXml("F1", ["C3+1", 9]),
            cellXml("G1", ["SPARE.E1RM(100,5,C3)", 0]),
          ) + row(2, value("C2", 0)),
      },
    } as unknown as Omit<BookParts, "sheets">);
    expect(changes).toMatchObject({ "Log!C2": 1, "Log!C3": 0, "Log!G1": e1rm });
    expect(left).toEqual({ F1: "from what was saved the engine comes to 1, and not to 9" });
  });
});
