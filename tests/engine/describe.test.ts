import { describe, expect, it } from "vitest";
import { readCatalogue } from "../../src/tools/catalogue";
import { describeFunctions } from "../../src/engine/describe";

const catalogue = readCatalogue();
const described = describeFunctions(catalogue);

describe("the help of the workbook", () => {
  it("has every function of the catalogue, under the name a formula calls it by", () => {
    expect(described.map(({ functionName }) => functionName)).toEqual(
      catalogue.functions.map(({ id }) => `SPARE.${id}`),
    );
  });

  it("sums a function up in its first sentence and keeps the rest for the details", () => {
    for (const { abstract, description } of described) {
      expect(abstract).toMatch(/\.$/);
      expect(description.startsWith(abstract)).toBe(true);
    }
  });

  it("marks what may be left out, and lists the choices where there are any", () => {
    const e1rm = described.find(({ functionName }) => functionName === "SPARE.E1RM")!;
    const [load, , reserve, equation] = e1rm.functionParameter;
    expect([load?.require, reserve?.require, equation?.require]).toEqual([1, 0, 0]);
    expect(equation?.detail).toContain('"brzycki", "lander"');
  });

  it("gives the catalogue's own example, with the names of what it leaves out", () => {
    const exampleOf = (id: string) =>
      described
        .find(({ functionName }) => functionName === `SPARE.${id}`)!
        .functionParameter.map(({ example }) => example);
    expect(exampleOf("E1RM")).toEqual(["100", "5", "2", "[equation]"]);
  });

  it("does not split an example at commas inside brackets, braces or text", () => {
    const [described] = describeFunctions({
      functions: [
        {
          id: "X",
          parameters: [{ name: "a" }, { name: "b" }, { name: "c" }, { name: "d" }],
          examples: ['=SPARE.X({1,2;3,4}, SUM(A1, A2), , "a, (b")'],
        },
      ],
    });
    expect(described?.functionParameter.map(({ example }) => example)).toEqual([
      "{1,2;3,4}",
      "SUM(A1, A2)",
      "",
      '"a, (b"',
    ]);
  });
});
