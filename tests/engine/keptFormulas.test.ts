import type { ICellData, IWorkbookData } from "@univerjs/core";
import { expect, it } from "vitest";
import { keepFormulas, restoreFormulas } from "../../src/engine/keptFormulas";
import { contentsData } from "../../src/engine/data/contentsData";
import { only } from "../present";

const known = new Set(["SUM", "FILTER"]);

/** A sheet with one formula and the value it was saved with in A1. */
function bookWith(formula: string, value: number): IWorkbookData {
  const data = contentsData({ Log: [[value]] });
  const sheet = only(Object.values(data.sheets));
  sheet.cellData = { 0: { 0: { f: formula, v: value, t: 2 } } };
  return data;
}

function cellOf(data: IWorkbookData): ICellData {
  const cell = only(Object.values(data.sheets)).cellData?.[0]?.[0];
  if (!cell) throw new Error("A1 holds nothing");
  return cell;
}

it.each([
  "=WEBSERVICE(B1)",
  "=SUM([1]Other!A1)",
  "=SUM(One:Three!B2)",
  "=1+CUBEVALUE(B1)",
  "=SUM((A2:A3,C2:C3))",
  "=SUM(A2:B9 B2:C9)",
])("%s keeps the file's value, and its formula when it is saved", (formula) => {
  const { data, kept } = keepFormulas(bookWith(formula, 12.5), known);
  expect(kept).toEqual([{ sheet: "Log", address: "A1" }]);
  expect(cellOf(data)).toMatchObject({ v: 12.5 });
  expect(cellOf(data).f).toBeUndefined();
  const saved = restoreFormulas(data);
  expect(cellOf(saved.data)).toMatchObject({ f: formula, v: 12.5 });
  expect(saved.kept).toEqual(kept);
});

it.each(["=SUM(A2:A9)", "=SPARE.E1RM(100,5)", "=_xlfn._xlws.FILTER(A2:A9,A2:A9>1)", "=B1*2"])(
  "%s is computed",
  (formula) => {
    const { data, kept } = keepFormulas(bookWith(formula, 1), known);
    expect(kept).toEqual([]);
    expect(cellOf(data).f).toBe(formula);
  },
);

it("gives way to what is written over the value", () => {
  const { data } = keepFormulas(bookWith("=WEBSERVICE(B1)", 12.5), known);
  cellOf(data).v = 13;
  expect(cellOf(restoreFormulas(data).data).f).toBeUndefined();
});
