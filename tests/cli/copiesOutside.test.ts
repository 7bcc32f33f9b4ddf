import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { CopyReport } from "../../src/cli/copyReport";
import type { Report } from "../../src/cli/report";
import { attributeOf, childOf, parseXml, type XmlElement } from "../../src/xlsx/package";
import { hasLibreOffice } from "../libreOffice";
import { hasValidator, validateFile } from "../validator";
import { readByLibreOffice } from "../xlsx/libreOfficeCells";
import { buildBook, lookAt, spare, workFolder, worksheet, type BookParts } from "./support";

/*
 * Formulas that stand in no cell: those of a table's columns, names, conditional formats and validations. In a copy
 * none of them may ask for the add-in.
 */

let folder: ReturnType<typeof workFolder>;
beforeEach(() => (folder = workFolder()));
afterEach(() => folder.remove());

async function copy(command: "plain" | "portable", book: BookParts) {
  const input = folder.put("book.xlsx", buildBook(book));
  const output = folder.path("out.xlsx");
  const { err, out, status } = await spare(command, input, "-o", output, "--json");
  expect(err).toBe("");
  return {
    ...lookAt(folder.bytes("out.xlsx")),
    report: JSON.parse(out) as CopyReport & Report,
    status,
    output,
  };
}

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const x14 = "http://schemas.microsoft.com/office/spreadsheetml/2009/9/main";
const xm = "http://schemas.microsoft.com/office/excel/2006/main";

const table =
  `<table xmlns="${main}" id="1" name="Log" displayName="Log" ref="A1:D4" totalsRowCount="1">` +
  `<autoFilter ref="A1:D3"/><tableColumns count="4"><tableColumn id="1" name="load"/><tableColumn id="2" name="reps"/>` +
  `<tableColumn id="3" name="e1rm" totalsRowFunction="custom">` +
  `<calculatedColumnFormula>_xldudf_SPARE_E1RM(Log[[#This Row],[load]],Log[[#This Row],[reps]])</calculatedColumnFormula>` +
  `<totalsRowFormula>_xldudf_SPARE_SWC(Log[e1rm])</totalsRowFormula></tableColumn>` +
  `<tableColumn id="4" name="plates" totalsRowFunction="custom"><calculatedColumnFormula>_xldudf_SPARE_PLATES(Log[[#This Row],[load]])</calculatedColumnFormula>` +
  `<totalsRowFormula>_xldudf_SPARE_PLATES(Log[[#Totals],[load]])</totalsRowFormula></tableColumn>` +
  `</tableColumns><tableStyleInfo name="TableStyleMedium2" showRowStripes="1"/></table>`;

const row = (number: number, load: number, reps: number) =>
  `<row r="${number}"><c r="A${number}"><v>${load}</v></c><c r="B${number}"><v>${reps}</v></c>` +
  `<c r="C${number}"><f>_xldudf_SPARE_E1RM(Log[[#This Row],[load]],Log[[#This Row],[reps]])</f></c>` +
  `<c r="D${number}" t="str"><f>_xldudf_SPARE_PLATES(Log[[#This Row],[load]])</f></c></row>`;

const text = (address: string, value: string) =>
  `<c r="${address}" t="inlineStr"><is><t>${value}</t></is></c>`;

const rules =
  `<conditionalFormatting sqref="A2:A3"><cfRule type="expression" priority="1"><formula>_xldudf_SPARE_RPETORIR(8)&gt;$B2</formula></cfRule>` +
  `<cfRule type="expression" priority="2"><formula>LEN(_xldudf_SPARE_PLATES($A2))&gt;9</formula></cfRule></conditionalFormatting>` +
  `<conditionalFormatting sqref="B2:B3"><cfRule type="expression" priority="3"><formula>_xldudf_SPARE_PLATES($A2)="25"</formula></cfRule></conditionalFormatting>` +
  `<conditionalFormatting sqref="C2:C3"><cfRule type="dataBar" priority="4"><dataBar><cfvo type="min"/><cfvo type="max"/><color rgb="FF638EC6"/></dataBar>` +
  `<extLst><ext xmlns:x14="${x14}" uri="{B025F937-C7B1-47D3-B67F-A62EFF666E3E}"><x14:id>{11111111-2222-3333-4444-555555555555}</x14:id></ext></extLst></cfRule></conditionalFormatting>` +
  `<dataValidations count="2"><dataValidation type="custom" sqref="A2:A3"><formula1>LEN(_xldudf_SPARE_PLATES(A2))&gt;0</formula1></dataValidation>` +
  `<dataValidation type="custom" sqref="B2:B3"><formula1>ISNUMBER(_xldudf_SPARE_E1RM(A2,B2))</formula1></dataValidation></dataValidations>`;

const extensions =
  `<extLst><ext xmlns:x14="${x14}" uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}"><x14:conditionalFormattings>` +
  `<x14:conditionalFormatting xmlns:xm="${xm}"><x14:cfRule type="dataBar" id="{11111111-2222-3333-4444-555555555555}">` +
  `<x14:dataBar><x14:cfvo type="formula"><xm:f>LEN(_xldudf_SPARE_PLATES(60))</xm:f></x14:cfvo><x14:cfvo type="autoMax"/><x14:negativeFillColor rgb="FFFF0000"/><x14:axisColor rgb="FF000000"/></x14:dataBar></x14:cfRule><xm:sqref>C2:C3</xm:sqref></x14:conditionalFormatting>` +
  `</x14:conditionalFormattings></ext><ext xmlns:x14="${x14}" uri="{CCE6A557-97BC-4b89-ADB6-D9C93CAAB3DF}"><x14:dataValidations xmlns:xm="${xm}" count="1">` +
  `<x14:dataValidation type="custom"><x14:formula1><xm:f>_xldudf_SPARE_ROUNDLOAD(Other!A1,2.5)=A2</xm:f></x14:formula1><xm:sqref>A2:A3</xm:sqref></x14:dataValidation></x14:dataValidations></ext></extLst>`;

const book: BookParts = {
  sheets: {
    Log: worksheet(
      `<row r="1">${["load", "reps", "e1rm", "plates"].map((title, at) => text(`${"ABCD"[at]}1`, title)).join("")}</row>` +
        row(2, 100, 5) +
        row(3, 120, 3) +
        `<row r="4"><c r="A4"/><c r="C4"><f>_xldudf_SPARE_SWC(Log[e1rm])</f></c><c r="D4" t="str"><f>_xldudf_SPARE_PLATES(Log[[#Totals],[load]])</f></c></row>` +
        `<row r="6"><c r="A6"><f>best*2</f></c><c r="B6"><f>LEN(bar)</f></c><c r="C6"><f>twice+1</f></c></row>`,
      `${rules}<tableParts count="1"><tablePart r:id="rId1"/></tableParts>${extensions}`,
    ),
    Other: `<row r="1"><c r="A1"><v>60</v></c></row>`,
  },
  workbook:
    `<definedNames><definedName name="bar">_xldudf_SPARE_PLATES(Log!$A$2)</definedName>` +
    `<definedName name="best">MAX(_xldudf_SPARE_E1RM(Log!$A$2:$A$3,Log!$B$2:$B$3))</definedName>` +
    `<definedName name="plain">Log!$A$2</definedName>` +
    `<definedName name="twice" localSheetId="0">LEN(bar)*2</definedName></definedNames>`,
  parts: {
    "xl/tables/table1.xml": [
      table,
      "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml",
    ],
  },
  references: { "xl/worksheets/sheet1.xml": [["table", "../tables/table1.xml"]] },
};

/** The texts of all elements of a name. */
function textsOf(xml: string, name: string): string[] {
  const found: string[] = [];
  const visit = (element: XmlElement) => {
    if (element.name === name) found.push(element.text);
    element.children.forEach(visit);
  };
  visit(parseXml(xml, name));
  return found;
}

const NO_PLATES = "PLATES cannot be written as a formula: it searches among many possibilities";

describe("a portable copy", () => {
  it("rewrites what a formula can express outside the cells, and takes the rest away", async () => {
    const { text, report, status } = await copy("portable", book);
    expect(status).toBe(0);
    const tables = text("xl/tables/table1.xml");
    expect(textsOf(tables, "calculatedColumnFormula")).toEqual([
      'PORTABLE_E1RM(Log[[#This Row],[load]],Log[[#This Row],[reps]],0,"epley")',
    ]);
    expect(textsOf(tables, "totalsRowFormula")).toEqual(["PORTABLE_SWC(Log[e1rm],0.2)"]);
    expect(tables.match(/totalsRowFunction/g)).toHaveLength(1);

    const workbook = text("xl/workbook.xml");
    const names = childOf(parseXml(workbook, "workbook"), "definedNames")!.children;
    const meaning = (wanted: string) =>
      names.find((each) => attributeOf(each, "name") === wanted)?.text;
    expect(meaning("best")).toBe('MAX(PORTABLE_E1RM(Log!$A$2:$A$3,Log!$B$2:$B$3,0,"epley"))');
    expect(meaning("plain")).toBe("Log!$A$2");
    expect([meaning("bar"), meaning("twice")]).toEqual([undefined, undefined]);
    expect(meaning("PORTABLE_RPETORIR")).toContain("LAMBDA");

    const sheet = text("xl/worksheets/sheet1.xml");
    expect(sheet).not.toContain("SPARE_");
    expect(textsOf(sheet, "formula")).toEqual(["PORTABLE_RPETORIR(8)>$B2"]);
    expect(textsOf(sheet, "formula1")[0]).toBe('ISNUMBER(PORTABLE_E1RM(A2,B2,0,"epley"))');
    expect(textsOf(sheet, "f")).toContain('PORTABLE_ROUNDLOAD(Other!A1,2.5,"nearest")=A2');
    expect(sheet).not.toMatch(/dataBar|x14:conditionalFormattings/);
    expect(sheet).toContain(`<dataValidations count="1">`);

    const removed = report.outside.filter(({ reason }) => reason !== null);
    expect(removed.map(({ sheet, place, of, functions }) => [sheet, place, of, functions])).toEqual(
      [
        [null, "bar", "the name", ["PLATES"]],
        ["Log", "twice", "the name", ["PLATES"]],
        ["Log", "D2:D3", 'the column "plates" of the table Log', ["PLATES"]],
        ["Log", "D4", 'the total of "plates" in the table Log', ["PLATES"]],
        ["Log", "A2:A3", "a conditional format", ["PLATES"]],
        ["Log", "B2:B3", "a conditional format", ["PLATES"]],
        ["Log", "A2:A3", "a data validation", ["PLATES"]],
        ["Log", "C2:C3", "a conditional format", ["PLATES"]],
      ],
    );
    expect(report.outside.filter(({ copy }) => copy !== null)).toHaveLength(6);
  });

  it("says cell by cell and by function what stays live", async () => {
    const { report, formulas } = await copy("portable", book);
    expect(report.live.map(({ cell, copy }) => [cell, copy])).toEqual([
      ["C2", '=PORTABLE_E1RM(Log[[#This Row],[load]],Log[[#This Row],[reps]],0,"epley")'],
      ["C3", '=PORTABLE_E1RM(Log[[#This Row],[load]],Log[[#This Row],[reps]],0,"epley")'],
      ["C4", "=PORTABLE_SWC(Log[e1rm],0.2)"],
      ["A6", "=best*2"],
    ]);
    expect(report.frozen.map(({ cell, reason }) => [cell, reason])).toEqual([
      ["D2", NO_PLATES],
      ["D3", NO_PLATES],
      ["D4", NO_PLATES],
      ["B6", "it uses the name bar, which the copy has no more"],
      ["C6", "it uses the name twice, which the copy has no more"],
    ]);
    expect(report.functions).toEqual([
      { function: "E1RM", live: 3, frozen: 0, kept: 0 },
      { function: "PLATES", live: 0, frozen: 5, kept: 0 },
      { function: "SWC", live: 1, frozen: 0, kept: 0 },
    ]);
    expect(formulas.map((formula) => formula.text)).not.toContain("LEN(bar)");
    const input = folder.put("again.xlsx", buildBook(book));
    const { out } = await spare("portable", input, "-o", folder.path("again-out.xlsx"));
    expect(out).toMatch(/By function\n {2}E1RM {4}3 live\n {2}PLATES {2}5 now values\n/);
    expect(out).toMatch(/Removed outside cells\n {2}bar .*PLATES\n/);
  });
});

describe("a plain copy", () => {
  it("has nothing that asks for the add-in, in no cell and outside them", async () => {
    const { parts, text, report } = await copy("plain", book);
    for (const path of parts.keys()) {
      if (/comments|vmlDrawing/.test(path)) continue;
      expect(text(path), path).not.toMatch(/SPARE/);
    }
    expect(text("xl/tables/table1.xml")).not.toMatch(/Formula|totalsRowFunction/);
    expect(text("xl/worksheets/sheet1.xml")).not.toMatch(
      /conditionalFormatting|dataValidation|extLst/,
    );
    expect(report.outside.every(({ copy }) => copy === null)).toBe(true);
    expect(report.outside).toHaveLength(14);
  });
});

describe("a copy of a workbook with a stale cell", () => {
  // SPARE.E1RM reads another workbook, which cannot be worked out here.
  const stale: BookParts = {
    sheets: {
      Log:
        `<row r="1"><c r="A1"><f>_xldudf_SPARE_PLATES([1]Sheet!A1)+bar</f><v>7</v></c>` +
        `<c r="B1"><f>_xldudf_SPARE_E1RM([1]Sheet!A1,5)</f><v>8</v></c><c r="C1"><f>_xldudf_SPARE_PLATES(60)</f></c></row>`,
    },
    workbook: `<definedNames><definedName name="bar">_xldudf_SPARE_PLATES(Log!$A$9)</definedName></definedNames>`,
  };

  it("keeps its formula, says so, and keeps the names it needs", async () => {
    const plain = await copy("plain", stale);
    expect(plain.status).toBe(1);
    expect(plain.formulas.map((formula) => formula.text)).toEqual([
      "_xldudf_SPARE_PLATES([1]Sheet!A1)+bar",
      "_xldudf_SPARE_E1RM([1]Sheet!A1,5)",
    ]);
    expect(plain.value("Log", "A1")).toBe(7);
    expect(plain.report.kept.map(({ cell }) => cell)).toEqual(["A1", "B1"]);
    expect(plain.report.frozen.map(({ cell }) => cell)).toEqual(["C1"]);
    expect(plain.text("xl/workbook.xml")).toContain('name="bar"');

    const portable = await copy("portable", stale);
    expect(portable.status).toBe(1);
    expect(portable.formulas.map((formula) => formula.text)).toEqual([
      "_xldudf_SPARE_PLATES([1]Sheet!A1)+bar",
      'PORTABLE_E1RM([1]Sheet!A1,5,0,"epley")',
    ]);
    expect(portable.value("Log", "B1")).toBe(8);
    expect(portable.report.left.map(({ cell }) => cell)).toEqual(["A1", "B1"]);
  });
});

describe("the notes of a copy", () => {
  it("are one for a run of filled-down formulas", async () => {
    const rows = Array.from({ length: 1000 }, (_, at) => {
      const number = at + 1;
      const formula =
        number === 500 ? "_xldudf_SPARE_PLATES(1000)" : `_xldudf_SPARE_PLATES(A${number})`;
      return `<row r="${number}"><c r="A${number}"><v>${60 + 2.5 * (number % 9)}</v></c><c r="B${number}"><f>${formula}</f></c></row>`;
    });
    const { text } = await copy("plain", { sheets: { Log: rows.join("") } });
    const notes = text("xl/comments1.xml");
    expect(notes.match(/<comment /g)).toHaveLength(3);
    expect(notes).toContain("=SPARE.PLATES(A1)\nand so on, filled down to B499");
    expect(notes).toContain("=SPARE.PLATES(A501)\nand so on, filled down to B1000");
    expect(notes.length).toBeLessThan(2000);
  });
});

describe.skipIf(!hasValidator)("the Open XML SDK's validator", () => {
  it("finds nothing wrong with such copies", async () => {
    expect(validateFile(folder.put("input.xlsx", buildBook(book))).errors).toEqual([]);
    for (const command of ["plain", "portable"] as const) {
      const { output } = await copy(command, book);
      expect(validateFile(output).errors, command).toEqual([]);
    }
  }, 120_000);
});

describe.skipIf(!hasLibreOffice)("LibreOffice", () => {
  it("reads the values of such copies", async () => {
    await copy("plain", book);
    const [cells] = readByLibreOffice([folder.bytes("out.xlsx")]);
    expect(cells?.get("Log")?.get("C3")).toBeCloseTo(132, 6);
    expect(cells?.get("Log")?.get("D3")).toBe("25 + 25");
  }, 120_000);
});
