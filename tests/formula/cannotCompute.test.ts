import { describe, expect, it } from "vitest";
import { cannotCompute } from "../../src/formula/cannotCompute";

const surroundings = {
  known: new Set(["SUM", "INDEX", "XLOOKUP", "IF", "LAMBDA", "COUNTIF", "IMAGE"]),
  sheets: ["W1", "W2"],
  isName: (text: string) => text.toLowerCase() === "mine",
};
const reason = (formula: string) => cannotCompute(formula, surroundings);

describe("a formula that we cannot compute", () => {
  it.each([
    ["=NOSUCH(1)+1", "NOSUCH is not a function we can compute"],
    ["=IF(A1,1,Nosuch(2))", "NOSUCH is not a function we can compute"],
    ['=IMAGE("https://club.example/x?"&A1)', "IMAGE depends on more than the workbook"],
    ["=[1]Log!A1", "it reads another workbook"],
    ["=COUNTIF(W1:W2!A1,1)", "it reads the same cells of several sheets"],
    ["=SUM(W1:Gone!A1)", "it reads the same cells of several sheets"],
    ["=SUM((A1:A2,C1:C2))", "it takes several ranges as one"],
    ["=SUM(A1:C3 B2:D4)", "it reads where two ranges meet"],
    ["=SUM(XLOOKUP(1,A:A,B:B):B9)", "it reads a range that XLOOKUP ends"],
    ["=SUM(B9:XLOOKUP(1,A:A,B:B))", "it reads a range that XLOOKUP ends"],
  ])("says why: %s", (formula, why) => {
    expect(reason(formula)).toBe(why);
  });

  it.each([
    "=SUM(A1, B1 , {1, 2})",
    "=SUM(W1:W2!A1)",
    "=IF( A1 = 1 , SUM( A1 ) , mine(2) )",
    "=LAMBDA(x,y,x+y)(1,2)",
    "=SUM(A1:INDEX(A:A,5))",
    "=SPARE.E1RM(A1,B1)",
    '="[1]NOSUCH("&A1',
  ])("is none of these: %s", (formula) => {
    expect(reason(formula)).toBeUndefined();
  });
});
