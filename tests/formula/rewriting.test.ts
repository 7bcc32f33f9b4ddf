import { describe, expect, it } from "vitest";
import { withoutIdleAt } from "../../src/formula/idleAt";
import { letInnerLambdas } from "../../src/formula/innerLambdas";
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

describe("a LAMBDA that is called where it stands, inside another or a LET", () => {
  it.each([
    ["=LAMBDA(a,LAMBDA(b,a-b)(2))(5)", "=LAMBDA(a,LET(b,2,a-b))(5)"],
    ["=LET(x,1,lambda(a,b,a+b)(x,2)*2)", "=LET(x,1,LET(a,x,b,2,a+b)*2)"],
    ["=LAMBDA(a,LAMBDA(b,LAMBDA(c,b*c)(b))(a))(5)", "=LAMBDA(a,LET(b,a,LET(c,b,b*c)))(5)"],
  ])("is a LET: %s", (formula, written) => {
    expect(letInnerLambdas(formula)).toBe(written);
  });

  it.each([
    "=LAMBDA(a,a*2)(5)",
    "=SUM(LAMBDA(a,a*2)(5))",
    "=MAP(A1:A3,LAMBDA(a,a*2))",
    "=LET(f,LAMBDA(a,a*2),f(5))",
    "=LAMBDA(a,LAMBDA(b,a)())(5)",
    "=LET(a,3,LAMBDA(x,LAMBDA(y,x+y))(1)(2))",
    "=LAMBDA(a,LAMBDA(b,c,a)(1))(5)",
    "=LAMBDA(a,LAMBDA(b,c,a)(,1))(5)",
    '=LET(x,"LAMBDA(a,a)(1)",x)',
  ])("and no other is: %s", (formula) => {
    expect(letInnerLambdas(formula)).toBe(formula);
  });
});

describe("an @", () => {
  it.each([
    ["=@A1", "=A1"],
    ["=SUM(@'Week 1'!$A$1,-@B2)", "=SUM('Week 1'!$A$1,-B2)"],
    ["=(@A1 )+@B2 * 2", "=(A1 )+B2 * 2"],
  ])("before one cell says nothing, and is left out: %s", (formula, written) => {
    expect(withoutIdleAt(formula)).toBe(written);
  });

  it.each([
    "=@A1:A3",
    "=@A1 : A3",
    "=@A1 A1:A3",
    "=@A:A",
    "=@A1#",
    "=@loads",
    "=Sets[@Load]",
    '="@A1"',
    "=@INDEX(A1:A3,2)",
  ])("before what may be several cells stays: %s", (formula) => {
    expect(withoutIdleAt(formula)).toBe(formula);
  });
});
