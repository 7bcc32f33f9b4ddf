import { chmodSync, statSync, symlinkSync, lstatSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Report } from "../../src/cli/report";
import { buildBook, calcToFile, lookAt, spare, workFolder, worksheet } from "./support";

let folder: ReturnType<typeof workFolder>;
beforeEach(() => (folder = workFolder()));
afterEach(() => folder.remove());

const out = () => lookAt(folder.bytes("out.xlsx"));
const numbers = (first: string, ...cells: readonly (number | string)[]) =>
  cells
    .map((cell, index) => {
      const address = String.fromCharCode(first.charCodeAt(0) + index) + first.slice(1);
      return typeof cell === "number"
        ? `<c r="${address}"><v>${cell}</v></c>`
        : `<c r="${address}" t="inlineStr"><is><t>${cell}</t></is></c>`;
    })
    .join("");

describe("what is worked out", () => {
  it("is a formula in any of the three spellings, alone and inside a larger one", async () => {
    await calcToFile(folder, {
      sheets: {
        Log:
          `<row r="1">${numbers("A1", 100, 5)}<c r="D1"><f>SPARE.E1RM(A1,B1)</f></c>` +
          `<c r="E1"><f>_xldudf_SPARE_E1RM(A1,B1)*2</f></c>` +
          `<c r="F1"><f>ROUND(SPARE_E1RM(A1,B1),1)&amp;" kg &lt;now&gt; "</f></c></row>`,
      },
    });
    const { value, text } = out();
    expect(value("Log", "D1")).toBeCloseTo(116.6667, 4);
    expect(value("Log", "E1")).toBeCloseTo(233.3333, 4);
    expect(value("Log", "F1")).toBe("116.7 kg <now> ");
    expect(text("xl/worksheets/sheet1.xml")).toContain(
      '<v xml:space="preserve">116.7 kg &lt;now&gt; </v>',
    );
  });

  it("follows shared formulas, other sheets with quotes in their names, and formulas that read ours", async () => {
    await calcToFile(folder, {
      sheets: {
        "It's Tom & Jo":
          `<row r="1">${numbers("A1", 100, 5)}<c r="C1"><f t="shared" ref="C1:C3" si="0">SPARE.E1RM(A1,B1)</f></c></row>` +
          `<row r="2">${numbers("A2", 110, 3)}<c r="C2"><f t="shared" si="0"/></c></row>` +
          `<row r="3">${numbers("A3", 120, 1)}<c r="C3"><f t="shared" si="0"/></c></row>`,
        Best: `<row r="1"><c r="A1"><f>MAX('It''s Tom &amp; Jo'!C1:C3)</f><v>1</v></c></row>`,
      },
    });
    const { value, text } = out();
    expect(value("It's Tom & Jo", "C2")).toBeCloseTo(121, 9);
    expect(value("It's Tom & Jo", "C3")).toBe(120);
    expect(value("Best", "A1")).toBeCloseTo(121, 9);
    expect(text("xl/worksheets/sheet1.xml")).toContain('<f t="shared" si="0"/>');
  });

  it("follows names, also of one sheet, and names that hold our functions", async () => {
    await calcToFile(folder, {
      sheets: {
        Log: `<row r="1">${numbers("A1", 100, 5)}<c r="C1"><f>SPARE.E1RM(load,reps)</f></c><c r="D1"><f>best+0</f></c></row>`,
        Other: `<row r="1">${numbers("A1", 200)}<c r="C1"><f>SPARE.E1RM(load,reps)</f></c></row>`,
      },
      workbook:
        `<definedNames><definedName name="best">SPARE.E1RM(Log!$A$1,Log!$B$1)</definedName>` +
        `<definedName name="load">Log!$A$1</definedName>` +
        `<definedName name="load" localSheetId="1">Other!$A$1</definedName>` +
        `<definedName name="reps">Log!$B$1</definedName></definedNames>`,
    });
    const { value } = out();
    expect(value("Log", "C1")).toBeCloseTo(116.6667, 4);
    expect(value("Log", "D1")).toBeCloseTo(116.6667, 4);
    expect(value("Other", "C1")).toBeCloseTo(233.3333, 4);
  });

  it("follows references into tables", async () => {
    const table =
      `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Sets" ` +
      `displayName="Sets" ref="A1:C3"><autoFilter ref="A1:C3"/><tableColumns count="3">` +
      `<tableColumn id="1" name="load"/><tableColumn id="2" name="reps"/><tableColumn id="3" name="e1RM"/>` +
      `</tableColumns></table>`;
    const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml";
    await calcToFile(folder, {
      sheets: {
        Log: worksheet(
          `<row r="1">${numbers("A1", "load", "reps", "e1RM")}</row>` +
            `<row r="2">${numbers("A2", 100, 5)}<c r="C2"><f>SPARE.E1RM(Sets[[#This Row],[load]],Sets[[#This Row],[reps]])</f></c></row>` +
            `<row r="3">${numbers("A3", 110, 3)}<c r="C3"><f>SPARE.E1RM(Sets[[#This Row],[load]],Sets[[#This Row],[reps]])</f></c></row>` +
            `<row r="5"><c r="A5"><f>MAX(Sets[e1RM])</f></c></row>`,
          `<tableParts count="1"><tablePart r:id="rId1"/></tableParts>`,
        ),
      },
      parts: { "xl/tables/table1.xml": [table, type] },
      references: { "xl/worksheets/sheet1.xml": [["table", "../tables/table1.xml"]] },
    });
    expect(out().value("Log", "C3")).toBeCloseTo(121, 9);
    expect(out().value("Log", "A5")).toBeCloseTo(121, 9);
  });

  it("takes dates that are written out for their days", async () => {
    const days = ["2026-01-05", "2026-01-08", "2026-01-12T18:30:00"];
    const rows = days.map((day, index) => {
      const date = `<c r="A${index + 1}" t="d"><v>${day}</v></c>`;
      return `<row r="${index + 1}">${date}${numbers(`B${index + 1}`, 100 + index, 5)}</row>`;
    });
    const trend = `<c r="A5" cm="1"><f t="array" ref="A5">SPARE.STRENGTHTREND(A1:A3,B1:B3,C1:C3)</f></c>`;
    const report = await calcToFile(folder, {
      sheets: { Log: `${rows.join("")}<row r="5">${trend}</row>` },
    });
    expect(report.failed).toEqual([]);
    expect(out().value("Log", "A6")).toBe(46_027);
  });

  it("leaves the days of a workbook that counts from 1904 as they are", async () => {
    const report = await calcToFile(folder, {
      properties: `<workbookPr date1904="1"/>`,
      sheets: {
        Log:
          [0, 3, 7]
            .map(
              (day, row) =>
                `<row r="${row + 1}">${numbers(`A${row + 1}`, 42_000 + day, 100 + row, 5)}</row>`,
            )
            .join("") +
          `<row r="5"><c r="A5" cm="1"><f t="array" ref="A5">SPARE.STRENGTHTREND(A1:A3,B1:B3,C1:C3)</f></c></row>` +
          `<row r="20"><c r="A20"><f>DATE(2019,1,1)+SPARE.RPETORIR(10)</f><v>42000</v></c></row>`,
      },
    });
    expect(out().value("Log", "A6")).toBe(42_000);
    expect(out().value("Log", "A20")).toBe(42_000);
    expect(report.left).toEqual([
      expect.objectContaining({
        cell: "A20",
        reason: "DATE counts days from 1904 in this workbook",
      }),
    ]);
  });
});

describe("results of several cells", () => {
  const log = (formula: string, after = "") =>
    `<row r="1">${numbers("A1", 100, 5)}${formula}</row>` +
    `<row r="2">${numbers("A2", 110, 5)}</row><row r="3">${numbers("A3", 120, 5)}</row>${after}`;

  it("spill over new cells, between and behind those that are there, and say so in ref", async () => {
    await calcToFile(folder, {
      sheets: {
        Log: worksheet(
          log(
            `<c r="D1" cm="1"><f t="array" ref="D1">SPARE.E1RM(A1:A4,B1:B4)</f><v>0</v></c>`,
            `<row r="5" spans="1:2">${numbers("E5", 1)}</row>`,
          ),
          "",
          `<dimension ref="A1:E5"/>`,
        ),
      },
    });
    const { value, text } = out();
    expect(["D1", "D2", "D3", "D4"].map((cell) => value("Log", cell))).toEqual([
      expect.closeTo(116.6667, 4),
      expect.closeTo(128.3333, 4),
      140,
      "",
    ]);
    const xml = text("xl/worksheets/sheet1.xml");
    expect(xml).toContain('<f t="array" ref="D1:D4">');
    expect(xml).toContain('</row><row r="4"><c r="D4" t="str"><v></v></c></row><row r="5"');
  });

  it("stand in the order of columns where the next cell follows at once", async () => {
    await calcToFile(folder, {
      sheets: {
        Log:
          `<row r="1">${numbers("A1", 100, 5)}<c r="C1" cm="1"><f t="array" ref="C1">SPARE.E1RM(A1:A2,B1:B2)</f></c></row>` +
          `<row r="2">${numbers("A2", 110, 5)}<c r="D2"><f>C2+1</f><v>5</v></c></row>`,
      },
    });
    const cells = [
      ...out()
        .text("xl/worksheets/sheet1.xml")
        .matchAll(/<c r="([A-Z]+2)"/g),
    ];
    expect(cells.map(([, address]) => address)).toEqual(["A2", "B2", "C2", "D2"]);
    expect(out().value("Log", "D2")).toBeCloseTo(129.3333, 4);
  });

  it("take what spilled before away where there is less now, and its entry in the calculation order", async () => {
    await calcToFile(folder, {
      sheets: {
        Log: log(
          `<c r="D1" cm="1"><f t="array" ref="D1:D5">SPARE.E1RM(A1:A3,B1:B3)</f><v>0</v></c>`,
          `<row r="4"><c r="D4" s="0"><v>7</v></c></row><row r="5"><c r="D5"><v>8</v></c></row>`,
        ),
      },
      parts: {
        "xl/calcChain.xml": [
          `<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><c r="D1" i="1" a="1"/><c r="D5" a="1"/><c r="D3"/></calcChain>`,
          "application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml",
        ],
      },
      references: { "xl/workbook.xml": [["calcChain", "calcChain.xml"]] },
    });
    const { value, text } = out();
    expect([value("Log", "D3"), value("Log", "D4"), value("Log", "D5")]).toEqual([140, null, null]);
    expect(text("xl/worksheets/sheet1.xml")).toContain('<c r="D4" s="0"/>');
    expect(text("xl/calcChain.xml")).toContain('<c r="D1" i="1" a="1"/><c r="D3"/>');
  });

  it("show an error in the first cell where something is in the way, which stays", async () => {
    const report = await calcToFile(folder, {
      sheets: {
        Log: log(
          `<c r="D1" cm="1"><f t="array" ref="D1:D2">SPARE.E1RM(A1:A3,B1:B3)</f><v>0</v></c>`,
        )
          .replace("</row>", `</row>`)
          .replace(
            numbers("A3", 120, 5),
            `${numbers("A3", 120, 5)}<c r="D3" t="inlineStr"><is><t>taken</t></is></c>`,
          ),
      },
    });
    expect([out().value("Log", "D1"), out().value("Log", "D3")]).toEqual(["#VALUE!", "taken"]);
    expect(report.failed).toEqual([
      expect.objectContaining({
        cell: "D1",
        error: "#SPILL!",
        message: expect.stringContaining("not empty"),
      }),
    ]);
  });

  it("fill an array of fixed size: cut where it is smaller, #N/A where it is larger, repeated where one wide", async () => {
    await calcToFile(folder, {
      sheets: {
        Log: log(
          `<c r="D1"><f t="array" ref="D1:D2">SPARE.E1RM(A1:A3,B1:B3)</f></c>` +
            `<c r="E1"><f t="array" ref="E1:F4">SPARE.E1RM(A1:A3,B1:B3)</f></c>` +
            `<c r="H1"><f>SUM(D1:D4)</f></c><c r="I1"><f>COUNT(E1:F4)</f></c>`,
        ),
      },
    });
    const { value, text } = out();
    const row = (letters: string, number: number) =>
      [...letters].map((c) => value("Log", c + String(number)));
    expect(row("DEF", 3)).toEqual([null, 140, 140]);
    expect(row("EF", 4)).toEqual(["#N/A", "#N/A"]);
    expect(row("HI", 1)).toEqual([expect.closeTo(245, 9), 6]);
    expect(text("xl/worksheets/sheet1.xml")).toContain('ref="D1:D2"');
  });

  it("give a formula for one cell its first", async () => {
    await calcToFile(folder, {
      sheets: { Log: log(`<c r="D1"><f>SPARE.E1RM(A1:A3,B1:B3)</f></c>`) },
    });
    expect([out().value("Log", "D1"), out().value("Log", "D2")]).toEqual([
      expect.closeTo(116.6667, 4),
      null,
    ]);
  });
});

describe("what is left as it was saved", () => {
  it("is a formula we cannot work out; those that read it go on from its saved value", async () => {
    const report = await calcToFile(folder, {
      sheets: {
        Log:
          `<row r="1"><c r="A1"><f>CUBEVALUE("x","load")</f><v>100</v></c><c r="B1"><f>[1]Plan!$B$2</f><v>5</v></c>` +
          `<c r="C1"><f>SPARE.E1RM(A1,B1)</f><v>1</v></c><c r="D1"><f>SPARE.E1RM([1]Plan!$A$1,5)</f><v>42</v></c></row>`,
      },
    });
    const values = ["A1", "B1", "C1", "D1"].map((cell) => out().value("Log", cell));
    expect(values).toEqual([100, 5, expect.closeTo(116.6667, 4), 42]);
    expect(report.left.map(({ cell, reason }) => [cell, reason])).toEqual([
      ["D1", "it reads another workbook"],
    ]);
  });

  it("is a formula apart from ours, whatever the engine would make of it", async () => {
    const report = await calcToFile(folder, {
      sheets: {
        Log:
          `<row r="1"><c r="A1"><f>VALUE("1 Jan 2024 x")</f><v>100</v></c><c r="B1"><f>A1+0</f><v>100</v></c>` +
          `<c r="C1"><f>SPARE.E1RM(B1,5)</f></c><c r="D1"><f>1/(C1-C1)</f><v>3</v></c></row>`,
      },
    });
    expect(report.left).toEqual([]);
    expect(out().value("Log", "A1")).toBe(100);
    expect(out().value("Log", "B1")).toBe(100);
    expect(out().value("Log", "C1")).toBeCloseTo(116.6667, 4);
    expect(out().value("Log", "D1")).toBe("#DIV/0!");
  });

  it("is a circle of ours, named as one, while the rest is computed", async () => {
    const report = await calcToFile(folder, {
      sheets: {
        Log:
          `<row r="1"><c r="A1"><f>SPARE.E1RM(B1,5)</f><v>7</v></c><c r="B1"><f>A1+1</f><v>6</v></c>` +
          `<c r="C1"><f>SPARE.E1RM(100,5)</f></c></row>`,
      },
    });
    expect(report.left.map(({ cell, reason }) => [cell, reason])).toContainEqual([
      "A1",
      "it reads its own result",
    ]);
    expect([out().value("Log", "A1"), out().value("Log", "B1")]).toEqual([7, 6]);
    expect(out().value("Log", "C1")).toBeCloseTo(116.6667, 4);
  });

  it("is what a name that refers to itself is used in", async () => {
    const report = await calcToFile(folder, {
      sheets: {
        Log:
          `<row r="1"><c r="A1"><f>foo</f><v>7</v></c>` +
          `<c r="C1"><f>SPARE.E1RM(foo,5)</f><v>8</v></c><c r="D1"><f>SPARE.E1RM(100,5)</f></c></row>`,
      },
      workbook: `<definedNames><definedName name="foo">foo+1</definedName></definedNames>`,
    });
    expect(report.left.map(({ cell, reason }) => [cell, reason])).toContainEqual([
      "C1",
      "the name foo refers to itself",
    ]);
    expect([out().value("Log", "A1"), out().value("Log", "C1")]).toEqual([7, 8]);
    expect(out().value("Log", "D1")).toBeCloseTo(116.6667, 4);
  });
});

describe("the rest of the file", () => {
  const comments = `<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>Jo</author></authors><commentList><comment ref="A1" authorId="0"><text><t>ask  Tom</t></text></comment></commentList></comments>`;
  const extras = {
    "xl/charts/chart1.xml": [
      `<c:chartSpace xmlns:c="urn:c">\n<c:f>Log!$C$1</c:f></c:chartSpace>`,
      "application/vnd.openxmlformats-officedocument.drawingml.chart+xml",
    ],
    "xl/drawings/drawing1.xml": [
      `<xdr:wsDr xmlns:xdr="urn:d"/>`,
      "application/vnd.openxmlformats-officedocument.drawing+xml",
    ],
    "xl/pivotTables/pivotTable1.xml": [
      `<pivotTableDefinition/>`,
      "application/vnd.openxmlformats-officedocument.spreadsheetml.pivotTable+xml",
    ],
    "xl/vbaProject.bin": [
      Uint8Array.from({ length: 3000 }, (_, index) => (index * 37) % 256),
      "application/vnd.ms-office.vbaProject",
    ],
    "customXml/item1.xml": [`\ufeff<plan  a='1'\t/>`, "application/xml"],
    "xl/comments1.xml": [
      comments,
      "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml",
    ],
  } as const;
  const sheet = (value: string, type: string) =>
    `<?xml version='1.0' encoding='utf-8'?>\n<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"\n  xmlns:r="r">` +
    `<x:sheetPr/><x:cols><x:col min="1" max="1" width="9.5"/></x:cols>\n <x:sheetData>\n` +
    `  <x:row r='1' ht="20"  customHeight="1">\n   <x:c s='3' r='A1'><x:v>100.0</x:v></x:c><x:c r="B1"><x:v>5</x:v></x:c>\n` +
    `   <x:c r='C1' s="2"${type}><x:f ca="1">SPARE.E1RM(A1,B1)</x:f>${value}</x:c>\n   <x:c r="D1"><x:f>A1*1</x:f><x:v>100</x:v></x:c>\n  </x:row>\n </x:sheetData>` +
    `<x:conditionalFormatting sqref="C1"><x:cfRule type="cellIs" priority="1" operator="greaterThan"><x:formula>100</x:formula></x:cfRule></x:conditionalFormatting>` +
    `<!-- kept --></x:worksheet>`;

  it("stays byte for byte as it is, and so does all of the sheet but the value", async () => {
    const input = buildBook({ sheets: { Log: sheet("<x:v>7</x:v>", ' t="n"') }, parts: extras });
    await calcToFile(folder, input);
    const before = lookAt(input).parts;
    const { parts, text } = out();
    expect([...parts.keys()]).toEqual([...before.keys()]);
    for (const [path, bytes] of before) {
      if (path !== "xl/worksheets/sheet1.xml") expect(parts.get(path), path).toEqual(bytes);
    }
    expect(text("xl/worksheets/sheet1.xml")).toBe(sheet("<x:v>116.666666666667</x:v>", ""));
  });

  it("stays in order where the value was empty, or the cell or its row", async () => {
    await calcToFile(folder, {
      sheets: {
        Log:
          `<row r="1"><c r="A1" t="str"><f>SPARE.E1RM(100,5)</f><v></v></c><c r="B1"><f>SPARE.E1RM(100,5)</f><v/></c>` +
          `<c r="D1" cm="1"><f t="array" ref="D1">SPARE.RESERVETAPER(3,2,0)</f></c></row><row r="2"><c r="D2" s="0"/></row><row r="3"/>`,
      },
    });
    const number = "<v>116.666666666667</v>";
    expect(out().text("xl/worksheets/sheet1.xml")).toContain(
      `<row r="1"><c r="A1"><f>SPARE.E1RM(100,5)</f>${number}</c><c r="B1"><f>SPARE.E1RM(100,5)</f>${number}</c>` +
        `<c r="D1" cm="1"><f t="array" ref="D1:D3">SPARE.RESERVETAPER(3,2,0)</f><v>2</v></c></row>` +
        `<row r="2"><c r="D2" s="0"><v>1</v></c></row><row r="3"><c r="D3"><v>0</v></c></row>`,
    );
  });

  it("is untouched as a whole where every value is right already", async () => {
    const input = buildBook({
      sheets: { Log: sheet("<x:v>116.66666666666667</x:v>", "") },
      parts: extras,
    });
    await calcToFile(folder, input);
    expect(out().parts).toEqual(lookAt(input).parts);
  });
});

describe("files on disk", () => {
  const book = () =>
    buildBook({ sheets: { Log: `<row r="1"><c r="A1"><f>SPARE.E1RM(100,5)</f></c></row>` } });

  it("are not written without -o or --in-place", async () => {
    const input = folder.put("book.xlsx", book());
    const { status, out } = await spare("calc", input);
    expect(status).toBe(0);
    expect(out).toContain("Log!A1  116.667");
    expect(out).toContain("Nothing was written");
    expect(folder.names()).toEqual(["book.xlsx"]);
    expect(folder.bytes("book.xlsx")).toEqual(book());
  });

  it("are replaced as a whole by --in-place, keeping their permissions and links to them", async () => {
    const input = folder.put("book.xlsx", book());
    chmodSync(input, 0o640);
    symlinkSync(input, folder.path("link.xlsx"));
    expect((await spare("calc", folder.path("link.xlsx"), "--in-place")).status).toBe(0);
    expect(lookAt(folder.bytes("book.xlsx")).value("Log", "A1")).toBeCloseTo(116.6667, 4);
    expect(statSync(input).mode & 0o777).toBe(0o640);
    expect(lstatSync(folder.path("link.xlsx")).isSymbolicLink()).toBe(true);
    expect(folder.names()).toEqual(["book.xlsx", "link.xlsx"]);
  });

  it("are not written over by -o, under whatever name", async () => {
    const input = folder.put("book.xlsx", book());
    symlinkSync(input, folder.path("link.xlsx"));
    const { status, err } = await spare("calc", input, "-o", folder.path("link.xlsx"));
    expect(status).toBe(2);
    expect(err).toContain("--in-place");
    expect(folder.bytes("book.xlsx")).toEqual(book());
  });

  it("that cannot be written are said in one line", async () => {
    const input = folder.put("book.xlsx", book());
    const { status, err } = await spare("calc", input, "-o", folder.path("none/out.xlsx"));
    expect([status, err.trim().split("\n").length]).toEqual([2, 1]);
    expect(err).toContain("there is no such file or folder");
  });
});

describe("what is said of it", () => {
  it("names the cells that failed with our message, and ends with 1", async () => {
    const input = folder.put(
      "book.xlsx",
      buildBook({
        sheets: {
          "Week 1":
            `<row r="1">${numbers("A1", "80kg", 5)}<c r="C1"><f>SPARE.E1RM(A1,B1)</f></c></row>` +
            `<row r="2"><c r="C2"><f>SPARE.E1RM(100,5)</f></c></row>`,
        },
      }),
    );
    const { status, out } = await spare("calc", input);
    expect(status).toBe(1);
    expect(out).toMatch(
      /Failed\n {2}'Week 1'!C1 {2}#VALUE! {2}load is text, "80kg"; expected a load above 0/,
    );
    const json = await spare("calc", input, "--json");
    expect(JSON.parse(json.out)).toMatchObject({
      file: input,
      output: null,
      calculated: [{ sheet: "Week 1", cell: "C2", formula: "=SPARE.E1RM(100,5)", range: "C2" }],
      failed: [
        { cell: "C1", error: "#VALUE!", message: 'load is text, "80kg"; expected a load above 0' },
      ],
    });
  });

  it("lists every changed cell, old and new: for a person the first twenty and how many there are", async () => {
    const rows = Array.from({ length: 30 }, (_, index) => {
      const row = index + 1;
      return `<row r="${row}">${numbers(`A${row}`, 100 + row)}<c r="B${row}"><f>SPARE.E1RM(A${row},1)</f><v>7</v></c></row>`;
    });
    const input = folder.put("book.xlsx", buildBook({ sheets: { Log: rows.join("") } }));
    const { status, out } = await spare("calc", input);
    expect(status).toBe(0);
    expect(out).toMatch(/cells changed {2,}30/);
    expect(out).toMatch(/Changed\n {2}Log!B1 +7 +→ +101\n/);
    expect(out).toContain("and 10 more, which --json lists");
    const { changed } = JSON.parse((await spare("calc", input, "--json")).out) as Report;
    expect(changed).toHaveLength(30);
    expect(changed[29]).toEqual({ sheet: "Log", cell: "B30", old: 7, new: 130 });
  });

  it("has the digits that the cell shows, and all of them where those would hide the change", async () => {
    const cell = (at: string, saved: string) =>
      `<c r="${at}" s="1"><f>SPARE.E1RM(100,5)</f>${saved}</c>`;
    const book = buildBook({
      sheets: {
        Log: `<row r="1">${cell("A1", "<v>7</v>")}${cell("B1", "<v>116.67</v>")}</row>`,
      },
      references: { "xl/workbook.xml": [["styles", "/xl/styles.xml"]] },
      parts: {
        "xl/styles.xml": [
          `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">` +
            `<numFmts count="1"><numFmt numFmtId="164" formatCode="0.0"/></numFmts>` +
            `<cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="164"/></cellXfs></styleSheet>`,
          "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml",
        ],
      },
    });
    const { out } = await spare("calc", folder.put("book.xlsx", book));
    expect(out).toMatch(/Calculated\n {2}Log!A1 +116\.7\n/);
    expect(out).toMatch(/Log!A1 +7\.0 +→ +116\.7\n/);
    expect(out).toMatch(/Log!B1 +116\.67 +→ +116\.666666666667\n/);
  });

  it("is all there is with --dry-run: nothing is written", async () => {
    const bytes = buildBook({
      sheets: { Log: `<row r="1"><c r="A1"><f>SPARE.E1RM(100,5)</f></c></row>` },
    });
    const input = folder.put("book.xlsx", bytes);
    for (const args of [["--in-place"], ["-o", folder.path("out.xlsx")], []]) {
      const { status, out } = await spare("calc", input, "--dry-run", ...args);
      expect(status).toBe(0);
      expect(out).toContain("Log!A1  blank  →  116.667");
      expect(out).toContain("Nothing was written: this was a dry run.");
    }
    expect(folder.names()).toEqual(["book.xlsx"]);
    expect(folder.bytes("book.xlsx")).toEqual(bytes);
  });

  it("names what had to keep its value with the reason, and ends with 1", async () => {
    const input = folder.put(
      "book.xlsx",
      buildBook({
        sheets: {
          Log:
            `<row r="1"><c r="A1"><f>SPARE.E1RM([1]Plan!A1,5)</f><v>42</v></c>` +
            `<c r="B1"><f>SPARE.E1RM(100,5)</f><v>1</v></c><c r="C1"><f>B1+1</f><v>3</v></c></row>`,
        },
      }),
    );
    const { status, out } = await spare("calc", input);
    expect(status).toBe(1);
    expect(out).toMatch(
      /Left as saved\n {2}Log!A1 {2}it reads another workbook\n {2}Log!C1 {2}from what was saved the engine comes to 2, and not to 3\n/,
    );
  });

  it("counts a formula that calls ours by a name as one of them", async () => {
    const report = await calcToFile(folder, {
      sheets: { Log: `<row r="1"><c r="A1"><f>best</f></c></row>` },
      workbook: `<definedNames><definedName name="best">SPARE.E1RM("80kg",5)</definedName></definedNames>`,
    });
    expect(report.failed).toEqual([expect.objectContaining({ cell: "A1", error: "#VALUE!" })]);
  });

  it("is that there is nothing to do where no formula is ours", async () => {
    const input = folder.put(
      "book.xlsx",
      buildBook({ sheets: { Log: `<row r="1"><c r="A1"><f>1+1</f></c></row>` } }),
    );
    const { status, out } = await spare("calc", input);
    expect(status).toBe(0);
    expect(out).toContain("no formula uses a SPARE function");
  });
});
