import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { attributeOf, childOf, parseXml } from "../../src/xlsx/package";
import { caught } from "../present";
import { buildBook, lookAt, spare, workFolder, worksheet, type BookParts } from "./support";

let folder: ReturnType<typeof workFolder>;
beforeEach(() => (folder = workFolder()));
afterEach(() => folder.remove());

async function copy(command: "plain" | "portable", book: BookParts) {
  const input = folder.put("book.xlsx", buildBook(book));
  const { err } = await spare(command, input, "-o", folder.path("out.xlsx"));
  expect(err).toBe("");
  return lookAt(folder.bytes("out.xlsx"));
}

/** The notes of a part, by address. */
function notesIn(xml: string): Record<string, string> {
  const list = childOf(parseXml(xml, "comments"), "commentList")!;
  const textOf = (element: ReturnType<typeof parseXml>): string =>
    element.name === "t" ? element.text : element.children.map(textOf).join("");
  return Object.fromEntries(list.children.map((note) => [attributeOf(note, "ref"), textOf(note)]));
}

const log =
  `<row r="1"><c r="A1"><v>100</v></c><c r="B1"><v>5</v></c>` +
  `<c r="C1" s="0"><f>_xldudf_SPARE_E1RM(A1,B1)</f></c><c r="D1"><f>C1*2</f></c>` +
  `<c r="E1" cm="1"><f t="array" ref="E1">_xldudf_SPARE_RESERVETAPER(3,2,0)</f></c>` +
  `<c r="F1"><f>SUM(_xlfn.ANCHORARRAY(E1))</f></c><c r="G1"><f>_xldudf_SPARE_PLATES(A1)</f></c></row>`;

const comments = [
  `<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>Jo</author></authors>` +
    `<commentList><comment ref="C1" authorId="0"><text><t>best so far</t></text></comment>` +
    `<comment ref="A9" authorId="0"><text><r><t>ask Tom</t></r></text></comment></commentList></comments>`,
  "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml",
] as const;
const drawing = [
  `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel">` +
    `<v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"/>` +
    `<v:shape id="_x0000_s1025" type="#_x0000_t202"><x:ClientData ObjectType="Note"><x:Row>0</x:Row><x:Column>2</x:Column></x:ClientData></v:shape></xml>`,
  "application/vnd.openxmlformats-officedocument.vmlDrawing",
] as const;

describe("a plain copy", () => {
  it("has values in place of our formulas and each formula in a note; others stay", async () => {
    const { value, formulas, text } = await copy("plain", { sheets: { Log: log } });
    expect(value("Log", "C1")).toBeCloseTo(116.6667, 4);
    expect(["E1", "E2", "E3"].map((cell) => value("Log", cell))).toEqual([2, 1, 0]);
    expect(value("Log", "G1")).toBe("25 + 15");
    expect(formulas.map((formula) => formula.text)).toEqual(["C1*2", "SUM($E$1:$E$3)"]);
    expect(notesIn(text("xl/comments1.xml"))).toEqual({
      C1: "=SPARE.E1RM(A1,B1)",
      E1: "=SPARE.RESERVETAPER(3,2,0)",
      G1: "=SPARE.PLATES(A1)",
    });
    const sheet = text("xl/worksheets/sheet1.xml");
    expect(sheet).not.toMatch(/SPARE|cm=/);
    expect(sheet).toMatch(/<legacyDrawing [^>]*r:id="rId2"\/><\/worksheet>$/);
    expect(text("xl/drawings/vmlDrawing1.vml").match(/<v:shape /g)).toHaveLength(3);
    expect(text("[Content_Types].xml")).toContain('Extension="vml"');
  });

  it("keeps the notes of the sheet, and puts ours below one on the same cell", async () => {
    const { text } = await copy("plain", {
      sheets: { Log: worksheet(log, `<legacyDrawing r:id="rId1"/>`) },
      parts: { "xl/comments7.xml": comments, "xl/drawings/vmlDrawing7.vml": drawing },
      references: {
        "xl/worksheets/sheet1.xml": [
          ["vmlDrawing", "../drawings/vmlDrawing7.vml"],
          ["comments", "../comments7.xml"],
        ],
      },
    });
    expect(notesIn(text("xl/comments7.xml"))).toEqual({
      C1: "best so far\n=SPARE.E1RM(A1,B1)",
      A9: "ask Tom",
      E1: "=SPARE.RESERVETAPER(3,2,0)",
      G1: "=SPARE.PLATES(A1)",
    });
    const boxes = text("xl/drawings/vmlDrawing7.vml");
    expect(caught(boxes, /<v:shape id="_x0000_s(\d+)"/g)).toEqual(["1025", "1026", "1027"]);
    expect(boxes.match(/<v:shapetype/g)).toHaveLength(1);
  });

  it("takes cells without formulas out of the order of calculation, or the order away", async () => {
    const chain = (cells: string) =>
      ({
        "xl/calcChain.xml": [
          `<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${cells}</calcChain>`,
          "application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml",
        ],
      }) as const;
    const references = { "xl/workbook.xml": [["calcChain", "calcChain.xml"]] } as const;
    const some = await copy("plain", {
      sheets: { Log: log },
      parts: chain(`<c r="C1" i="1"/><c r="D1"/>`),
      references,
    });
    expect(some.text("xl/calcChain.xml")).toContain(`<c r="D1" i="1"/>`);
    const none = await copy("plain", {
      sheets: { Log: `<row r="1"><c r="A1"><f>SPARE.E1RM(100,5)</f></c></row>` },
      parts: chain(`<c r="A1" i="1"/>`),
      references,
    });
    expect(none.parts.has("xl/calcChain.xml")).toBe(false);
    expect(none.text("[Content_Types].xml")).not.toContain("calcChain");
    expect(none.text("xl/_rels/workbook.xml.rels")).not.toContain("calcChain");
  });
});

describe("a portable copy", () => {
  it("calculates by names of its own, and keeps what has no closed form as a value with a note", async () => {
    const { value, formulas, text } = await copy("portable", { sheets: { Log: log } });
    expect(formulas.map((formula) => formula.text)).toEqual([
      'PORTABLE_E1RM(A1,B1,0,"epley")',
      "C1*2",
      "PORTABLE_RESERVEWEEKS(3,2,0,1)",
      "SUM(_xlfn.ANCHORARRAY(E1))",
    ]);
    expect(value("Log", "C1")).toBeCloseTo(116.6667, 4);
    expect(notesIn(text("xl/comments1.xml"))).toEqual({ G1: "=SPARE.PLATES(A1)" });
    const workbook = parseXml(text("xl/workbook.xml"), "workbook");
    const names = childOf(workbook, "definedNames")!.children.map(
      ({ attributes }) => attributes.name,
    );
    expect(names).toContain("PORTABLE_E1RM");
    expect(names).not.toContain("PORTABLE_MDC");
    expect(workbook.children.map(({ name }) => name)).toEqual(["sheets", "definedNames"]);
    expect(text("xl/workbook.xml")).toMatch(
      /_xlfn\.LAMBDA\(_xlpm\.load,_xlpm\.reps,_xlpm\.reserve,/,
    );
  });

  it("gives each of the cells that shared a formula its own", async () => {
    const { formulas } = await copy("portable", {
      sheets: {
        Log:
          `<row r="1"><c r="A1"><v>7</v></c><c r="B1"><f t="shared" ref="B1:B2" si="0">SPARE.RPETORIR(A1)</f></c></row>` +
          `<row r="2"><c r="A2"><v>8</v></c><c r="B2"><f t="shared" si="0"/></c></row>`,
      },
    });
    expect(formulas.map(({ text }) => text)).toEqual([
      "PORTABLE_RPETORIR(A1)",
      "PORTABLE_RPETORIR(A2)",
    ]);
  });

  it("adds to the names that are there, and only once", async () => {
    const names = `<definedNames><definedName name="PORTABLE_CAP">1</definedName></definedNames><calcPr calcId="1"/>`;
    const { text } = await copy("portable", { sheets: { Log: log }, workbook: names });
    expect(text("xl/workbook.xml").match(/name="PORTABLE_CAP"/g)).toHaveLength(1);
    expect(text("xl/workbook.xml")).toMatch(/<\/definedNames><calcPr/);
  });
});
