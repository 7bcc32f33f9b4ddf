import fc from "fast-check";
import { expect, it } from "vitest";
import { shiftFormula } from "../../../src/formula/shift";
import { bookOf } from "../../../src/recalculate/book";
import { formulaParser } from "../../../src/recalculate/direct/filledDown";
import { cellParser } from "../../../src/recalculate/direct/parse";
import { readPackage, readWorkbook } from "../../../src/xlsx";
import { escapeXml } from "../../../src/xlsx/package";
import { buildBook, worksheet } from "../../cli/support";

/* A formula that is filled down is taken apart once, and has to read as each of its rows does by itself. */

/** A log with the table `Sets` in rows 3 to 8, its heading and a row of totals among them, and formulas in column F. */
function bookWith(formulas: readonly string[]) {
  const rows = formulas.map(
    (formula, index) =>
      `<row r="${index + 1}"><c r="F${index + 1}"><f>${escapeXml(formula)}</f></c></row>`,
  );
  const names = `<definedNames><definedName name="bar">Log!$A$1</definedName><definedName name="here">Log!A1</definedName><definedName name="done">Sets[reps]</definedName></definedNames>`;
  const columns = ["load", "reps"].map(
    (name, index) => `<tableColumn id="${index + 1}" name="${name}"/>`,
  );
  const table =
    `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Sets" displayName="Sets" ref="A3:B8" totalsRowCount="1">` +
    `<tableColumns count="2">${columns.join("")}</tableColumns></table>`;
  const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml";
  const bytes = buildBook({
    sheets: {
      Log: worksheet(rows.join(""), `<tableParts count="1"><tablePart r:id="rId1"/></tableParts>`),
    },
    workbook: names,
    parts: { "xl/tables/table1.xml": [table, type] },
    references: { "xl/worksheets/sheet1.xml": [["table", "../tables/table1.xml"]] },
  });
  return bookOf(readWorkbook(readPackage(bytes)));
}

const reference = fc.constantFrom(
  ...[
    "A1",
    "$A1",
    "A$1",
    "$A$1",
    "A5",
    "Log!B2",
    "A1:A3",
    "A$1:A1",
    "A1:A$1",
    "A2:A$4",
    "$B$1:$B$9",
  ],
  ...["A:A", "1:1", "$1:$2", 'A1&""', "bar", "here", "done", "5", "2.5", '"epley"'],
  ...["Sets[[#This Row],[load]]", "Sets[reps]", "Sets[#This Row]", "Sets[[#Totals],[load]]"],
);
const call = fc
  .array(reference, { minLength: 1, maxLength: 3 })
  .map((given) => `_xldudf_SPARE_E1RM(${given.join(",")})`);
const formula = fc.oneof(
  call,
  fc
    .tuple(call, reference)
    .map(([made, beside]) => `IF(${beside}=0,"",ROUND(-${made}+${beside}%,1))`),
);

it("reads a formula that is filled down as it reads each of its rows", () => {
  fc.assert(
    fc.property(fc.array(formula, { minLength: 1, maxLength: 3 }), (firsts) => {
      const runs = firsts.flatMap((first) =>
        Array.from({ length: 10 }, (_, row) => shiftFormula(first, row, 0)),
      );
      const book = bookWith(runs);
      const alone = cellParser(book);
      const filled = formulaParser(book);
      for (const cell of book.formulas) expect(filled(cell), cell.text).toEqual(alone(cell));
    }),
    { numRuns: 100 },
  );
});
