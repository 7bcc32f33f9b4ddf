import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { serialOfTime } from "../../src/cells";
import { cellAddress } from "../../src/formula/address";
import type { CellValue } from "../../src/xlsx/model";
import type { XmlElement } from "../../src/xlsx/package";
import { childOf, childrenOf, parseXml } from "../../src/xlsx/package";
import { convert } from "../libreOffice";
import { named } from "../present";

/** What LibreOffice finds in the cells of a workbook: by sheet, and then by address. */
export type FoundCells = ReadonlyMap<string, ReadonlyMap<string, CellValue>>;

/** Has LibreOffice open workbooks and write out, each with its type, what they hold (ODF 1.3, part 3). */
export function readByLibreOffice(workbooks: readonly Uint8Array[]): FoundCells[] {
  const folder = mkdtempSync(join(tmpdir(), "reading-"));
  try {
    const paths = workbooks.map((workbook, index) => {
      const path = join(folder, `book${index}.xlsx`);
      writeFileSync(path, workbook);
      return path;
    });
    convert(paths, "fods", folder);
    return paths.map((path) => cellsIn(readFileSync(path.replace(/xlsx$/, "fods"), "utf8")));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function cellsIn(xml: string): FoundCells {
  const body = childOf(childOf(parseXml(xml, "a .fods file"), "body"), "spreadsheet");
  return new Map(
    childrenOf(body, "table").map((table) => {
      const cells = new Map<string, CellValue>();
      let row = 0;
      for (const line of rowsIn(table)) {
        let column = 0;
        for (const cell of line.children) {
          const value = valueOf(cell, xml);
          const repeated = Number(cell.attributes["table:number-columns-repeated"] ?? 1);
          for (let at = 0; value !== null && at < repeated; at++) {
            cells.set(cellAddress(row, column + at), value);
          }
          column += repeated;
        }
        row += Number(line.attributes["table:number-rows-repeated"] ?? 1);
      }
      return [named(table.attributes, "table:name"), cells];
    }),
  );
}

/** Rows also stand in groups and among those that are headings on every printed page. */
function rowsIn(element: XmlElement): XmlElement[] {
  return element.children.flatMap((child) => {
    if (child.name === "table-row") return child;
    return child.name.startsWith("table-") ? rowsIn(child) : [];
  });
}

function valueOf({ attributes, children }: XmlElement, xml: string): CellValue {
  const value = (name: string) => named(attributes, `office:${name}`);
  switch (attributes["office:value-type"]) {
    case undefined:
      return null;
    case "boolean":
      return value("boolean-value") === "true";
    case "date":
      return serialOfTime(
        Date.parse(`${value("date-value").padEnd(11, "T").padEnd(19, "00:00:00")}Z`),
      );
    case "time": {
      const [, hours, minutes, seconds] = /^PT(\d+)H(\d+)M([\d.]+)S$/.exec(value("time-value"))!;
      return (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds)) / 86_400;
    }
    case "string":
      return children
        .filter(({ name }) => name === "p")
        .map((paragraph) => textOf(paragraph, xml))
        .join("\n");
    default:
      return Number(value("value"));
  }
}

/** A paragraph's text, whose parts may each look different, and in which further spaces are counted. */
function textOf({ start, end }: XmlElement, xml: string): string {
  const plain = xml
    .slice(start, end)
    .replace(/<text:s(?: text:c="(\d+)")?\/>/g, (_, count = "1") => " ".repeat(Number(count)))
    .replace(/<[^>]*>/g, "");
  return parseXml(`<text>${plain}</text>`, "a paragraph").text;
}
