import { writeFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { IWorkbookData } from "@univerjs/core";
import { expect, it } from "vitest";
import { lossesOf, readPackage, readWorkbook } from "../../../src/xlsx";
import { buildBook, worksheet } from "../../cli/support";
import { only } from "../../present";
import { hasValidator, validateFile } from "../../validator";
import { readData, writeData } from "./support";

/** Four sets, of which the filter hides the two in the middle. */
const squats = [
  ["lift", "load"],
  ["squat", 100],
  ["bench", 80],
  ["row <1>", 70],
  ["squat", 120],
] as const;

function fileWith(filter: string): Uint8Array {
  const rows = squats.map((cells, index) => {
    const hidden = index === 2 || index === 3 ? ' hidden="1"' : "";
    const written = cells.map((value, column) => {
      const address = `${"AB"[column]}${index + 1}`;
      return typeof value === "number"
        ? `<c r="${address}"><v>${value}</v></c>`
        : `<c r="${address}" t="inlineStr"><is><t>${value.replace("<", "&lt;")}</t></is></c>`;
    });
    return `<row r="${index + 1}"${hidden}>${written.join("")}</row>`;
  });
  return buildBook({ sheets: { "Log 1": worksheet(rows.join(""), filter) } });
}

const sheetOf = (bytes: Uint8Array) => only(readWorkbook(readPackage(bytes)).sheets);
const sheet1 = ({ sheets }: IWorkbookData) => sheets.sheet1!;
const hiddenIn = (bytes: Uint8Array) =>
  sheetOf(bytes)
    .rows.filter(({ hidden }) => hidden)
    .map(({ row }) => row);

/** What the page does with a file that it opens and saves. */
function savedAgain(bytes: Uint8Array): Uint8Array {
  const data = readData(bytes);
  const cells = sheet1(data).cellData!;
  const read = (_: string, address: string) =>
    cells[Number(address.slice(1)) - 1]?.["AB".indexOf(address.charAt(0))]?.v ?? null;
  return writeData({ save: () => data, read, spill: () => undefined });
}

const kinds = [
  [
    "texts and blanks",
    '<filterColumn colId="0"><filters blank="1"><filter val="squat"/></filters></filterColumn>',
    { column: 0, texts: { shown: ["squat"], blank: true } },
  ],
  [
    "two conditions",
    '<filterColumn colId="1"><customFilters and="1"><customFilter operator="greaterThan" val="90"/>' +
      '<customFilter operator="notEqual" val="110"/></customFilters></filterColumn>',
    {
      column: 1,
      conditions: {
        both: true,
        list: [
          { is: "greaterThan", than: "90" },
          { is: "notEqual", than: "110" },
        ],
      },
    },
  ],
] as const;

it.each(kinds)("a filter by %s is read, shown by the page and saved again", (_, xml, column) => {
  const before = fileWith(`<autoFilter ref="A1:B5">${xml}</autoFilter>`);
  const area = { startRow: 0, startColumn: 0, endRow: 4, endColumn: 1 };
  expect(sheetOf(before).filter).toEqual({ area, columns: [column] });
  expect(lossesOf(readPackage(before))).toEqual([]);

  const data = readData(before);
  // The filter hides the rows, so that it can show them again.
  expect(sheet1(data).rowData).toEqual({});
  const kept = data.resources!.find(({ name }) => name === "SHEET_FILTER_PLUGIN")!.data;
  expect(JSON.parse(kept)).toMatchObject({ sheet1: { ref: area, cachedFilteredOut: [2, 3] } });

  const after = savedAgain(before);
  expect(sheetOf(after).filter).toEqual(sheetOf(before).filter);
  expect(hiddenIn(after)).toEqual([2, 3]);
  // Excel knows a filtered range by a name, too.
  expect(readWorkbook(readPackage(after)).names).toEqual([
    {
      name: "_xlnm._FilterDatabase",
      text: "'Log 1'!$A$1:$B$5",
      sheet: "Log 1",
      hidden: true,
    },
  ]);
});

it("a filter by colour is said to be lost, and what it hides stays hidden", () => {
  const column = '<filterColumn colId="0"><colorFilter dxfId="0"/></filterColumn>';
  const file = fileWith(`<autoFilter ref="A1:B5">${column}</autoFilter>`);
  expect(lossesOf(readPackage(file))).toEqual(["filters by colour"]);
  expect(sheetOf(file).filter).toBeUndefined();
  expect(hiddenIn(savedAgain(file))).toEqual([2, 3]);
});

it.skipIf(!hasValidator)("a saved filter passes the validator", () => {
  const folder = mkdtempSync(join(tmpdir(), "filters-"));
  try {
    const path = join(folder, "filter.xlsx");
    writeFileSync(
      path,
      savedAgain(fileWith(`<autoFilter ref="A1:B5">${kinds[0][1]}</autoFilter>`)),
    );
    expect(validateFile(path)).toMatchObject({ ok: true, errors: [] });
  } finally {
    rmSync(folder, { recursive: true });
  }
});
