import { describe, expect, test } from "vitest";
import { load } from "./load";

const { evaluate } = load();
const message = (expression: string) => {
  try {
    return evaluate(expression);
  } catch (error) {
    return (error as Error).message;
  }
};

describe("what a formula in Sheets passes", () => {
  test("takes one cell as its value, and gives one value back", () => {
    expect(evaluate("SPARE_E1RM(100, 5, 2)")).toBe(123.333333333333);
  });

  test("takes a range as rows, and gives rows back", () => {
    expect(evaluate("SPARE_E1RM([[100], [80]], [[5], [5]])")).toEqual([
      [116.666666666667],
      [93.3333333333333],
    ]);
  });

  test("takes a blank reserve for not recorded, and one that is left out for none", () => {
    expect(evaluate('SPARE_E1RM(100, 5, "")')).toBe("");
    expect(evaluate("SPARE_E1RM(100, 5)")).toBe(116.666666666667);
    expect(evaluate('SPARE_E1RM(100, 5, undefined, "epley")')).toBe(116.666666666667);
    expect(evaluate('SPARE_E1RM([[100], [100]], [[5], [5]], [[2], [""]])')).toEqual([
      [123.333333333333],
      [""],
    ]);
  });

  test("leaves a row that is not filled in yet empty", () => {
    expect(evaluate('SPARE_E1RM([[100], [""]], [[5], [""]])')).toEqual([[116.666666666667], [""]]);
  });

  test("reads a boolean where a number should be as the mistake it is", () => {
    expect(message("SPARE_E1RM(true, 5)")).toBe("load is TRUE; expected a load above 0");
  });

  test("reads numbers written as text, with a comma or a point", () => {
    expect(evaluate('SPARE_E1RM("100", "5", "2,0")')).toBe(123.333333333333);
  });

  test("names the row of an error that a cell of the range holds", () => {
    expect(evaluate('SPARE_E1RM([["#N/A"], [100]], [[5], [5]])')).toEqual([
      ["! the 1st row of load holds #N/A"],
      [116.666666666667],
    ]);
  });

  test("reads an error of ours in a range as an error, not as text", () => {
    expect(evaluate('SPARE_E1RM([["! the 1st row of load is text"], [100]], [[5], [5]])')).toEqual([
      ["! the 1st row of load holds #VALUE!"],
      [116.666666666667],
    ]);
  });
});

describe("what a formula in Sheets gets back", () => {
  test("throws the error of a single call, its message the reason and nothing else", () => {
    const [error, isError] = evaluate(`(() => {
      try { SPARE_E1RM("80kg", 5) } catch (error) { return [String(error), error instanceof Error] }
    })()`) as [string, boolean];
    expect(error).toBe('Error: load is text, "80kg"; expected a load above 0');
    expect(isError).toBe(true);
  });

  test("throws what Excel shows as #N/A with its reason too", () => {
    expect(message("SPARE_WEEKMONOTONY([[300], [300]])")).toBe(
      "every day has the same load, so monotony has no end",
    );
  });

  test('shows an error beside other results as text that starts with "! "', () => {
    expect(evaluate('SPARE_E1RM([[100], ["80kg"]], [[5], [5]])')).toEqual([
      [116.666666666667],
      ['! the 2nd row of load is text, "80kg"; expected a load above 0'],
    ]);
  });

  test("gives a report as rows of label and value", () => {
    const report = evaluate(
      "SPARE_PAIREDCHANGE([[100],[110],[95]], [[104],[113],[97]])",
    ) as unknown[][];
    expect(report[0]).toEqual(["n", 3]);
    expect(report.every((row) => row.length === 2)).toBe(true);
  });
});
