import { describe, expect, it } from "vitest";
import { liftReport, liftRow, report, required, type Parts } from "../../src/cells";
import { blanks, column, errorText, load, row, thrownBy } from "./fixtures";

enum Label {
  n = "n",
  meanChange = "mean change",
  low = "low",
}
const values: Parts<typeof Label> = {
  n: 1,
  meanChange: 4.5,
  low: { absent: "one athlete has no interval" },
};
const ask = (part?: unknown) => report(Label, part, values);

describe("a report", () => {
  it.each([null, undefined])(
    "is two columns, label and value, where part is left out (%s)",
    (part) => {
      expect(ask(part)).toEqual([
        ["n", 1],
        ["mean change", 4.5],
        ["low", ""],
      ]);
    },
  );

  it.each(blanks)("is whole where part is a blank cell of %s", (_host, blank) => {
    expect(ask([[blank]])).toHaveLength(3);
  });
});

describe("a part of a report", () => {
  it("is one value in one cell, case and outer blanks aside", () => {
    expect(ask("mean change")).toEqual([[4.5]]);
    expect(ask([[" Mean Change "]])).toEqual([[4.5]]);
  });

  it("is #N/A with the reason where it does not exist for the data", () => {
    expect(errorText(ask("low")[0]?.[0])).toBe("#N/A one athlete has no interval");
  });

  it("is the error of the call where it is no label, which lists them", () => {
    expect(thrownBy(() => ask("mean"))).toBe(
      '#VALUE! part is "mean"; expected "n", "mean change" or "low"',
    );
    expect(thrownBy(() => ask(3))).toContain('part is "3"');
    expect(thrownBy(() => ask("#N/A"))).toBe("#N/A part holds #N/A");
  });
});

describe("parts of a report in a range", () => {
  it.each(blanks)("are blank where the range is, in %s", (_host, blank) => {
    expect(ask(column("n", blank))).toEqual([[1], [""]]);
  });

  it("are no numbers", () => {
    expect(errorText(ask(column("n", 1))[1]?.[0])).toContain('part is "1"');
  });

  it("keep the shape of the labels", () => {
    expect(ask(column("mean change", "n"))).toEqual([[4.5], [1]]);
    expect(ask(row("n", "mean change"))).toEqual([[1, 4.5]]);
  });

  it("are blank or an error in their own cell only", () => {
    const [first, second, third, fourth] = ask(column("n", "", "mean", "low")).flat();
    expect([first, second]).toEqual([1, ""]);
    expect(errorText(third)).toContain('#VALUE! part is "mean"');
    expect(errorText(fourth)).toBe("#N/A one athlete has no interval");
  });
});

const compute = ({ load }: { load: number }): Parts<typeof Label> => ({
  n: 1,
  meanChange: load / 2,
  low: load > 100 ? load : { absent: "too light" },
});
const inReport = (loads: unknown, part?: unknown) =>
  liftReport({ load: required(loads, load) }, Label, part, compute);
const inRow = (loads: unknown, part?: unknown) =>
  liftRow({ load: required(loads, load) }, Label, part, compute);

describe("a report made of single values", () => {
  it("is two columns for one set of inputs, one blank cell while they are blank", () => {
    expect(inReport(100)).toEqual([
      ["n", 1],
      ["mean change", 50],
      ["low", ""],
    ]);
    expect(inReport("")).toEqual([[""]]);
    expect(errorText(inReport("80kg")[0]?.[0])).toBe(
      '#VALUE! load is text, "80kg"; expected a load above 0',
    );
  });

  it("asks for one part where it is given a range, whichever way that lies", () => {
    expect(thrownBy(() => inReport(row(100, 110)))).toContain("expected one for a range");
    expect(thrownBy(() => inReport(column(100, 110)))).toBe(
      '#VALUE! part is left out; expected one for a range: "n", "mean change" or "low"',
    );
  });

  it("refuses a range before it computes anything", () => {
    const never = () => {
      throw new Error("computed");
    };
    const inputs = { load: required(column(100, 110), load) };
    expect(thrownBy(() => liftReport(inputs, Label, undefined, never))).toContain(
      "expected one for a range",
    );
    const across = { load: required(row(100, 110), load) };
    expect(thrownBy(() => liftRow(across, Label, undefined, never))).toContain(
      "expected one for inputs across",
    );
  });
});

describe.each([
  ["a report", inReport],
  ["a row", inRow],
])("the parts of %s, lifted", (_kind, lifted) => {
  it("are one part in the shape of the inputs", () => {
    expect(lifted(column("load", 100, 120), "mean change")).toEqual([[""], [50], [60]]);
    expect(lifted(row(100, 120), "mean change")).toEqual([[50, 60]]);
  });

  it("are several across a column of inputs, or down a row of them", () => {
    expect(lifted(column(110, 120), row("low", "mean change"))).toEqual([
      [110, 55],
      [120, 60],
    ]);
    expect(lifted(row(110, 120), column("low", "mean change"))).toEqual([
      [110, 120],
      [55, 60],
    ]);
  });

  it("are in the shape of the labels for one set of inputs", () => {
    expect(lifted(110, column("low", "", "n"))).toEqual([[110], [""], [1]]);
  });

  it("are blank in a row that waits, and an error in a bad row only", () => {
    const [first, [a, b] = [], third] = lifted(column("", "80kg", 120), row("n", "low"));
    expect([first, third]).toEqual([
      ["", ""],
      [1, 120],
    ]);
    expect([a, b].map(errorText)).toEqual(
      Array(2).fill('#VALUE! the 2nd row of load is text, "80kg"; expected a load above 0'),
    );
  });

  it("are #N/A with the reason where one does not exist", () => {
    const [first, second] = lifted(column(90, 120), "low").flat();
    expect(errorText(first)).toBe("#N/A too light");
    expect(second).toBe(120);
  });

  it("do not go along the inputs", () => {
    expect(thrownBy(() => lifted(column(90, 120), column("n", "low")))).toBe(
      "#VALUE! part has several labels along the same direction as the inputs; expected one",
    );
    expect(thrownBy(() => lifted(row(90, 120), row("n", "low", "n")))).toContain("expected one");
  });

  it("are the error of the call where the one label is unknown", () => {
    expect(thrownBy(() => lifted(column(90, 120), "high"))).toContain('part is "high"');
  });
});

describe("a row of values", () => {
  it("is a row for each row of inputs, blank across where it waits", () => {
    expect(inRow(column("load", 110, "", 90))).toEqual([
      ["", "", ""],
      [1, 55, 110],
      ["", "", ""],
      [1, 45, ""],
    ]);
  });

  it("is an error across a bad row only", () => {
    const [first, second] = inRow(column("80kg", 110));
    expect(first?.map(errorText)).toEqual(
      Array(3).fill('#VALUE! the 1st row of load is text, "80kg"; expected a load above 0'),
    );
    expect(second).toEqual([1, 55, 110]);
  });

  it("asks for one part where the inputs lie across columns", () => {
    expect(thrownBy(() => inRow(row(100, 110)))).toBe(
      '#VALUE! part is left out; expected one for inputs across columns: "n", "mean change" or "low"',
    );
  });
});
