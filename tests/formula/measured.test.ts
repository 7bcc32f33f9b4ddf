import { describe, expect, it } from "vitest";
import { areaAddress } from "../../src/formula/address";
import { measuredAreas } from "../../src/formula/measured";

const measured = (formula: string) => measuredAreas(formula).map(areaAddress);

describe("the areas of which a formula asks the place or the size alone", () => {
  it("are those in ROWS, ROW, COLUMNS and COLUMN", () => {
    expect(measured("=ROWS(B$20:B20)+ROW( A5 )*columns($A1:C1)-COLUMN(D1)")).toEqual([
      ...["B20", "A5", "A1:C1", "D1"],
    ]);
  });

  it("are told once for each time it asks", () => {
    expect(measured("=IF(ROWS(B$1:B3)>4,0,INDEX(A1:A9,ROWS(B$1:B3)))")).toEqual(["B1:B3", "B1:B3"]);
  });

  it("are none where it reads what they hold, or another sheet, a name or a made-up range", () => {
    for (const formula of [
      "=SUM(B1:B3)",
      "=ROWS(Log!B1:B3)",
      "=ROWS(squad)",
      "=ROWS(A1:INDEX(A:A,3))",
      "=ROWS(FILTER(A1:A9,B1:B9>0))",
      "=ROW()",
      '="ROWS(A1)"',
    ]) {
      expect(measured(formula)).toEqual([]);
    }
  });
});
