import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { run } from "../../src/cli/run";
import { buildBook, lookAt, spare, spareWith, workFolder } from "./support";

let folder: ReturnType<typeof workFolder>;
beforeEach(() => (folder = workFolder()));
afterEach(() => folder.remove());

const book = buildBook({
  sheets: {
    Plan: `<row r="1"><c r="A1"><v>1</v></c></row>`,
    Log: `<row r="1"><c r="A1"><f>SPARE.E1RM(100,5)</f></c><c r="B1" t="str"><v>a,"b"</v></c></row>`,
  },
});

describe("a dash", () => {
  it("is standard input and output, and then the report is on standard error", async () => {
    const { status, bytes, err } = await spareWith(book, "calc", "-", "-o", "-");
    expect(status).toBe(0);
    expect(lookAt(bytes).value("Log", "A1")).toBeCloseTo(116.6667, 4);
    expect(err).toMatch(/^standard input\n {2}calculated {5}1\n/);
    expect(err).toMatch(/Written to standard output\n$/);
  });

  it("is one of them alone, for copies too", async () => {
    const { out } = await spareWith(book, "calc", "-", "--json");
    expect(JSON.parse(out)).toMatchObject({ file: "-", calculated: [{ cell: "A1" }] });
    const input = folder.put("book.xlsx", book);
    const { bytes, err } = await spare("plain", input, "-o", "-", "--json");
    expect(lookAt(bytes).formulas).toEqual([]);
    expect(JSON.parse(err)).toMatchObject({ file: input, output: "-" });
  });

  it("takes what is sent for what it holds, and refuses what is nothing", async () => {
    expect((await spareWith('a,"=SPARE.E1RM(100,5)"\n', "calc", "-", "-o", "-", "-q")).out).toBe(
      "a,116.666666666667\n",
    );
    const { status, err } = await spareWith("", "calc", "-");
    expect([status, err]).toEqual([2, "spare: standard input: the file is empty\n"]);
  });

  it("sends no workbook to a screen", async () => {
    const said: string[] = [];
    const status = await run(["calc", folder.put("book.xlsx", book), "-o", "-"], {
      in: { [Symbol.asyncIterator]: () => ({ next: () => Promise.reject(new Error("not read")) }) },
      out: { isTTY: true, write: () => said.push("written") },
      err: { write: (text) => said.push(text) },
    });
    expect(status).toBe(2);
    expect(said).toEqual([expect.stringContaining("nothing for a screen")]);
  });
});

describe("comma-separated values", () => {
  const log =
    "date;load;reps;reserve;e1RM\r\n" +
    "2026-01-05;100.0;5;;=SPARE.E1RM(B2,C2)\r\n" +
    '2026-01-08;"82,5";3;2;=ROUND(SPARE.E1RM(B3,C3,D3),1)\r\n' +
    ";;;;\r\n" +
    "=SPARE.STRENGTHTREND(A2:A9,B2:B9,C2:C9)\r\n";

  it("are read and written: values stay as they are written, formulas become what they come to if they can", async () => {
    const input = folder.put("log.csv", log);
    const { status } = await spare("calc", input, "-o", folder.path("out.csv"));
    expect(status).toBe(1);
    const lines = new TextDecoder().decode(folder.bytes("out.csv")).split("\n");
    expect(lines.slice(0, 4)).toEqual([
      "date;load;reps;reserve;e1RM",
      "2026-01-05;100.0;5;;116.666666666667",
      "2026-01-08;82,5;3;2;96.3",
      ";;;;",
    ]);
    // It reads its own cell, so it is left.
    expect(lines[4]).toBe("=SPARE.STRENGTHTREND(A2:A9,B2:B9,C2:C9)");
  });

  it("spill, over the end of the file too", async () => {
    const input = folder.put("plan.csv", 'week,reserve\n,"=SPARE.RESERVETAPER(3,2,0)"\n');
    const { out } = await spare("calc", input, "-o", "-", "-q");
    expect(out).toBe("week,reserve\n,2\n,1\n,0\n");
  });

  it("become a workbook under a workbook's name, and a workbook's sheet becomes them", async () => {
    const input = folder.put("log.csv", log);
    await spare("calc", input, "-o", folder.path("log.xlsx"));
    const { value } = lookAt(folder.bytes("log.xlsx"));
    expect(value("log", "A2")).toBe(46_027);
    expect(value("log", "E2")).toBeCloseTo(116.6667, 4);

    const squad = folder.put("squad.xlsx", book);
    await spare("calc", squad, "-o", folder.path("squad.csv"), "--sheet", "log");
    expect(new TextDecoder().decode(folder.bytes("squad.csv"))).toBe(
      '116.666666666667,"a,""b"""\n',
    );
    expect((await spare("calc", squad, "-o", "-", "--csv", "-q")).out).toBe("1\n");
    const dates = await spare("calc", folder.path("log.xlsx"), "-o", "-", "--csv", "-q");
    expect(dates.out).toContain("\n2026-01-08,");
  });

  it("keep what stands in quotes, and are refused where one is not closed, or what they are is no text", async () => {
    const kept = '"a\nb","c ""d""",=SPARE.RPETORIR(8)\n';
    const { out } = await spareWith(kept, "calc", "-", "-o", "-", "-q");
    expect(out).toBe('"a\nb","c ""d""",2\n');
    for (const [bytes, reason] of [
      ['a,b\n"c,d\n', /a quote in line 2 is not closed/],
      [Uint8Array.of(0x61, 0xff, 0x62), /not text in UTF-8/],
      ["a\0b", /is not text/],
    ] as const) {
      const { status, err } = await spare("calc", folder.put("bad.csv", bytes));
      expect([status, err]).toEqual([2, expect.stringMatching(reason) as string]);
      expect(err.trim().split("\n")).toHaveLength(1);
    }
  });
});

describe("a name whose ending does not fit the content", () => {
  it("is refused, of what is read and of what would be written", async () => {
    const names = ["book.csv", "book.xlsm", "book.pdf"];
    for (const name of names) {
      const { status, err } = await spare("calc", folder.put(name, book));
      const ending = name.slice(4);
      expect([status, err]).toEqual([
        2,
        `spare: ${folder.path(name)}: its name ends in ${ending}, and what it holds is an .xlsx workbook\n`,
      ]);
    }
    const input = folder.put("book.xlsx", book);
    for (const command of ["calc", "plain", "portable"]) {
      const { status, err } = await spare(command, input, "-o", folder.path("out.xls"));
      expect([status, err]).toEqual([2, expect.stringContaining("its name ends in .xls")]);
    }
    expect((await spare("plain", input, "-o", folder.path("out.csv"))).status).toBe(2);
    expect(folder.names()).toEqual([...names, "book.xlsx"].sort());
  });

  it("is no question of a name without one, nor of capitals", async () => {
    const plain = folder.put("book", book);
    expect((await spare("calc", plain, "-o", folder.path("OUT.XLSX"))).status).toBe(0);
    expect((await spare("calc", folder.path("OUT.XLSX"), "-o", folder.path("out"))).status).toBe(0);
  });
});
