import { describe, expect, it } from "vitest";
import { piecesOf, textOf } from "../../src/formula/pieces";
import { writeOutSheets } from "../../src/formula/sheetRanges";
import { nameVariablesApart } from "../../src/formula/variables";

describe("a formula taken apart", () => {
  it.each([
    '=IF(A1="(",SUM({1,2;3,4}),LAMBDA(x,x*2)(5))',
    "=SUM('Week 1'!A1:B2, (C1:C3))+B1 ",
    "=SUM(A1,(B1",
    "=SUM((A1)",
    "=A1)+B1",
    "",
  ])("is the same put together again: %s", (formula) => {
    expect(textOf(piecesOf(formula))).toBe(formula);
  });
});

describe("the same cells of several sheets", () => {
  const sheets = ["Plan", "W1", "Week 2", "W3", "Log"];
  it.each([
    ["=SUM(W1:W3!B2)", "=SUM('W1'!B2,'Week 2'!B2,'W3'!B2)"],
    ["=SUM(w3:w1!B2)", "=SUM('W1'!B2,'Week 2'!B2,'W3'!B2)"],
    ["=MAX(1,'W1:Week 2'!$B$2:B6)", "=MAX(1,'W1'!$B$2:B6,'Week 2'!$B$2:B6)"],
    ["=1+COUNT(W1:W1!B:B)", "=1+COUNT('W1'!B:B)"],
  ])("are written out: %s", (formula, written) => {
    expect(writeOutSheets(formula, sheets)).toBe(written);
  });

  it.each([
    "=SUM(W1:Gone!B2)",
    "=SUM(W1:W3!B2*2)",
    "=COUNTIF(W1:W3!B2,1)",
    '="W1:W3!B2"',
    "=SUM(W1!B2:B6)",
    "=SUM([1]W1:W3!B2)",
  ])("stay as they are where they cannot be: %s", (formula) => {
    expect(writeOutSheets(formula, sheets)).toBe(formula);
  });
});

describe("the names that a formula makes for itself", () => {
  it.each([
    ["=LET(load,D2,load*2)", "=LET(_own_1_,D2,_own_1_*2)"],
    ["=LET(x,1,y,x+1,x*Y)", "=LET(_own_1_,1,_own_2_,_own_1_+1,_own_1_*_own_2_)"],
    ["=LET(x,1,LET(x,x+1,x)+x)", "=LET(_own_1_,1,LET(_own_2_,_own_1_+1,_own_2_)+_own_1_)"],
    ["=LAMBDA(r,SUM(r,x))(A1)", "=LAMBDA(_own_1_,SUM(_own_1_,x))(A1)"],
    ["=LET(f,LAMBDA(x,x),f(f(1)))", "=LET(_own_1_,LAMBDA(_own_2_,_own_2_),_own_1_(_own_1_(1)))"],
    ["=LET( x , 1 , x )", "=LET( _own_1_ , 1 , _own_1_ )"],
    ['=LET(x,1,"x"&x)', '=LET(_own_1_,1,"x"&_own_1_)'],
  ])("are its own: %s", (formula, renamed) => {
    expect(nameVariablesApart(formula)).toBe(renamed);
  });

  it("are none in other formulas", () => {
    expect(nameVariablesApart("=SUM(x,y)")).toBe("=SUM(x,y)");
  });
});
