import { bookWith, formulaAt, type HostileFile, type Log } from "./file";

const row = (r: string, cell = `<c><v>5</v></c>`) => `<row r="${r}">${cell}</row>`;
const cell = (r: string) => `<row r="1"><c r="${r}"><v>5</v></c></row>`;
const value = (type: string, written: string) =>
  `<row r="1"><c r="A1" t="${type}"><v>${written}</v></c></row>`;
const column = (attributes: string) => ({ before: `<cols><col ${attributes}/></cols>` });
const merges = (...refs: string[]) => ({
  data: cell("A1"),
  after: `<mergeCells>${refs.map((ref) => `<mergeCell ref="${ref}"/>`).join("")}</mergeCells>`,
});
const array = (ref: string, address = "B1") =>
  formulaAt("_xldudf_SPARE_E1RM(100,5)", address, ` t="array" ref="${ref}"`);

/** Sheets that are larger than a sheet, or say of their cells what cannot be. */
export function sheetFiles(): HostileFile[] {
  const refused = (name: string, log: Log, why: RegExp): HostileFile => ({
    name,
    bytes: () => bookWith(log),
    refused: why,
  });
  const opened = (name: string, log: () => Log, cells: HostileFile["cells"] = {}): HostileFile => ({
    name,
    bytes: () => bookWith(log()),
    opened: true,
    cells,
  });
  return [
    ...[
      "1e308",
      "1000000000000000",
      "1048577",
      "0",
      "-1",
      "1.5",
      "Infinity",
      "0x10",
      "two",
      "",
    ].map((r) => refused(`a row "${r}"`, { data: row(r) }, /Log: .*row/)),
    ...["XFE1", "A0", "A1048577", "A99999999", "AAAA1", "1A", "A", "B5", ""].map((r) =>
      refused(`a cell "${r}" in row 1`, { data: cell(r) }, /Log: .*cell/),
    ),
    refused("20,000 cells in a row", { data: row("1", "<c/>".repeat(20_000)) }, /Log: .*column/),
    refused("a row after the last", { data: `${row("1048576")}<row/>` }, /Log: .*row/),
    opened(
      "the farthest cell",
      () => ({ data: `<row r="1048576"><c r="XFD1048576"><v>5</v></c></row>` }),
      {
        "Log!XFD1048576": 5,
      },
    ),
    opened(
      "rows from the last to the first",
      () => ({ data: `${row("9")}${row("3")}${row("1")}` }),
      {
        "Log!A1": 5,
        "Log!A9": 5,
      },
    ),
    opened("a row twice", () => ({ data: `${row("2", `<c r="A2"><v>4</v></c>`)}${row("2")}` }), {
      "Log!A2": 5,
    }),

    refused(
      "an array over a whole sheet",
      { data: array("A1:XFD1048576", "A1") },
      /Log!A1.* fills/,
    ),
    refused("an array over three columns", { data: array("B1:D1048576") }, /Log!B1.* fills/),
    refused(
      "arrays that are too many together",
      {
        data: Array.from({ length: 200 }, (_, n) =>
          array(`B${n + 1}:FZ${n + 100}`, `B${n + 1}`),
        ).join(""),
      },
      /Log!B\d+.* fills/,
    ),
    refused(
      "a what-if table over a whole sheet",
      {
        data: `<row r="1"><c r="A1"><f t="dataTable" ref="A1:XFD1048576"/><v>5</v></c></row>`,
      },
      /Log!A1.* fills/,
    ),
    opened("an array that says nothing it fills", () => ({ data: array("nowhere") })),
    opened("an array that does not fill its own cell", () => ({ data: array("X9:Z12") })),
    opened("a shared formula over a whole sheet", () => ({
      data: `<row r="1"><c r="B1"><f t="shared" si="0" ref="A1:XFD1048576">_xldudf_SPARE_E1RM(100,5)</f></c></row>`,
    })),
    opened(
      "a shared formula that nobody wrote",
      () => ({ data: `<row r="1"><c r="B1"><f t="shared" si="7"/><v>5</v></c></row>` }),
      { "Log!B1": 5 },
    ),
    refused(
      "a long shared formula in 20,000 cells",
      {
        data: Array.from(
          { length: 20_000 },
          (_, n) =>
            `<row r="${n + 1}"><c><f t="shared" si="0">${n === 0 ? `${"1+".repeat(3900)}1` : ""}</f></c></row>`,
        ).join(""),
      },
      /Log!A\d+.* formulas/,
    ),

    refused("a merge of a whole sheet", merges("A1:XFD1048576"), /Log!A1:XFD1048576.* merge/),
    refused("a merge of 100 columns", merges("A1:CV1048576"), /Log!A1:CV1048576.* merge/),
    refused(
      "merges that are too many together",
      merges(...Array.from({ length: 400 }, (_, n) => `A${n * 300 + 1}:CV${n * 300 + 300}`)),
      /Log!A\d+:CV\d+.* merge/,
    ),
    opened("merges over one another", () => merges("A1:C3", "B2:D4", "A1:C3"), { "Log!A1": 5 }),
    opened("merges of nothing", () => merges("", "A", "A1:B2:C3", "XFE1:XFF2", "D4:A1")),
    opened("20,000 small merges", () =>
      merges(...Array.from({ length: 20_000 }, (_, n) => `B${n + 1}:C${n + 1}`)),
    ),

    refused(
      "columns from -2000000000",
      column(`min="-2000000000" max="3" width="9"`),
      /Log: .*column/,
    ),
    refused("column 0", column(`min="0" max="3" width="9"`), /Log: .*column/),
    refused("column 1.5", column(`min="1.5" max="3" width="9"`), /Log: .*column/),
    refused(
      "columns from the last to the first",
      column(`min="9" max="3" width="9"`),
      /Log: .*column/,
    ),
    refused("columns from 1e300", column(`min="1e300" max="1e308" width="9"`), /Log: .*column/),
    refused(
      "all columns, 5,000 times",
      { before: `<cols>${`<col min="1" max="16384" width="9"/>`.repeat(5000)}</cols>` },
      /Log: .*column/,
    ),
    opened("columns to 2000000000", () => column(`min="2" max="2000000000" width="9"`)),
    ...["-5", "1e308", "NaN", "wide", "256"].map((width) =>
      opened(
        `columns ${width} wide`,
        () => ({ ...column(`min="1" max="3" width="${width}" customWidth="1"`), data: cell("B1") }),
        { "Log!B1": 5 },
      ),
    ),
    ...["-5", "1e308", "NaN", "0"].map((height) =>
      opened(
        `a row ${height} high`,
        () => ({ data: `<row r="1" ht="${height}" customHeight="1"><c r="A1"><v>5</v></c></row>` }),
        { "Log!A1": 5 },
      ),
    ),
    opened("usual sizes out of all bounds", () => ({
      before: `<sheetFormatPr defaultRowHeight="1e300" defaultColWidth="1e300" baseColWidth="1e9"/>`,
      data: cell("A1"),
    })),
    opened("usual sizes below nothing", () => ({
      before: `<sheetFormatPr defaultRowHeight="-9" defaultColWidth="-9"/>`,
      data: cell("A1"),
    })),
    ...[
      `xSplit="1e308" ySplit="1e308"`,
      `xSplit="-5" ySplit="2.5"`,
      `xSplit="16384" ySplit="1048576"`,
    ].map((split) =>
      opened(`a frozen pane ${split}`, () => ({
        before: `<sheetViews><sheetView><pane ${split} state="frozen"/></sheetView></sheetViews>`,
        data: cell("A1"),
      })),
    ),
    opened(
      "an extent that is none",
      () => ({ before: `<dimension ref="A1:XFD1048576"/>`, data: cell("A1") }),
      { "Log!A1": 5 },
    ),

    ...[
      ["n", "1e999"],
      ["n", "NaN"],
      ["n", "0x10"],
      ["n", "1,5"],
      ["n", "five"],
      ["s", "-1"],
      ["s", "1e9"],
      ["s", "99999999999999999999"],
      ["b", "2"],
      ["d", "someday"],
      ["zzz", "5"],
    ].map(([type, written]) =>
      refused(`${type} ${written}`, { data: value(type!, written!) }, /Log!A1/),
    ),
    opened("a value that drives a terminal", () => ({ data: value("str", "_x001B_[2J_x0007_") }), {
      "Log!A1": "\u001b[2J\u0007",
    }),
    opened("a value that is an error nobody knows", () => ({ data: value("e", "#SPARE!!") }), {
      "Log!A1": "#N/A",
    }),
    opened(
      "a style that there is not",
      () => ({
        data: `<row r="1"><c r="A1" s="1000000000"><v>5</v></c><c r="B1" s="-1"><v>5</v></c><c r="C1" s="1e308"><v>5</v></c></row>`,
      }),
      { "Log!A1": 5 },
    ),
    opened(
      "numbers at the ends of what there is",
      () => ({
        data: `<row r="1"><c r="A1"><v>1.7976931348623157e308</v></c><c r="B1"><v>5e-324</v></c><c r="C1"><v>-0</v></c></row>`,
      }),
      { "Log!A1": 1.7976931348623157e308, "Log!B1": 5e-324 },
    ),
  ];
}
