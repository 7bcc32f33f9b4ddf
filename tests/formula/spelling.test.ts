import { describe, expect, it } from "vitest";
import { respellWorkbook } from "../../src/engine/respell";
import { respell } from "../../src/formula/spelling";

describe("the three spellings of a function", () => {
  const spellings = {
    excel: "=ROUND(SPARE.E1RM(A2,B2),1)+SPARE.MDC(C2)",
    "excel file": "=ROUND(_xldudf_SPARE_E1RM(A2,B2),1)+_xldudf_SPARE_MDC(C2)",
    sheets: "=ROUND(SPARE_E1RM(A2,B2),1)+SPARE_MDC(C2)",
  } as const;
  const names = Object.keys(spellings) as (keyof typeof spellings)[];

  it.each(names.flatMap((from) => names.map((to) => [from, to] as const)))(
    "turn into one another: %s to %s",
    (from, to) => {
      expect(respell(spellings[from], to)).toBe(spellings[to]);
    },
  );

  it("are recognised in any case and with a space before the bracket", () => {
    expect(respell("=spare_e1rm (A2,B2)", "excel")).toBe("=SPARE.E1RM (A2,B2)");
    expect(respell("=_XLDUDF_SPARE_E1RM(A2)", "excel")).toBe("=SPARE.E1RM(A2)");
  });

  it("leave text in double quotes alone, doubled quotes included", () => {
    const formula = '="type ""SPARE_E1RM("" or SPARE_MDC(1)"&SPARE_MDC(2)';
    expect(respell(formula, "excel")).toBe('="type ""SPARE_E1RM("" or SPARE_MDC(1)"&SPARE.MDC(2)');
  });

  it("leave a sheet's quoted name alone, doubled quotes included", () => {
    const formula = "='Jo''s SPARE_E1RM(x)'!A1*SPARE_E1RM('SPARE_MDC(1)'!B2,3)";
    expect(respell(formula, "excel")).toBe(
      "='Jo''s SPARE_E1RM(x)'!A1*SPARE.E1RM('SPARE_MDC(1)'!B2,3)",
    );
  });

  it("leave names alone that only look like ours", () => {
    for (const formula of [
      "=MY_SPARE_E1RM(A2)",
      "=A.SPARE.E1RM(A2)",
      "=SPARE_E1RM+1",
      "=SPARE_E1RM_OLD(A2)",
      "=ÄSPARE_E1RM(A2)",
      "=_xldudf_OTHER_E1RM(A2)",
    ]) {
      expect(respell(formula, "excel")).toBe(formula);
    }
  });

  it("find a function right after an operator, a bracket, a comma or a minus", () => {
    expect(respell("=-SPARE_MDC(1)+(SPARE_MDC(2),SPARE_MDC(3))%", "excel")).toBe(
      "=-SPARE.MDC(1)+(SPARE.MDC(2),SPARE.MDC(3))%",
    );
  });
});

describe("a workbook's formulas", () => {
  it("are respelled in its cells and behind its names, and nothing else is", () => {
    const names = { n1: { id: "n1", name: "best", formulaOrRefString: '=SPARE_E1RM(A1,"x")' } };
    const workbook = {
      id: "book",
      name: "SPARE_E1RM(",
      appVersion: "",
      locale: "enUS" as never,
      styles: {},
      sheetOrder: ["one"],
      sheets: {
        one: {
          id: "one",
          name: "One",
          rowCount: 5,
          cellData: { 2: { 1: { f: "=SPARE_MDC(A1)", v: 3 }, 2: { v: "SPARE_MDC(A1)" } } },
        },
      },
      resources: [
        { name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(names) },
        { name: "SOMETHING_ELSE", data: "SPARE_E1RM(" },
      ],
    };
    expect(respellWorkbook(workbook, "excel file")).toEqual({
      ...workbook,
      sheets: {
        one: {
          ...workbook.sheets.one,
          cellData: {
            2: { 1: { f: "=_xldudf_SPARE_MDC(A1)", v: 3 }, 2: { v: "SPARE_MDC(A1)" } },
          },
        },
      },
      resources: [
        {
          name: "SHEET_DEFINED_NAME_PLUGIN",
          data: JSON.stringify({
            n1: { id: "n1", name: "best", formulaOrRefString: '=_xldudf_SPARE_E1RM(A1,"x")' },
          }),
        },
        { name: "SOMETHING_ELSE", data: "SPARE_E1RM(" },
      ],
    });
  });
});
