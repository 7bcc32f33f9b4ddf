import type { ICellData, IWorkbookData } from "@univerjs/core";
import { afterEach, describe, expect, it } from "vitest";
import type { CellContent } from "../../src/engine/inspect";
import type { HeadlessWorkbook } from "../../src/engine/headless";
import { openWorkbook } from "../../src/engine/headless";
import { implementations } from "../../src/functions/implementations";

/*
 * Zero is a set to failure, blank is a set not logged. Five cells that a spreadsheet may take for one
 * another, against every way of asking; what they should answer is worked by hand from the published
 * rules: a comparison tells numbers, text and truth values apart, blank equals both 0 and "", and a
 * lookup or a criterion finds a blank cell by neither.
 */
const things = { zero: 0, blank: undefined, empty: '=""', text: '="0"', no: "=FALSE" };
type Thing = keyof typeof things;
const names = Object.keys(things) as Thing[];

/** Which of the five a question picks. */
const questions: Readonly<Record<string, readonly Thing[]>> = {
  '#=""': ["blank", "empty"],
  "#=0": ["zero", "blank"],
  '#<>""': ["zero", "text", "no"],
  "#<>0": ["empty", "text", "no"],
  '#="0"': ["text"],
  "#=FALSE": ["blank", "no"],
  '""=#': ["blank", "empty"],
  "0=#": ["zero", "blank"],
};

/** What a question that reads all five at once answers. */
const wholes: Record<string, CellContent> = {
  "MATCH(0,#,0)": 1,
  'MATCH("0",#,0)': 4,
  "MATCH(FALSE,#,0)": 5,
  "XLOOKUP(0,#,$B$1:$B$5)": "zero",
  'XLOOKUP("0",#,$B$1:$B$5)': "text",
  "XLOOKUP(FALSE,#,$B$1:$B$5)": "no",
  'XLOOKUP("",#,$B$1:$B$5)': "empty",
  // A criterion of 0 is met by the text "0" as well.
  "COUNTIF(#,0)": 2,
  'COUNTIF(#,"0")': 2,
  'COUNTIF(#,"<>0")': 3,
  'COUNTIF(#,"")': 2,
  'COUNTIF(#,"=")': 1,
  'COUNTIF(#,"<>")': 4,
  "COUNTIF(#,FALSE)": 1,
  'COUNTIFS(#,0,$B$1:$B$5,"zero")': 1,
  'COUNTIFS(#,"",$B$1:$B$5,"<>blank")': 1,
  'COUNTIFS(#,"<>",$B$1:$B$5,"blank")': 0,
  "SUMIFS($C$1:$C$5,#,0)": 1001,
  'SUMIFS($C$1:$C$5,#,"")': 110,
};
for (const [question, picked] of Object.entries(questions)) {
  wholes[`SUMPRODUCT(--(${question}))`] = picked.length;
  wholes[`TEXTJOIN(" ",TRUE,FILTER($B$1:$B$5,${question}))`] = picked.join(" ");
}

let book: HeadlessWorkbook | undefined;
afterEach(() => book?.close());

type Row = readonly (string | number | undefined)[];

async function open(rows: readonly Row[]): Promise<(address: string) => CellContent> {
  const cellData = rows.map((row) =>
    Object.fromEntries(
      row.flatMap((content, column): [number, ICellData][] => {
        if (content === undefined) return [];
        return [[column, String(content).startsWith("=") ? { f: `${content}` } : { v: content }]];
      }),
    ),
  );
  const data: IWorkbookData = {
    id: "book",
    name: "Book",
    appVersion: "",
    locale: "enUS" as IWorkbookData["locale"],
    styles: {},
    sheetOrder: ["one"],
    sheets: {
      one: { id: "one", name: "One", rowCount: 200, columnCount: 60, cellData: { ...cellData } },
    },
  };
  book = await openWorkbook(data, { functions: [{ id: "E1RM", parameters: [] }] }, implementations);
  return (address) => book!.read("One", address);
}

/** The five in column A, their names in B, and from D on what is asked of each, by row. */
const asked = (order: "as written" | "from the last") => {
  const texts = Object.keys(questions);
  return order === "as written" ? texts : texts.reverse();
};

const letter = (column: number) => String.fromCharCode(65 + column);

describe.each(["as written", "from the last"] as const)("with the questions %s", (order) => {
  it("compares one cell", async () => {
    const texts = asked(order);
    const read = await open(
      names.map((name, row) => [
        things[name],
        name,
        undefined,
        ...texts.map((text) => `=${text.replace("#", `A${row + 1}`)}`),
      ]),
    );
    const answers = texts.map((text, column) => [
      text,
      names.filter((_name, row) => read(`${letter(column + 3)}${row + 1}`) === true),
    ]);
    expect(Object.fromEntries(answers)).toEqual(questions);
  });

  it("compares a range", async () => {
    const texts = order === "as written" ? Object.keys(wholes) : Object.keys(wholes).reverse();
    const read = await open(
      [...texts, ...texts].map((text, row) => [
        row < 5 ? Object.values(things)[row] : undefined,
        names[row],
        row < 5 ? 10 ** row : undefined,
        `=${text.replace("#", "$A$1:$A$5")}`,
      ]),
    );
    const answers = [...texts, ...texts].map((text, row) => [text, read(`D${row + 1}`)]);
    expect(answers).toEqual([...texts, ...texts].map((text) => [text, wholes[text]]));
  });
});

describe("a formula that comes to a blank cell", () => {
  // Excel shows 0 (from memory), and so does LibreOffice, which differential/logic.txt has asked.
  it.each([
    "=H1",
    "=IF(TRUE,H1)",
    "=IF(TRUE,)",
    "=IFERROR(H1,1)",
    "=IFNA(H1,1)",
    "=SWITCH(1,1,H1)",
    "=SWITCH(2,1,5,H1)",
    "=IFS(TRUE,H1)",
    "=VLOOKUP(1,C1:D3,2,FALSE)",
    "=UNIQUE(H1:H3)",
    "=LET(x,H1,x)",
  ])("shows 0, also to those that ask whether it is blank: %s", async (formula) => {
    const read = await open([[formula, '=IF(A1="","blank",A1)', 1]]);
    expect([read("A1"), read("B1")]).toEqual([0, 0]);
  });

  it.each<[string, readonly (readonly CellContent[])[]]>([
    ["=H1:H2", [[0], [0]]],
    [
      "=FILTER(H1:I2,J1:J2>0)",
      [
        [0, 7],
        [8, 0],
      ],
    ],
    [
      "=SORT(H1:I2)",
      [
        [8, 0],
        [0, 7],
      ],
    ],
    ["=VSTACK(I1,H1)", [[7], [0]]],
    ["=TRANSPOSE(H1:H2)", [[0, 8]]],
    ["=IF(J1:J2>0,H1:H2,1)", [[0], [8]]],
  ])("shows 0 in each blank cell that it spills: %s", async (formula, spilled) => {
    const blanks = Array<undefined>(6).fill(undefined);
    const read = await open([
      [formula, ...blanks, undefined, 7, 1],
      [undefined, ...blanks, formula === "=H1:H2" ? undefined : 8, undefined, 1],
    ]);
    const cells = spilled.map((row, at) =>
      row.map((_, column) => read(`${letter(column)}${at + 1}`)),
    );
    expect(cells).toEqual(spilled);
  });

  it("is a blank within a formula still", async () => {
    const read = await open([['=IF(TRUE,H1)=""', "=ISBLANK(H1)", '=IF(IF(TRUE,H1)="","blank",1)']]);
    expect(["A1", "B1", "C1"].map(read)).toEqual([true, true, "blank"]);
  });
});

describe("a log with sets to failure", () => {
  const log: Row[] = [
    [100, 5, 0, '=IF(C1="","",SPARE.E1RM(A1,B1,C1))', "=SUMPRODUCT(--(C1:C3=0))"],
    [100, 5, undefined, '=IF(C2="","",SPARE.E1RM(A2,B2,C2))', "=COUNTIF(C1:C3,0)"],
    [100, 5, 2, '=IF(C3="","",SPARE.E1RM(A3,B3,C3))', '=IF(C1="",1,2)'],
  ];

  it("keeps their estimates beside formulas that compare the column", async () => {
    const read = await open(log);
    expect(["D1", "D2", "D3"].map(read)).toEqual([
      expect.closeTo(116.6667, 3),
      "",
      123.333333333333,
    ]);
  });

  it("keeps them when a reserve is typed", async () => {
    const read = await open(log);
    await book!.write("One", "C3", 0);
    await book!.write("One", "C2", 0);
    await book!.write("One", "C1", null);
    expect(["D1", "D2", "D3"].map(read)).toEqual(["", read("D3"), expect.closeTo(116.6667, 3)]);
  });
});
