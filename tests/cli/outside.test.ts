import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { built } from "../built";
import { convert, hasLibreOffice } from "../libreOffice";
import { hasValidator, validateFile } from "../validator";
import { buildBook, lookAt, spare, workFolder } from "./support";

/*
 * What others make of the workbooks that the command line writes: the Open XML SDK's validator, and
 * LibreOffice Calc, which knows none of our functions and shows what the file holds.
 */

let folder: ReturnType<typeof workFolder>;
beforeEach(() => (folder = workFolder()));
afterEach(() => folder.remove());

const made = ["xlsxwriter", "openpyxl", "exceljs", "libreoffice"];
const fileOf = (name: string) =>
  name === "demo"
    ? built("demo.xlsx")
    : join(import.meta.dirname, "..", "xlsx", "files", `${name}.xlsx`);

/** Some programs write what the validator refuses; we answer for what we add to that. */
function complaints(path: string): string[] {
  const { errors } = validateFile(path);
  return errors.map(({ path, xPath, description }) => `${path} ${xPath} ${description}`);
}

describe.skipIf(!hasValidator)("the Open XML SDK's validator", () => {
  for (const name of [...made, "demo"]) {
    it(`finds nothing that we added to ${name}.xlsx`, async () => {
      const before = complaints(fileOf(name));
      for (const command of ["calc", "plain", "portable"]) {
        const output = folder.path(`${command}.xlsx`);
        expect((await spare(command, fileOf(name), "-o", output)).err).toBe("");
        expect(complaints(output), command).toEqual(before);
      }
    }, 180_000);
  }
});

/** What LibreOffice shows in a sheet of some workbooks, row by row, as the text of its full values. */
function openInOffice(paths: readonly string[], sheet: string, results: string): string[][][] {
  const filter = "csv:Text - txt - csv (StarCalc):9,34,76,1,,0,false,false,false,false,false,-1";
  convert(paths, filter, results);
  return paths.map((path) => {
    const text = readFileSync(join(results, `${basename(path, ".xlsx")}-${sheet}.csv`), "utf8");
    return text
      .split("\n")
      .map((line) => line.split("\t").map((cell) => cell.replace(/^"(.*)"$/, "$1")));
  });
}

describe.skipIf(!hasLibreOffice)("LibreOffice", () => {
  // It trusts text that was computed elsewhere only in files that say Excel wrote them.
  const properties =
    `<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties">` +
    `<Application>Microsoft Excel</Application><AppVersion>16.0300</AppVersion></Properties>`;
  const type = "application/vnd.openxmlformats-officedocument.extended-properties+xml";
  const book = () =>
    buildBook({
      parts: { "docProps/app.xml": [properties, type] },
      references: { "": [["extended-properties", "docProps/app.xml"]] },
      sheets: {
        Log:
          `<row r="1"><c r="A1"><v>102.5</v></c><c r="B1"><v>5</v></c><c r="C1"><f>_xldudf_SPARE_E1RM(A1,B1)</f></c>` +
          `<c r="D1"><f>_xldudf_SPARE_PLATES(142.5)</f></c><c r="E1"><f>" "&amp;_xldudf_SPARE_PLATES(60)&amp;" &lt;"</f></c></row>` +
          `<row r="2"><c r="A2"><v>100</v></c><c r="B2"><v>8</v></c><c r="C2"><f>_xldudf_SPARE_E1RM(A2,B2)</f></c></row>` +
          `<row r="3"><c r="C3" cm="1"><f t="array" ref="C3">_xldudf_SPARE_RESERVETAPER(3,2,0)</f></c></row>`,
      },
    });

  const office = workFolder();
  const [calculated, plain] = [office.path("calculated.xlsx"), office.path("plain.xlsx")];
  let shown: { readonly calculated: string[][]; readonly plain: string[][] };
  beforeAll(async () => {
    const input = office.put("book.xlsx", book());
    await spare("calc", input, "-o", calculated);
    await spare("plain", input, "-o", plain);
    // One start serves both.
    const [one, other] = openInOffice([calculated, plain], "Log", office.path("csv"));
    shown = { calculated: one!, plain: other! };
  });
  afterAll(() => office.remove());

  it("reads the values that were saved", () => {
    expect(complaints(calculated)).toEqual([]);
    const { value } = lookAt(office.bytes("calculated.xlsx"));
    const [first, second] = shown.calculated;
    expect(Number(first?.[2])).toBeCloseTo(Number(value("Log", "C1")), 12);
    expect(Number(second?.[2])).toBeCloseTo(Number(value("Log", "C2")), 12);
    expect(first?.slice(3)).toEqual([value("Log", "D1"), value("Log", "E1")]);
    expect(first?.[4]).toBe(" 20 <");
  });

  it("reads a plain copy, results of several cells and all", () => {
    expect(Number(shown.plain[0]?.[2])).toBeCloseTo((102.5 * 35) / 30, 10);
    expect(shown.plain.slice(2, 5).map((row) => row[2])).toEqual(["2", "1", "0"]);
  });
});

describe("the built program", () => {
  it("runs by itself", () => {
    const input = folder.put(
      "book.xlsx",
      buildBook({ sheets: { Log: `<row r="1"><c r="A1"><f>SPARE.E1RM(100,5)</f></c></row>` } }),
    );
    const out = execFileSync(process.execPath, [built("cli.js"), "calc", input, "--json"], {
      cwd: folder.path("."),
      encoding: "utf8",
    });
    expect(JSON.parse(out)).toMatchObject({
      calculated: [{ cell: "A1", values: [[116.666666666667]] }],
    });
  });
});
