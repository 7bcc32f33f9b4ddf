import { describe, expect, test } from "vitest";
import { implementations } from "../../src/functions/implementations";
import { catalogue } from "../functions/catalogue";
import type { Row } from "./data";
import { failures } from "./failures";
import { WAYS } from "./hosts";
import { referenceRows } from "./rows";

/**
 * Every published value of every function (shared/reference), through the function as a host calls it. A new
 * function, or a new row for an old one, needs no line here.
 */
const rows = referenceRows();
const functions = [...new Set(rows.map((row) => row.function))];

test("every function of the catalogue has a published or computed value to meet", () => {
  const without = catalogue.functions.filter(({ id }) => !functions.includes(id));
  expect(without.map(({ id }) => id)).toEqual([]);
});

test("every function of the catalogue has an implementation", () => {
  const without = catalogue.functions.filter(({ id }) => !(id in implementations));
  expect(without.map(({ id }) => id)).toEqual([]);
});

test("every row is of a function of the catalogue", () => {
  const known = new Set(catalogue.functions.map(({ id }) => id));
  expect(functions.filter((id) => !known.has(id))).toEqual([]);
});

test("every row says where its value comes from and how it was come by", () => {
  const marks =
    /^(published-seen|computed-in-R|recalled-from-memory|by-definition|common-practice)$/;
  const bare = rows.filter(({ source, mark }) => source === "" || !marks.test(mark));
  expect(bare).toEqual([]);
});

for (const id of functions) {
  describe(id, () => {
    for (const row of rows.filter((one) => one.function === id)) {
      describe(title(row), () => {
        test.each(WAYS)("$way", (way) => {
          expect(failures(row, way)).toEqual([]);
        });
      });
    }
  });
}

function title(row: Row): string {
  const written = row.arguments.map((argument) =>
    Array.isArray(argument) ? `{${argument.length} rows}` : JSON.stringify(argument ?? "omitted"),
  );
  const note = row.note === undefined ? "" : `; ${row.note}`;
  return `${row.function}(${written.join(", ")}): ${row.source} (${row.mark}${note})`;
}
