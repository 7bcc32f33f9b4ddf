import { runInNewContext } from "node:vm";
import fc from "fast-check";

/** Far beyond anything measured, yet with a square that is still a number. */
const HUGE = 1e100;

/** What a cell can hold that a function did not ask for, from every host. */
export const hostileCells: readonly unknown[] = [
  0,
  -0,
  1,
  -1,
  0.5,
  15.5,
  40_000,
  1e15,
  HUGE,
  -HUGE,
  1 / HUGE,
  NaN,
  Infinity,
  -Infinity,
  "",
  " ",
  null,
  undefined,
  { type: "Empty" },
  "DNS",
  "–",
  "3",
  "0",
  "2,5",
  "−2",
  "1,250",
  "1e3",
  "80kg",
  "10RM",
  "two words",
  "\u0000",
  "x".repeat(2000),
  "\u001b[2J",
  "constructor",
  "__proto__",
  "epley",
  "load",
  true,
  false,
  new Date(2024, 0, 1),
  runInNewContext("new Date(2024, 0, 1)"),
  new Date(NaN),
  "#N/A",
  "#REF!",
  "! the 3rd row of load is text",
  { type: "Error", basicType: "Error", basicValue: "#DIV/0!", errorType: "Div0" },
  { type: "Error", basicValue: "#NULL!" },
  { type: "Error", errorType: "Name" },
  { type: "FormattedNumber", basicValue: 82.5, numberFormat: "0.0" },
  { type: "Double", basicValue: -3 },
  { type: "Entity", text: "squat", properties: {} },
  { type: "String", basicValue: "5" },
  {},
];

/** How a cell comes: alone, in a range, among numbers, in a shape that goes with nothing. */
export const wrappings = {
  alone: (cell) => cell,
  "in a column": (cell) => [[5], [cell], [3], [4], [6], [2]],
  "heading a column": (cell) => [[cell], [5], [3], [4], [6], [2]],
  "in a row": (cell) => [[5, cell, 3]],
  "in a block": (cell) => [
    [cell, 5],
    [3, cell],
  ],
} satisfies Readonly<Record<string, (cell: unknown) => unknown>>;

const cell = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...hostileCells) },
  { weight: 1, arbitrary: fc.double({ min: -HUGE, max: HUGE }) },
  { weight: 1, arbitrary: fc.integer({ min: -5, max: 60 }) },
  { weight: 1, arbitrary: fc.string({ maxLength: 6 }).filter((text) => !/nan|error/i.test(text)) },
);

/** Any argument a host can pass: left out, a cell, a range of any small shape, ragged or empty. */
export const anyArgument: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(null, undefined),
  cell,
  fc.array(
    cell.map((content) => [content]),
    { minLength: 1, maxLength: 8 },
  ),
  fc.array(cell, { minLength: 1, maxLength: 8 }).map((row) => [row]),
  fc
    .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 9 }))
    .chain(([rows, columns]) =>
      fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), {
        minLength: rows,
        maxLength: rows,
      }),
    ),
  fc.array(fc.array(cell, { maxLength: 4 }), { maxLength: 4 }),
  fc.array(cell, { maxLength: 4 }),
);
