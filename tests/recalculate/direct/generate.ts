import fc from "fast-check";

/*
 * Formulas as coaches write them around our calls, and odder ones: each operator and each wrapper over odd cells and
 * over calls of ours that answer, wait or fail.
 */

const cell = fc
  .tuple(fc.constantFrom(..."ABCDEFGH"), fc.integer({ min: 1, max: 3 }))
  .map(([column, row]) => `${column}${row}`);
const usual = fc.constantFrom("A1", "B1", "C1", "D1", "E1", "F1", "G1", "A3", "B3", "D3", "E3");
const number = fc.constantFrom("0", "1", "2", "0.5", "2.5", "30", "100", "1E3", "step");
const literal = fc.oneof(number, fc.constantFrom('""', '"x"', '"DNS"', "TRUE", "FALSE", "bar"));

const argument = fc.oneof(
  { weight: 5, arbitrary: usual },
  { weight: 1, arbitrary: cell },
  { weight: 2, arbitrary: fc.constantFrom("100", "5", "2", "8.5") },
  { weight: 1, arbitrary: usual.map((each) => `${each}&""`) },
  { weight: 1, arbitrary: usual.map((each) => `10-${each}`) },
  { weight: 1, arbitrary: fc.tuple(usual, usual).map(([a, b]) => `IF(${a}="","",${b}+1)`) },
);
const call = fc.oneof(
  fc.tuple(argument, argument, argument).map((given) => `_xldudf_SPARE_E1RM(${given.join(",")})`),
  fc.tuple(argument, argument).map((given) => `_xldudf_SPARE_PERCENT1RM(${given.join(",")})`),
  fc
    .tuple(argument, argument, fc.constantFrom("1", "2", "3"))
    .map(([load, reps, place]) => `INDEX(_xldudf_SPARE_E1RMBAND(${load},${reps},1),1,${place})`),
  fc.tuple(argument, argument).map(([a, b]) => `_xldudf_SPARE_ROUNDLOAD(${a},${b})`),
);

const { expression } = fc.letrec<{ expression: string; value: string; condition: string }>(
  (tie) => {
    const [value, condition, inner] = [tie("value"), tie("condition"), tie("expression")];
    const joined = (operators: readonly string[]) =>
      fc
        .tuple(value, fc.constantFrom(...operators), value)
        .map(([left, operator, right]) => `${left}${operator}${right}`);
    return {
      value: fc.oneof(
        { maxDepth: 3 },
        cell,
        literal,
        call,
        inner.map((text) => `(${text})`),
        fc.tuple(inner, fc.constantFrom("0", "1", "2")).map(([a, b]) => `ROUND(${a},${b})`),
      ),
      condition: fc.oneof(
        { maxDepth: 3 },
        fc.tuple(cell, fc.constantFrom("=", "<>")).map((pieces) => `${pieces.join("")}""`),
        joined(["=", "<>", "<", "<=", ">", ">="]),
        cell.map((each) => `ISBLANK(${each})`),
        fc
          .tuple(fc.constantFrom("ISNUMBER", "ISTEXT", "ISERROR", "ISNA", "NOT"), value)
          .map(([name, given]) => `${name}(${given})`),
        fc
          .tuple(fc.constantFrom("AND", "OR"), condition, condition)
          .map(([name, ...given]) => `${name}(${given.join(",")})`),
      ),
      expression: fc.oneof(
        { maxDepth: 4 },
        call,
        condition,
        joined(["+", "-", "*", "/", "&"]),
        // The engine knows no name behind a sign.
        value.filter((each) => !/^(?:bar|step)/.test(each)).map((each) => `-${each}`),
        // The engine loses its way in brackets within brackets before a %.
        fc.oneof(cell, number, call).map((each) => `${each}%`),
        fc.tuple(condition, value, inner).map((given) => `IF(${given.join(",")})`),
        fc.tuple(condition, inner).map((given) => `IF(${given.join(",")})`),
        fc
          .tuple(fc.constantFrom("IFERROR", "_xlfn.IFNA"), inner, value)
          .map(([name, ...given]) => `${name}(${given.join(",")})`),
        fc
          .tuple(inner, fc.constantFrom("2.5", "5", "1.25"))
          .map((given) => `MROUND(${given.join(",")})`),
        fc.tuple(usual, fc.constantFrom("2", "0.5", "A3")).map((given) => given.join("^")),
      ),
    };
  },
);

/** A formula as a file has it, with a call of ours in it. */
export const formula: fc.Arbitrary<string> = fc.oneof(
  expression,
  fc.tuple(usual, call).map(([cell, call]) => `IF(${cell}="","",${call})`),
  fc.tuple(call, literal).map(([call, other]) => `IFERROR(${call},${other})`),
);
