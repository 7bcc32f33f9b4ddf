import { expect, it } from "vitest";
import { circularNames } from "../../src/formula/circularNames";

const name = (called: string, text: string) => ({ name: called, text });

it("names that stand for each other, or for themselves, are in a circle", () => {
  const names = [
    name("Up", "Down+1"),
    name("Down", "up*2"),
    name("Reader", "Up+1"),
    name("Load", "Log!$A$1"),
    name("Own", 'IF(Load>0,Own,"Down")'),
    name("Call", "LAMBDA(x,IF(x<1,0,CALL(x-1)))"),
  ];
  expect(circularNames(names)).toEqual(["Up", "Down", "Own"]);
  expect(circularNames([name("A", '"A"'), name("B", "A")])).toEqual([]);
});
