import { zipSync } from "fflate";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { progressBar } from "../../src/cli/progress";
import { damage } from "../xlsx/support";
import { buildBook, spare, workFolder, worksheet } from "./support";

let folder: ReturnType<typeof workFolder>;
beforeEach(() => (folder = workFolder()));
afterEach(() => folder.remove());

const whole = () =>
  buildBook({ sheets: { Log: `<row r="1"><c r="A1"><f>SPARE.E1RM(100,5)</f></c></row>` } });

/** A workbook one of whose parts is another text. */
function bookWith(path: string, text: string): Uint8Array {
  return buildBook({
    sheets: { Log: path === "xl/worksheets/sheet1.xml" ? text : "" },
    ...(path !== "xl/worksheets/sheet1.xml" && { parts: { [path]: [text, "application/xml"] } }),
  });
}

/** The file with one of its names changed in both places where a zip archive has it. */
function renamed(bytes: Uint8Array, from: string, to: string): Uint8Array {
  const text = Buffer.from(bytes).toString("latin1").replaceAll(from, to);
  return new Uint8Array(Buffer.from(text, "latin1"));
}

const compound = (name: string) =>
  Uint8Array.from([
    ...[0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1],
    ...Array<number>(504).fill(0),
    ...[...name].flatMap((letter) => [letter.charCodeAt(0), 0]),
    ...Array<number>(512).fill(0),
  ]);

const laughs =
  `<?xml version="1.0"?><!DOCTYPE worksheet [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">` +
  `<!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;">]><worksheet xmlns="http://schemas.openxmlformats.org/` +
  `spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="str"><v>&c;</v></c></row></sheetData></worksheet>`;

const unreadable: readonly (readonly [string, () => Uint8Array, RegExp])[] = [
  ["an empty file", () => new Uint8Array(), /the file is empty/],
  ["a damaged archive", () => whole().slice(0, -40), /damaged/],
  [
    "a part whose bytes were changed",
    () => {
      const bytes = whole();
      damage(bytes, 200);
      return bytes;
    },
    /damaged|not/,
  ],
  ["a text file", () => new TextEncoder().encode("load,reps\n100,5\n"), /not an \.xlsx workbook/],
  ["a file with a password", () => compound("EncryptedPackage"), /password/],
  ["an .xls workbook", () => compound("Workbook"), /\.xls workbook/],
  [
    "a zip bomb",
    () => zipSync({ "xl/worksheets/sheet1.xml": new Uint8Array(64 * 1024 * 1024) }),
    /unpacks to 64 MB/,
  ],
  ["an entity bomb", () => bookWith("xl/worksheets/sheet1.xml", laughs), /document type/],
  [
    "a part outside the archive",
    () => renamed(bookWith("xl/aa/evil.xml", "<a/>"), "xl/aa/evil.xml", "../../evil.xml"),
    /outside itself/,
  ],
  [
    "XML that is not well-formed",
    () => bookWith("xl/worksheets/sheet1.xml", `<worksheet xmlns="x"><sheetData></worksheet>`),
    /not well-formed/,
  ],
  [
    "a drawing that is not in the file",
    () =>
      buildBook({
        sheets: { Log: worksheet("", `<drawing r:id="rId1"/>`) },
        references: { "xl/worksheets/sheet1.xml": [["drawing", "../drawings/drawing1.xml"]] },
      }),
    /the file is damaged: "xl\/drawings\/drawing1\.xml" is missing/,
  ],
  [
    "a zip archive of something else",
    () => zipSync({ "a.txt": new Uint8Array(3) }),
    /not an \.xlsx/,
  ],
];

describe("a file that cannot be read", () => {
  for (const [name, make, reason] of unreadable) {
    it(`is refused in one line, with nothing written: ${name}`, async () => {
      const bytes = make();
      const input = folder.put("book.xlsx", bytes);
      for (const args of [
        ["calc", input, "-o", folder.path("out.xlsx")],
        ["calc", input, "--in-place"],
        ["plain", input, "-o", folder.path("out.xlsx")],
        ["portable", input, "-o", folder.path("out.xlsx")],
      ]) {
        const { status, out, err } = await spare(...args);
        expect(status).toBe(2);
        expect(out).toBe("");
        expect(err).toMatch(/^spare: [^\n]*book\.xlsx: [^\n]+\n$/);
        expect(err).toMatch(reason);
      }
      expect(folder.names()).toEqual(["book.xlsx"]);
      expect(folder.bytes("book.xlsx")).toEqual(bytes);
    });
  }

  it("is refused where there is none, or it is a folder", async () => {
    expect(await spare("calc", folder.path("none.xlsx"))).toMatchObject({
      status: 2,
      err: expect.stringContaining("there is no such file") as string,
    });
    expect((await spare("calc", folder.path("."))).status).toBe(2);
  });
});

describe("a workbook that takes longer than --timeout allows", () => {
  const formulas = {
    "in the engine": ["LEN(SPARE.E1RM(100,5))"],
    "without it": Array<string>(2000).fill("SPARE.E1RM(100,5)"),
  };
  it.each(Object.entries(formulas))(
    "%s is given up in one line, with nothing written",
    async (_where, formulas) => {
      const rows = formulas.map((formula, at) => {
        return `<row r="${at + 1}"><c r="A${at + 1}"><f>${formula}</f></c></row>`;
      });
      const input = folder.put("book.xlsx", buildBook({ sheets: { Log: rows.join("") } }));
      const args = ["calc", input, "--in-place", "--timeout", "0.001"];
      const before = folder.bytes("book.xlsx");
      expect(await spare(...args)).toMatchObject({
        status: 2,
        out: "",
        err: expect.stringMatching(/it took longer than 0.001 seconds\n$/) as string,
      });
      expect(folder.bytes("book.xlsx")).toEqual(before);
    },
  );
});

describe("a command line that cannot be followed", () => {
  const book = "book.xlsx";
  const bad: readonly (readonly [string[], RegExp])[] = [
    [[], /no command/],
    [["cacl", book], /"cacl" is not a command/],
    [["calc"], /needs a workbook/],
    [["calc", book, "--loud"], /--loud/],
    [["calc", book, "-o"], /-o/],
    [["calc", book, "-o", "out.xlsx", "--in-place"], /not both/],
    [["calc", book, "--json", "--quiet"], /not both/],
    [["calc", "-", "--in-place"], /standard input has no place/],
    [["calc", "-", "-"], /found - twice/],
    [["calc", book, "other.xlsx", "-o", "-"], /several need a folder/],
    [["calc", "-", "-o", "results/"], /standard input has no name/],
    [["calc", book, "--csv"], /--csv needs -o/],
    [["plain", book], /needs -o/],
    [["cards", book], /cards needs -o and a folder/],
    [["cards", book, "-o", "-"], /-o needs a folder/],
    [["portable", book, "--in-place"], /--in-place goes with calc/],
    [["plain", book, "-o", "out.xlsx", "--page", "x"], /--page goes with cards/],
    [["plain", book, "-o", "out.xlsx", "--csv"], /--csv does not go with plain/],
    [["calc", book, "--timeout", "soon"], /--timeout is "soon"; expected a number of seconds/],
    [["value"], /value needs a formula/],
    [["value", "SPARE.E1RM(100,", "5)"], /quote it as a whole/],
    [["completion"], /needs a shell: bash, zsh, fish/],
    [["completion", "tcsh"], /knows no "tcsh"/],
    [["help", "cacl"], /knows no "cacl"/],
  ];
  for (const [args, reason] of bad) {
    it(`is refused in one line, with where to look: spare ${args.join(" ")}`, async () => {
      const { status, out, err } = await spare(...args);
      expect([status, out]).toEqual([2, ""]);
      expect(err).toMatch(reason);
      expect(err).toMatch(/^[^\n]* \(spare (?:--help|help \w+) shows how it is used\)\n$/);
    });
  }

  it("is not meant where the usage was right: then nothing points to the help", async () => {
    const input = folder.put("book.xlsx", whole());
    for (const args of [
      ["calc", folder.path("none.xlsx")],
      ["calc", input, "-o", folder.path("none/out.xlsx")],
      ["calc", input, "-o", input],
      ["calc", input, "-o", folder.path("out.pdf")],
      ["calc", input, "--sheet", "Nowhere"],
      ["value", "1+1"],
    ]) {
      const { status, err } = await spare(...args);
      expect(status).toBe(2);
      expect(err).not.toContain("shows how it is used");
    }
  });
});

describe("the progress bar", () => {
  const screen = (isTTY: boolean) => {
    const written: string[] = [];
    return { isTTY, written, write: (text: string) => written.push(text) };
  };

  it("shows on long work where somebody looks, and goes away", () => {
    let time = 0;
    const terminal = screen(true);
    const bar = progressBar(terminal, () => time);
    bar.update(1, 10);
    expect(terminal.written).toEqual([]);
    time = 2000;
    bar.update(5, 10);
    bar.update(5, 10);
    expect(terminal.written).toHaveLength(1);
    expect(terminal.written[0]).toContain("50%");
    bar.clear();
    expect(terminal.written.at(-1)).toBe("\r\u001b[K");
  });

  it("stays away from a file or a pipe", () => {
    let time = 0;
    const pipe = screen(false);
    const bar = progressBar(pipe, () => (time += 5000));
    bar.update(5, 10);
    bar.clear();
    expect(pipe.written).toEqual([]);
  });
});
