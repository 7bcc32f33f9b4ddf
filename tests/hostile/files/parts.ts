import { bookWith, formulaAt, type HostileFile, type Log } from "./file";
import { worksheet } from "../../cli/support";

const main = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`;
const spreadsheet = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const five = `<row r="1"><c r="A1"><v>5</v></c></row>`;

function tableWith(attributes: string, columns: string, formula: string): Log {
  return {
    data: worksheet(
      `${five}${formulaAt(formula, "B2")}`,
      `<tableParts count="1"><tablePart r:id="rId1"/></tableParts>`,
    ),
    parts: {
      "xl/tables/table1.xml": [
        `<table ${main} id="1" ${attributes}><tableColumns>${columns}</tableColumns></table>`,
        `${spreadsheet}.table+xml`,
      ],
    },
    references: { "xl/worksheets/sheet2.xml": [["table", "../tables/table1.xml"]] },
  };
}

function stylesWith(inside: string, data = `<row r="1"><c r="A1" s="0"><v>5</v></c></row>`): Log {
  return {
    data,
    parts: {
      "xl/styles.xml": [`<styleSheet ${main}>${inside}</styleSheet>`, `${spreadsheet}.styles+xml`],
    },
    references: { "xl/workbook.xml": [["styles", "styles.xml"]] },
  };
}

function stringsWith(inside: string, data: string): Log {
  return {
    data,
    parts: {
      "xl/sharedStrings.xml": [`<sst ${main}>${inside}</sst>`, `${spreadsheet}.sharedStrings+xml`],
    },
    references: { "xl/workbook.xml": [["sharedStrings", "sharedStrings.xml"]] },
  };
}

function drawingWith(anchors: string, image = "../media/image1.png"): Log {
  return {
    data: worksheet(five, `<drawing r:id="rId1"/>`),
    parts: {
      "xl/drawings/drawing1.xml": [
        `<xdr:wsDr xmlns:xdr="x" xmlns:a="a" xmlns:r="r">${anchors}</xdr:wsDr>`,
        "application/vnd.openxmlformats-officedocument.drawing+xml",
      ],
      "xl/media/image1.png": ["not a picture", "image/png"],
    },
    references: {
      "xl/worksheets/sheet2.xml": [["drawing", "../drawings/drawing1.xml"]],
      "xl/drawings/drawing1.xml": [["image", image]],
    },
  };
}

const corner = (name: string, at: string) =>
  `<xdr:${name}><xdr:col>${at}</xdr:col><xdr:colOff>${at}</xdr:colOff><xdr:row>${at}</xdr:row><xdr:rowOff>${at}</xdr:rowOff></xdr:${name}>`;
const picture = `<xdr:pic><xdr:blipFill><a:blip r:embed="rId1"/></xdr:blipFill><xdr:spPr><a:xfrm rot="1e308"/></xdr:spPr></xdr:pic>`;
const anchor = (from: string, to: string) =>
  `<xdr:twoCellAnchor>${corner("from", from)}${corner("to", to)}${picture}</xdr:twoCellAnchor>`;

const five1 = { "Log!A1": 5 };
const columnsOf = (...names: string[]) =>
  names.map((name, n) => `<tableColumn id="${n + 1}" name="${name}"/>`).join("");

/** Tables, styles, texts, drawings and the workbook's own part. */
export function partFiles(): HostileFile[] {
  const opened = (
    name: string,
    log: () => Log,
    cells: HostileFile["cells"] = five1,
  ): HostileFile => ({
    name,
    bytes: () => bookWith(log()),
    opened: true,
    cells,
  });
  const either = (name: string, log: () => Log): HostileFile => ({
    name,
    bytes: () => bookWith(log()),
  });
  const refused = (name: string, log: () => Log, why: RegExp): HostileFile => ({
    ...either(name, log),
    refused: why,
  });
  const sum = "_xldudf_SPARE_E1RM(SUM(Sets[load])+100,5)";
  return [
    refused(
      "a table over a whole sheet, read",
      () =>
        tableWith(
          `displayName="Sets" ref="C1:XFD1048576"`,
          columnsOf("load"),
          "_xldudf_SPARE_E1RM(Sets,5)",
        ),
      /Log!B2.* cells/,
    ),
    opened("a table over a whole sheet", () =>
      tableWith(
        `displayName="Sets" ref="A1:XFD1048576"`,
        columnsOf("load"),
        "_xldudf_SPARE_E1RM(100,5)",
      ),
    ),
    opened("a table of nowhere", () =>
      tableWith(`displayName="Sets" ref="nowhere"`, columnsOf("load"), sum),
    ),
    opened("a table without a name", () => tableWith(`ref="C1:D9"`, columnsOf("load"), sum)),
    opened("a table with more columns than cells", () =>
      tableWith(
        `displayName="Sets" ref="C1:D9"`,
        columnsOf(...Array.from({ length: 20_000 }, (_, n) => `c${n}`)),
        "_xldudf_SPARE_E1RM(SUM(Sets[c19999])+100,5)",
      ),
    ),
    opened("a table with as many headings as rows there are", () =>
      tableWith(
        `displayName="Sets" ref="C1:D9" headerRowCount="1e308" totalsRowCount="-5"`,
        columnsOf("load", "load"),
        sum,
      ),
    ),
    opened("a table whose columns have no names", () =>
      tableWith(
        `displayName="Sets" ref="C1:D9"`,
        columnsOf("", ""),
        "_xldudf_SPARE_E1RM(SUM(Sets[])+100,5)",
      ),
    ),
    opened("a table in itself", () =>
      tableWith(
        `displayName="Sets" ref="A1:D9"`,
        columnsOf("load", "reps"),
        "SUM(Sets[#All])+_xldudf_SPARE_E1RM(100,5)",
      ),
    ),
    opened(
      "a column called as objects' own are",
      () =>
        tableWith(
          `displayName="Sets" ref="C1:D9"`,
          columnsOf("__proto__", "constructor"),
          "_xldudf_SPARE_E1RM(SUM(Sets[__proto__])+100,5)",
        ),
      { "Log!B2": 100 * (1 + 5 / 30) },
    ),
    opened("a specifier of nonsense", () =>
      tableWith(
        `displayName="Sets" ref="C1:D9"`,
        columnsOf("load"),
        "SUM(Sets[[#All],[#Nothing],[[load]]])+_xldudf_SPARE_E1RM(100,5)",
      ),
    ),

    opened("styles of nothing", () => stylesWith("")),
    opened("looks that name what there is not", () =>
      stylesWith(
        `<cellXfs><xf numFmtId="1e308" fontId="99" fillId="-1" borderId="NaN"/></cellXfs>`,
      ),
    ),
    opened("20,000 looks", () => stylesWith(`<cellXfs>${"<xf/>".repeat(20_000)}</cellXfs>`)),
    opened("a format of 1 MB", () =>
      stylesWith(
        `<numFmts><numFmt numFmtId="200" formatCode="${"0".repeat(1e6)}"/></numFmts><cellXfs><xf numFmtId="200"/></cellXfs>`,
      ),
    ),
    opened("a format of brackets", () =>
      stylesWith(
        `<numFmts><numFmt numFmtId="200" formatCode="${"[".repeat(5000)}${"&quot;".repeat(5001)}"/></numFmts><cellXfs><xf numFmtId="200"/></cellXfs>`,
      ),
    ),
    opened("letters of 1e308 points", () =>
      stylesWith(
        `<fonts><font><sz val="1e308"/><name val="${"x".repeat(1e5)}"/><color rgb="red"/></font></fonts><cellXfs><xf fontId="0"/></cellXfs>`,
      ),
    ),
    opened("letters of -5 points", () =>
      stylesWith(
        `<fonts><font><sz val="-5"/><color theme="1e308" tint="1e308"/></font></fonts><cellXfs><xf fontId="0"/></cellXfs>`,
      ),
    ),
    opened("text turned and set in out of all bounds", () =>
      stylesWith(`<cellXfs><xf><alignment textRotation="1e308" indent="1e308"/></xf></cellXfs>`),
    ),
    opened("lines that there are not", () =>
      stylesWith(
        `<borders><border><left style="__proto__"/><top style="constructor"><color indexed="1e308"/></top></border></borders><cellXfs><xf borderId="0"/></cellXfs>`,
      ),
    ),
    opened("a theme that is none", () => ({
      ...stylesWith(`<cellXfs><xf/></cellXfs>`),
      references: {
        "xl/workbook.xml": [
          ["styles", "styles.xml"],
          ["theme", "theme.xml"],
        ],
      },
      parts: { ...stylesWith("").parts, "xl/theme.xml": ["<theme/>", "application/xml"] },
    })),

    opened(
      "a text in 20,000 runs",
      () =>
        stringsWith(
          `<si>${"<r><t>a</t></r>".repeat(20_000)}</si>`,
          `<row r="1"><c r="A1" t="s"><v>0</v></c></row>`,
        ),
      { "Log!A1": "a".repeat(20_000) },
    ),
    opened(
      "an empty text",
      () => stringsWith(`<si/>`, `<row r="1"><c r="A1" t="s"><v>0</v></c></row>`),
      {},
    ),
    refused(
      "a text that there is not",
      () => stringsWith(`<si><t>a</t></si>`, `<row r="1"><c r="A1" t="s"><v>1</v></c></row>`),
      /Log!A1/,
    ),
    opened(
      "a text of 1 MB in 2,000 cells",
      () =>
        stringsWith(
          `<si><t>${"x".repeat(1e6)}</t></si>`,
          Array.from(
            { length: 2000 },
            (_, n) => `<row r="${n + 1}"><c t="s"><v>0</v></c></row>`,
          ).join(""),
        ),
      {},
    ),
    opened(
      "texts beside their readings",
      () =>
        stringsWith(
          `<si><t>a</t><rPh sb="0" eb="1e308"><t>b</t></rPh></si>`,
          `<row r="1"><c r="A1" t="s"><v>0</v></c></row>`,
        ),
      { "Log!A1": "a" },
    ),
    opened(
      "half of a character",
      () => stringsWith(`<si><t>_xD83D_</t></si>`, `<row r="1"><c r="A1" t="s"><v>0</v></c></row>`),
      {},
    ),

    opened("a picture that is none", () => drawingWith(anchor("1", "3"))),
    opened("a picture over a whole sheet", () => drawingWith(anchor("0", "16383"))),
    opened("a picture from nowhere to nowhere", () => drawingWith(anchor("-1", "1e308"))),
    opened("a picture from its end to its start", () => drawingWith(anchor("9", "1"))),
    opened("a picture of 1e308 by 1e308", () =>
      drawingWith(
        `<xdr:absoluteAnchor><xdr:pos x="-1e308" y="1e308"/><xdr:ext cx="1e308" cy="1e308"/>${picture}</xdr:absoluteAnchor>`,
      ),
    ),
    refused(
      "a picture outside the file",
      () => drawingWith(anchor("1", "3"), "../../../../etc/passwd"),
      /"etc\/passwd" is missing/,
    ),
    refused(
      "a picture on the network that is said to be in the file",
      () => drawingWith(anchor("1", "3"), "https://example.org/x.png"),
      /"xl\/drawings\/https:\/example.org\/x.png" is missing/,
    ),
    opened("20,000 drawings that are nowhere, and are not named", () => ({
      data: worksheet(five),
      references: {
        "xl/worksheets/sheet2.xml": Array.from(
          { length: 20_000 },
          (_, n) => ["drawing", `drawing${n}.xml`] as const,
        ),
      },
    })),
    opened("5,000 anchors that hold nothing", () =>
      drawingWith("<xdr:twoCellAnchor/>".repeat(5000)),
    ),
    opened("2,000 pictures under 20,000 sized rows", () => ({
      ...drawingWith(anchor("1", "9").repeat(2000)),
      data: worksheet(
        five +
          Array.from({ length: 20_000 }, (_, n) => `<row r="${n + 2}" ht="${10 + (n % 9)}"/>`).join(
            "",
          ),
        `<drawing r:id="rId1"/>`,
      ),
    })),
    opened("a drawing that is no XML", () => ({
      ...drawingWith("", "drawing1.xml"),
      parts: { "xl/drawings/drawing1.xml": ["none", "application/xml"] },
    })),
    opened("a drawing on itself", () => ({
      ...drawingWith(anchor("1", "3")),
      references: { "xl/worksheets/sheet2.xml": [["drawing", "sheet2.xml"]] },
    })),

    refused(
      "1,500 sheets",
      () => ({ more: Object.fromEntries(Array.from({ length: 1500 }, (_, n) => [`s${n}`, ""])) }),
      /sheets/,
    ),
    opened("200 sheets", () => ({
      data: five,
      more: Object.fromEntries(Array.from({ length: 200 }, (_, n) => [`s${n}`, ""])),
    })),
    refused(
      "two sheets in one part",
      () => ({
        references: { "xl/workbook.xml": [["worksheet", "worksheets/sheet2.xml"]] },
        parts: {
          "xl/workbook.xml": [
            `<workbook ${main} xmlns:r="r"><sheets><sheet name="Check" r:id="rId1"/><sheet name="Log" r:id="rId2"/><sheet name="Again" r:id="rId2"/></sheets></workbook>`,
            `${spreadsheet}.sheet.main+xml`,
          ],
        },
      }),
      /Again/,
    ),
    refused(
      "a sheet's name twice",
      () => ({
        parts: {
          "xl/workbook.xml": [
            `<workbook ${main} xmlns:r="r"><sheets><sheet name="Check" r:id="rId1"/><sheet name="check" r:id="rId2"/></sheets></workbook>`,
            `${spreadsheet}.sheet.main+xml`,
          ],
        },
      }),
      /check/,
    ),
    refused(
      "a sheet that leads nowhere",
      () => ({
        parts: {
          "xl/workbook.xml": [
            `<workbook ${main} xmlns:r="r"><sheets><sheet name="Log" r:id="rId99"/></sheets></workbook>`,
            `${spreadsheet}.sheet.main+xml`,
          ],
        },
      }),
      /missing/,
    ),
    refused(
      "a workbook without sheets",
      () => ({
        parts: {
          "xl/workbook.xml": [
            `<workbook ${main}><sheets/></workbook>`,
            `${spreadsheet}.sheet.main+xml`,
          ],
        },
      }),
      /no sheet/,
    ),
    either("a sheet whose name drives a terminal", () => ({
      more: { "\u009b2J&#x1b;": formulaAt('_xldudf_SPARE_E1RM("80kg",5)') },
    })),
    either("a sheet's name of 1 MB", () => ({ more: { ["x".repeat(1e6)]: five } })),
    either("20,000 relationships", () => ({
      data: five,
      references: {
        "xl/worksheets/sheet2.xml": Array.from(
          { length: 20_000 },
          (_, n) => ["hyperlink", `x${n}`] as const,
        ),
      },
    })),
  ];
}
