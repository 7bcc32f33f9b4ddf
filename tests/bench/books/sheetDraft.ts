import { areaAddress, cellAddress, quoteSheet, type Area } from "../../../src/formula/address";
import { toFile } from "../../../src/formula/future";
import { isError, type CellValue } from "../../../src/xlsx/model";
import { escapeXml } from "../../../src/xlsx/package";

/** How a formula is kept in a file: for its cell, as one of a filled-down group, or over the cells it spills into. */
export type Kind =
  | { readonly is: "one cell" }
  | { readonly is: "filled down"; readonly group: number; readonly over: Area | undefined }
  | { readonly is: "spilling"; readonly over: Area };

/** A sheet while it is written: its cells' XML, and where there is room on its right. */
export class SheetDraft {
  /** The first column from which on nothing stands yet. */
  free = 0;
  private readonly rows = new Map<number, Map<number, string>>();

  constructor(readonly name: string) {}

  put(row: number, column: number, value: CellValue): void {
    if (value !== null) this.set(row, column, cellXml(row, column, value));
  }

  /** Puts a formula with the value that it was saved with. */
  putFormula(row: number, column: number, formula: string, saved: CellValue, kind: Kind): void {
    const text = escapeXml(toFile(formula));
    const [attributes, written] = formulaXml(text, kind);
    const cell = kind.is === "spilling" ? ` cm="1"` : "";
    const xml = `<f${attributes}>${written}</f>`;
    this.set(row, column, cellXml(row, column, saved, cell, xml));
  }

  /** A reference to cells of this sheet from another, or from itself. */
  reference(area: Area, from: SheetDraft, absolute = false): string {
    const address = areaAddress(area);
    const cells = absolute ? address.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2") : address;
    return from === this ? cells : `${quoteSheet(this.name)}!${cells}`;
  }

  xml(): string {
    const inOrder = <T>(entries: Iterable<readonly [number, T]>) =>
      [...entries].sort(([one], [other]) => one - other);
    return inOrder(this.rows)
      .map(([row, cells]) => {
        const written = inOrder(cells).map(([, xml]) => xml);
        return `<row r="${row + 1}">${written.join("")}</row>`;
      })
      .join("");
  }

  private set(row: number, column: number, xml: string): void {
    const cells = this.rows.get(row) ?? new Map<number, string>();
    this.rows.set(row, cells.set(column, xml));
    this.free = Math.max(this.free, column + 1);
  }
}

function formulaXml(text: string, kind: Kind): readonly [attributes: string, text: string] {
  switch (kind.is) {
    case "one cell":
      return ["", text];
    case "spilling":
      return [` t="array" ref="${areaAddress(kind.over)}"`, text];
    case "filled down":
      // The first cell has the formula for all of them.
      return kind.over
        ? [` t="shared" ref="${areaAddress(kind.over)}" si="${kind.group}"`, text]
        : [` t="shared" si="${kind.group}"`, ""];
  }
}

function cellXml(row: number, column: number, value: CellValue, attributes = "", formula = "") {
  const start = `<c r="${cellAddress(row, column)}"${attributes}`;
  if (value === null) return `${start}>${formula}</c>`;
  if (typeof value === "number") return `${start}>${formula}<v>${value}</v></c>`;
  if (typeof value === "boolean") return `${start} t="b">${formula}<v>${Number(value)}</v></c>`;
  const text = escapeXml(value);
  if (formula === "") return `${start} t="inlineStr"><is><t>${text}</t></is></c>`;
  return `${start} t="${isError(value) ? "e" : "str"}">${formula}<v>${text}</v></c>`;
}

/** The part of the Table `Sets`, which starts a sheet, with these headings over so many rows. */
export function tableXml(headings: readonly string[], rows: number): string {
  const ref = `A1:${cellAddress(rows, headings.length - 1)}`;
  const columns = headings.map((name, at) => `<tableColumn id="${at + 1}" name="${name}"/>`);
  return (
    `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Sets" displayName="Sets" ` +
    `ref="${ref}"><autoFilter ref="${ref}"/><tableColumns count="${headings.length}">${columns.join("")}</tableColumns></table>`
  );
}
