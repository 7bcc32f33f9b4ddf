import { mkdirSync, readdirSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { buildBook, lookAt, spare, workFolder } from "./support";

let folder: ReturnType<typeof workFolder>;
beforeEach(() => (folder = workFolder()));
afterEach(() => folder.remove());

const bookOf = (formula: string) =>
  buildBook({ sheets: { Log: `<row r="1"><c r="A1"><f>${formula}</f></c></row>` } });

/** Workbooks whose one formula is right, comes to an error, and cannot be read. */
const put = () => ({
  good: folder.put("good.xlsx", bookOf("SPARE.E1RM(100,5)")),
  failing: folder.put("failing.xlsx", bookOf('SPARE.E1RM("80kg",5)')),
  broken: folder.put("broken.xlsx", "no workbook"),
});

describe("several workbooks in one call", () => {
  it("go into a folder, each under its own name, and the folder is made", async () => {
    const { good, failing } = put();
    const { status, err } = await spare("calc", good, failing, "-o", folder.path("a/results"));
    expect([status, err]).toEqual([1, ""]);
    expect(readdirSync(folder.path("a/results")).sort()).toEqual(["failing.xlsx", "good.xlsx"]);
    expect(lookAt(folder.bytes("a/results/good.xlsx")).value("Log", "A1")).toBeCloseTo(116.6667, 4);
  });

  it("are each reported; what is wrong with one is a line, and the rest goes on", async () => {
    const { good, failing, broken } = put();
    const { status, out, err } = await spare("calc", broken, failing, good);
    expect(status).toBe(2);
    expect(err).toBe(`spare: ${broken}: the file is not an .xlsx workbook\n`);
    expect(out.indexOf(failing)).toBeLessThan(out.indexOf(`\n\n${good}\n`));
    expect((await spare("calc", good, failing)).status).toBe(1);
    expect((await spare("calc", good)).status).toBe(0);
  });

  it("are a list for programs, in which a file that could not be read stands with the reason", async () => {
    const { good, broken } = put();
    const { out } = await spare("calc", broken, good, "--json");
    expect(JSON.parse(out)).toEqual([
      { file: broken, error: expect.stringContaining("not an .xlsx workbook") as string },
      expect.objectContaining({ file: good, output: null }),
    ]);
  });

  it("are calculated in place, and copied into a folder", async () => {
    const { good, failing } = put();
    expect((await spare("calc", good, failing, "--in-place", "--quiet")).out).toBe("");
    expect(lookAt(folder.bytes("good.xlsx")).value("Log", "A1")).toBeCloseTo(116.6667, 4);
    mkdirSync(folder.path("copies"));
    await spare("plain", good, failing, "-o", folder.path("copies"));
    expect(lookAt(folder.bytes("copies/failing.xlsx")).formulas).toEqual([]);
  });

  it("are refused before anything is written where two results would be one file, or one an input", async () => {
    const { good } = put();
    mkdirSync(folder.path("b"));
    const other = folder.put("b/good.xlsx", bookOf("SPARE.E1RM(90,5)"));
    const names = folder.names();
    const clash = await spare("calc", good, other, "-o", folder.path("out"));
    expect([clash.status, clash.err]).toEqual([
      2,
      expect.stringMatching(/^spare: [^\n]*would both become [^\n]*\n$/) as string,
    ]);
    const own = await spare("calc", good, "-o", folder.path("b"));
    expect(own.status).toBe(0);
    const over = await spare("calc", good, folder.put("c.xlsx", ""), "-o", folder.path("."));
    expect([over.status, over.err]).toEqual([2, expect.stringContaining("is the workbook itself")]);
    expect(folder.names()).toEqual([...names, "c.xlsx"].sort());
  });

  it("need a folder, and not a file", async () => {
    const { good, failing } = put();
    const { status, err } = await spare("calc", good, failing, "-o", folder.put("out.xlsx", ""));
    expect([status, err]).toEqual([2, expect.stringContaining("is not a folder")]);
  });
});

describe("what is said", () => {
  it("is nothing with --quiet, but for what went wrong", async () => {
    const { good, broken } = put();
    expect(await spare("calc", good, "-q")).toMatchObject({ status: 0, out: "", err: "" });
    const { out, err } = await spare("calc", good, broken, "-q");
    expect([out, err]).toEqual(["", expect.stringContaining("not an .xlsx workbook")]);
  });

  it("is that nothing was written with --dry-run, for every command that writes", async () => {
    const { good } = put();
    const names = folder.names();
    for (const command of ["calc", "plain", "portable"]) {
      const output = folder.path("new/out.xlsx");
      const { status, out } = await spare(command, good, "-o", output, "--dry-run");
      expect([status, out]).toEqual([0, expect.stringContaining("this was a dry run")]);
    }
    expect(folder.names()).toEqual(names);
  });
});
