import { beforeEach, describe, expect, test } from "vitest";
import { excelPort } from "../../../src/hosts/excel/panePort";
import { styledRectangles } from "../../../src/hosts/excel/paneRectangles";
import { nativeChartOf, NO_CHART } from "../../../src/pane/nativeChart";
import { pictures } from "../../../src/pane/pictures";
import type { CellValues } from "../../../src/pane/port";
import { squadTrend } from "../../pane/pictures/selections";
import type { Port } from "../../../src/pane/port";
import { elementAt } from "../../present";
import { fakeExcel, type FakeExcel } from "./fakeExcel";
import { insertion } from "./insertion";
import { paneData } from "../../ourSheets";

const { sheets: offers } = paneData();
const { sheet: anOffer } = elementAt(offers, 0);

let fake: FakeExcel;
let port: Port;

beforeEach(() => {
  fake = fakeExcel();
  port = excelPort(fake.excel);
  const cells: [string, unknown][] = [
    ["A1", "load"],
    ["B1", "reps"],
    ["A2", 100],
    ["B2", 5],
    ["A4", 110],
  ];
  cells.forEach(([address, content]) => fake.log.cells.set(address, content));
});

describe("the pane's port to Excel", () => {
  test("reads what is selected, blanks and all", async () => {
    fake.select("Log!A1:B3");
    expect(await port.readSelection()).toEqual({
      sheet: "Log",
      address: "A1:B3",
      values: [
        ["load", "reps"],
        [100, 5],
        ["", ""],
      ],
    });
  });

  test("reads whole columns down to the last cell that holds something", async () => {
    fake.select("Log!A:B");
    expect(await port.readSelection()).toMatchObject({ address: "A1:B4" });
    expect(await port.readRange("Log!A:A")).toEqual([["load"], [100], [""], [110]]);
    await expect(port.readRange("Log!D:D")).rejects.toThrow("D:D is blank");
  });

  test("reads a range on another sheet, trimmed or anchored", async () => {
    await port.addSheet(anOffer);
    expect(await port.readRange("Log!$A$2:.$B$2")).toEqual([[100, 5]]);
    await expect(port.readRange("Nowhere!A1")).rejects.toThrow("Nowhere");
  });

  test("says where a formula would go, whether something is there, and whether that is a Table", async () => {
    fake.log.tables.push("D1:F9");
    fake.select("Log!D3");
    expect(await port.readTarget()).toEqual({
      sheet: "Log",
      address: "D3",
      filled: false,
      inTable: true,
    });
    fake.select("Log!A2:B2");
    expect(await port.readTarget()).toMatchObject({ address: "A2", filled: true, inTable: false });
  });

  test("inserts a formula in its cell, with heading, format and width, and selects it", async () => {
    fake.select("Log!A1:B4");
    await port.insert(insertion);
    expect(fake.content("Log!C2")).toBe("=SPARE.E1RM(A2:A4, B2:B4)");
    expect(fake.content("Log!C3")).toBeUndefined();
    expect(fake.content("Log!C1")).toBe("e1RM, kg");
    const { looks } = fake.sheets[0]!;
    expect(looks.get("C1")).toMatchObject({ "font.bold": true, columnWidth: 119 });
    expect(looks.get("C2:C4")).toEqual({ numberFormat: "0.0" });
    expect(await port.readTarget()).toMatchObject({ address: "C2" });
  });

  test("names the first cell that holds something, row by row", async () => {
    expect(await port.firstFilled("Log!A1:B9")).toBe("A1");
    expect(await port.firstFilled("Log!B3:B9")).toBeUndefined();
    expect(await port.firstFilled("Log!A3:B9")).toBe("A4");
  });

  test("tells of a new selection", async () => {
    let told = 0;
    port.onSelectionChange(() => told++);
    await Promise.resolve();
    fake.select("Log!B2");
    expect(told).toBe(1);
  });

  test("adds each ready sheet, and again under another name", async () => {
    for (const { sheet } of offers) {
      expect(await port.addSheet(sheet)).toBe(sheet.name === "Log" ? "Log 2" : sheet.name);
    }
    expect(await port.addSheet(anOffer)).toBe(`${anOffer.name} 2`);
    expect(fake.sheets).toHaveLength(offers.length + 2);
  });

  test("writes every content and look of a ready sheet", async () => {
    const { sheet } = offers.find(({ id }) => id === "training-log")!;
    const name = await port.addSheet(sheet);
    const added = fake.sheets.find((each) => each.name === name)!;
    const contents = Object.values(sheet.cells)
      .flatMap((row) => Object.values(row))
      .flatMap(({ formula, value }) => formula ?? value ?? [])
      .filter((content) => content !== "");
    expect(contents.length).toBeGreaterThan(300);
    expect([...added.cells.values()]).toEqual(expect.arrayContaining(contents));
    expect(added.cells.size).toBe(contents.length);

    expect(added.frozen).toBe("1:5");
    expect(added.showGridlines).toBe(false);
    expect(added.merged).toContain("A2:I2");
    expect(added.looks.get("A5:I5")).toMatchObject({
      "fill.color": "#0e5a5e",
      "font.bold": true,
      horizontalAlignment: "Center",
      wrapText: true,
    });
    expect(added.looks.get("A6:A500")).toMatchObject({
      numberFormat: "d mmm yyyy",
      "InsideHorizontal.style": "Continuous",
    });
    expect(added.looks.get("A1")).toMatchObject({ columnWidth: 78, rowHeight: 22.5 });
  });

  test.each([
    ["at the only selected cell", "Log!C3", 96],
    ["to the right of several selected cells", "Log!C3:D9", 192],
  ])("puts a picture %s, with what it shows in words", async (_where, selected, left) => {
    fake.select(selected);
    await port.addImage({ png: "iVBOR", width: 400, height: 200, description: "rising" });
    expect(fake.log.images).toEqual([
      { base64: "iVBOR", left, top: 30, width: 300, height: 150, altTextDescription: "rising" },
    ]);
  });

  test("says which formulas a sheet has, and where", async () => {
    fake.log.cells.set("B2", 100);
    fake.log.cells.set("C3", "=SPARE.E1RM(B2, 5)");
    expect(await port.formulasOn!("Log")).toEqual([
      { address: "C3", formula: "=SPARE.E1RM(B2, 5)" },
    ]);
  });

  test("draws the squad's rises and two test days as columns of a chart", () => {
    const rises = {
      sheet: "Squad",
      address: "B7:J9",
      values: squadTrend.slice(0, 3) as CellValues,
    };
    expect(nativeChartOf("squad-rises", rises)).toMatchObject({
      kind: "columns",
      across: { name: "lifter", cells: "Squad!B7:B9" },
      up: [{ name: "rise", cells: "Squad!I7:I9" }],
    });
    const tests = {
      sheet: "Tests",
      address: "A5:C7",
      values: [
        ["athlete", "before, kg", "after, kg"],
        ["Ada", 95, 101],
        ["Noor", 80, 83],
      ],
    };
    expect(nativeChartOf("athlete-changes", tests)?.up.map(({ name }) => name)).toEqual([
      "before, kg",
      "after, kg",
    ]);
    // Each picture becomes a chart or says why it cannot.
    const charted = [
      "strength-trend",
      "squad-rises",
      "athlete-changes",
      "weekly-load",
      "dose-response",
    ];
    expect([...charted, ...Object.keys(NO_CHART)].sort()).toEqual(
      pictures.map(({ id }) => id).sort(),
    );
  });

  test("draws a chart of Excel's own with named axes", async () => {
    const columns = ["date", "one-rep max", "low", "high"];
    const chart = nativeChartOf("strength-trend", {
      sheet: "Log",
      address: "A1:D9",
      values: [columns, [46000, 120, 110, 130], [46003, 122, 112, 132]],
    });
    await port.addChart!(chart!);
    const across = "A2:A9";
    expect(fake.log.charts).toMatchObject([
      {
        type: "Line",
        title: { text: "Strength trend" },
        axes: {
          categoryAxis: { title: { text: "date" } },
          valueAxis: { title: { text: "one-rep max" } },
        },
        list: [
          { name: "one-rep max", values: "B2:B9", across },
          { name: "low", values: "C2:C9", across },
          { name: "high", values: "D2:D9", across },
        ],
      },
    ]);
  });

  test("leaves what Excel's charts cannot show, or what has no headings, to the picture", () => {
    const selection = {
      sheet: "Log",
      address: "A1:B3",
      values: [
        ["a", 1],
        ["b", 2],
        ["c", 3],
      ],
    };
    expect(nativeChartOf("forest", selection)).toBeUndefined();
    expect(nativeChartOf("weekly-load", selection)).toBeUndefined();
  });
});

describe("cells that look alike", () => {
  test("become rectangles that cover each of them once", () => {
    for (const { sheet } of offers) {
      const rectangles = styledRectangles(sheet.cells);
      const covered = new Map<string, string>();
      for (const { style, range } of rectangles) {
        for (let row = range.startRow; row <= range.endRow; row++) {
          for (let column = range.startColumn; column <= range.endColumn; column++) {
            expect(covered.has(`${row} ${column}`)).toBe(false);
            covered.set(`${row} ${column}`, style);
          }
        }
      }
      const styled = Object.entries(sheet.cells).flatMap(([row, cells]) =>
        Object.entries(cells).map(([column, { style }]) => [`${row} ${column}`, style] as const),
      );
      expect(covered).toEqual(new Map(styled));
      expect(rectangles.length).toBeLessThan(120);
    }
  });
});
