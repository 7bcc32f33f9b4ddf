import { describe, expect, test } from "vitest";
import { excelPort } from "../../../src/hosts/excel/panePort";
import type { Port } from "../../../src/pane/port";
import { insertion } from "./insertion";
import { mockExcel, type MockExcel } from "./officeMock";
import { paneData } from "../../ourSheets";

/*
 * Each call that the pane makes of Excel, held to Microsoft's own types (a member that they do not have is refused) and
 * to the mock that Microsoft gives for tests (what was not loaded and synced cannot be read). Who adds a call to the
 * port adds it here.
 */

let mock: MockExcel;

/** What the port does, with the calls that it makes of Excel. */
async function doing<T>(act: (port: Port) => T | Promise<T>) {
  mock = mockExcel();
  const result = await act(excelPort(mock.excel));
  return { result, calls: mock.calls() };
}

const VALUES = [
  ["load", "reps"],
  [100, 5],
];

const READING = ["Range.load(address, cellCount)", "Range.cellCount", "Range.load(values)"];

const PLACING = [
  "Workbook.getSelectedRange()",
  "Range.load(left, top, width, cellCount)",
  "Range.top",
  "Range.cellCount",
  "Range.left",
  "Range.width",
];

describe("what the pane calls of Excel", () => {
  test("to read what is selected, and a range by its address", async () => {
    expect(await doing((port) => port.readSelection())).toEqual({
      result: { sheet: "Log", address: "A1:B2", values: VALUES },
      calls: ["Workbook.getSelectedRange()", ...READING, "Range.address", "Range.values"],
    });
    expect(await doing((port) => port.readRange("Log!A1:B2"))).toEqual({
      result: VALUES,
      calls: ["WorksheetCollection.getItem()", "Worksheet.getRange()", ...READING, "Range.values"],
    });
    const { calls } = await doing((port) => port.readRange("A1:B2"));
    expect(calls).toContain("WorksheetCollection.getActiveWorksheet()");
  });

  test("to see where a formula would go, and what is there", async () => {
    expect(await doing((port) => port.readTarget())).toEqual({
      result: { sheet: "Log", address: "A1:B2", filled: true, inTable: false },
      calls: [
        "Workbook.getActiveCell()",
        "Range.load(address, formulas)",
        "Range.getTables()",
        "TableScopedCollection.getCount()",
        "Range.address",
        "Range.formulas",
      ],
    });
    expect(await doing((port) => port.firstFilled("Log!A1:B2"))).toEqual({
      result: "A1",
      calls: [
        "WorksheetCollection.getItem()",
        "Worksheet.getRange()",
        "Range.load(formulas, values)",
        "Range.formulas",
        "Range.values",
      ],
    });
  });

  test("to insert a formula with its heading, formats and widths", async () => {
    const { calls } = await doing((port) => port.insert(insertion));
    expect(calls).toEqual([
      "WorksheetCollection.getItem()",
      "Worksheet.getRange()",
      "Range.formulas =",
      "RangeFont.bold =",
      "Range.numberFormat =",
      "RangeFormat.load(columnWidth)",
      "RangeFormat.columnWidth",
      "RangeFormat.columnWidth =",
      "Range.select()",
    ]);
  });

  test("to add the ready sheets", async () => {
    const { calls } = await doing(async (port) => {
      for (const { sheet } of paneData().sheets) {
        const isThere = sheet.name === "Log";
        expect(await port.addSheet(sheet)).toBe(isThere ? "Log 2" : sheet.name);
      }
    });
    expect(calls.sort()).toEqual(
      [
        "WorksheetCollection.load(items/name)",
        "WorksheetCollection.items",
        "WorksheetCollection.add()",
        "Worksheet.showGridlines =",
        "Worksheet.getRange()",
        "Worksheet.activate()",
        "WorksheetFreezePanes.freezeAt()",
        "Range.formulas =",
        "Range.numberFormat =",
        "Range.merge()",
        "RangeBorder.color =",
        "RangeBorder.style =",
        "RangeBorderCollection.getItem()",
        "RangeFill.color =",
        "RangeFont.bold =",
        "RangeFont.color =",
        "RangeFont.name =",
        "RangeFont.size =",
        "RangeFormat.columnWidth =",
        "RangeFormat.horizontalAlignment =",
        "RangeFormat.rowHeight =",
        "RangeFormat.verticalAlignment =",
        "RangeFormat.wrapText =",
      ].sort(),
    );
  });

  test("to put a picture or a chart beside the selected cells", async () => {
    const image = { png: "", width: 720, height: 400, description: "A trend" };
    expect((await doing((port) => port.addImage(image))).calls).toEqual([
      ...PLACING,
      "ShapeCollection.addImage()",
      "Shape.left =",
      "Shape.top =",
      "Shape.width =",
      "Shape.height =",
      "Shape.altTextDescription =",
    ]);
    const column = (name: string, letter: string) => ({ name, cells: `Log!${letter}1:${letter}9` });
    const drawn = {
      kind: "line",
      title: "Strength trend",
      across: column("date", "A"),
      up: [column("low", "B"), column("high", "C")],
    } as const;
    expect((await doing((port) => port.addChart?.(drawn))).calls).toEqual([
      ...PLACING,
      "WorksheetCollection.getItem()",
      "Worksheet.getRange()",
      "ChartCollection.add()",
      "ChartSeriesCollection.getItemAt()",
      "ChartSeries.name =",
      "ChartSeries.setXAxisValues()",
      "ChartSeriesCollection.add()",
      "ChartSeries.setValues()",
      "Chart.left =",
      "Chart.top =",
      "ChartTitle.text =",
      "ChartAxisTitle.text =",
    ]);
  });

  test("to hear of a new selection", async () => {
    const { calls } = await doing(async (port) => {
      port.onSelectionChange(() => undefined);
      await new Promise((resolve) => setImmediate(resolve));
    });
    expect(calls).toEqual(["Workbook.onSelectionChanged"]);
  });

  test("is refused where Excel's own types do not have it", async () => {
    const { excel } = mockExcel();
    await excel.run(({ workbook }) => {
      expect(() => Reflect.get(workbook, "getSelectedRnage") as unknown).toThrow(
        "Excel's Workbook has no getSelectedRnage",
      );
      return Promise.resolve();
    });
  });

  test("cannot be read before it is loaded and synced", async () => {
    const { excel } = mockExcel();
    const early = await excel.run(({ workbook }) =>
      Promise.resolve(workbook.getSelectedRange().address),
    );
    expect(early).toMatch(/not loaded/);
  });
});

test("the pane needs the API set 1.10 of Excel, and no later one", async () => {
  const sets = new Set<string>();
  const { sheets } = paneData();
  const column = { name: "load", cells: "Log!A1:A9" };
  for (const act of [
    (port: Port) => port.readSelection(),
    (port: Port) => port.readTarget(),
    (port: Port) => port.addSheet(sheets[0]!.sheet),
    (port: Port) => port.addImage({ png: "", width: 1, height: 1, description: "" }),
    (port: Port) => port.addChart?.({ kind: "points", title: "", across: column, up: [column] }),
  ]) {
    await doing<unknown>(act);
    mock.sets().forEach((set) => sets.add(set));
  }
  const latest = Math.max(...[...sets].map((set) => Number(set.split(".")[1])));
  expect([...sets].every((set) => set.startsWith("1."))).toBe(true);
  expect(latest).toBe(10);
});
