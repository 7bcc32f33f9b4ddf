import { deflateRawSync } from "node:zlib";
import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import {
  parseXml,
  readPackage,
  relationshipsOf,
  UnreadableFile,
  writePackage,
  writeXml,
} from "../../src/xlsx/package";
import { readWorkbook } from "../../src/xlsx";
import { elementAt, only } from "../present";
import { bytesOf, damage, files } from "./support";

const text = (content: string) => new TextEncoder().encode(content);

const refusal = (bytes: Uint8Array): string => {
  try {
    readWorkbook(readPackage(bytes));
  } catch (error) {
    expect(error).toBeInstanceOf(UnreadableFile);
    const { message } = error as Error;
    expect(message).not.toContain("\n");
    return message;
  }
  throw new Error("the file was read");
};

const isSame = (bytes: Uint8Array, others: Uint8Array | undefined) =>
  others !== undefined && Buffer.compare(bytes, others) === 0;

/** The bytes of a good workbook with one part put in or replaced. */
function withPart(path: string, content: Uint8Array): Uint8Array {
  const parts = new Map(readPackage(bytesOf("openpyxl")).parts);
  parts.set(path, content);
  return writePackage({ parts }, deflateRawSync);
}

describe("a file that is not a workbook", () => {
  it("is refused when it is empty", () => {
    expect(refusal(new Uint8Array())).toBe("the file is empty");
  });

  it("is refused when it is something else", () => {
    expect(refusal(text("date,load,reps"))).toBe("the file is not an .xlsx workbook");
    expect(refusal(zipSync({ "letter.txt": text("Dear crew") }))).toMatch(/zip archive, but not/);
  });

  it("is refused with its name when it is an .xls, in its container or bare", () => {
    const container = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
    const named = [...text("W\0o\0r\0k\0b\0o\0o\0k\0")];
    expect(refusal(Uint8Array.from([...container, ...named]))).toMatch(/\.xls workbook/);
    expect(refusal(Uint8Array.from([0x09, 0x08, 0x10, 0]))).toMatch(/\.xls workbook/);
    const locked = [...text("E\0n\0c\0r\0y\0p\0t\0e\0d\0P\0a\0c\0k\0a\0g\0e\0")];
    expect(refusal(Uint8Array.from([...container, ...locked]))).toMatch(/password/);
  });

  it("is refused when its archive is locked with a password", () => {
    const bytes = bytesOf("openpyxl").slice();
    const entry = bytes.findIndex((_, at) => bytes[at] === 0x50 && bytes[at + 2] === 0x01);
    bytes[entry + 8] = elementAt(bytes, entry + 8) | 1;
    expect(refusal(bytes)).toMatch(/password/);
  });
});

describe("a damaged workbook", () => {
  it("is refused wherever it was cut off", () => {
    const whole = bytesOf("xlsxwriter");
    for (const share of [0.02, 0.5, 0.9, 0.999]) {
      expect(refusal(whole.subarray(0, Math.floor(whole.length * share)))).toMatch(/damaged/);
    }
  });

  it("is refused when a part is not what was packed", () => {
    const bytes = bytesOf("xlsxwriter").slice();
    const start = 30 + elementAt(bytes, 26) + elementAt(bytes, 28);
    damage(bytes, start + 20);
    expect(refusal(bytes)).toMatch(/damaged/);
  });

  it("is refused when its XML breaks off, or a part is missing", () => {
    expect(refusal(withPart("xl/workbook.xml", text("<workbook><sheets>")))).toMatch(
      /"xl\/workbook.xml" is not well-formed/,
    );
    const parts = new Map(readPackage(bytesOf("openpyxl")).parts);
    parts.delete("xl/worksheets/sheet1.xml");
    expect(refusal(writePackage({ parts }))).toMatch(/sheet1.xml" is missing/);
  });
});

describe("a hostile workbook", () => {
  it("may not hold a part outside itself", () => {
    for (const path of ["../evil.xml", "/etc/passwd", "xl/../../evil.xml", "C:\\evil.xml"]) {
      expect(refusal(withPart(path, text("<a/>")))).toMatch(/outside itself/);
    }
  });

  it("may not swell to many times its size", () => {
    const zeros = new Uint8Array(64 * 1024 * 1024);
    expect(refusal(withPart("xl/media/zeros.bin", zeros))).toMatch(/unpacks to 64 MB/);
  });

  it("may not swell beyond what its directory says", () => {
    const bytes = withPart("xl/media/zeros.bin", new Uint8Array(1024 * 1024)).slice();
    const view = new DataView(bytes.buffer);
    // Every size of a megabyte, in the directory and before the part itself, becomes ten bytes.
    for (let at = 0; at + 4 <= bytes.length; at++) {
      if (view.getUint32(at, true) === 1024 * 1024) view.setUint32(at, 10, true);
    }
    expect(refusal(bytes)).toMatch(/damaged/);
  });

  it("may not declare entities, let alone ones that multiply", () => {
    const laughs =
      '<!DOCTYPE a [<!ENTITY b "ha"><!ENTITY c "&b;&b;&b;&b;">]><workbook>&c;</workbook>';
    expect(refusal(withPart("xl/workbook.xml", text(laughs)))).toMatch(/document type/);
    const outside = '<!DOCTYPE a SYSTEM "file:///etc/passwd"><worksheet/>';
    expect(refusal(withPart("xl/worksheets/sheet1.xml", text(outside)))).toMatch(/document type/);
    expect(refusal(withPart("xl/workbook.xml", text("<workbook>&b;</workbook>")))).toMatch(
      /not well-formed/,
    );
  });

  it("may not nest without end", () => {
    const deep = "<a>".repeat(50_000) + "</a>".repeat(50_000);
    expect(refusal(withPart("xl/workbook.xml", text(deep)))).toMatch(/nested too deeply/);
  });
});

describe("a package", () => {
  it("is the same parts in the same order after it was written and read", () => {
    for (const name of files) {
      const { parts } = readPackage(bytesOf(name));
      const again = readPackage(writePackage({ parts })).parts;
      expect([...again.keys()]).toEqual([...parts.keys()]);
      const changed = [...parts].filter(([path, bytes]) => !isSame(bytes, again.get(path)));
      expect(changed).toEqual([]);
    }
  });

  it("finds what a part refers to, from wherever it stands", () => {
    const file = readPackage(bytesOf("xlsxwriter"));
    const [table] = relationshipsOf(file, "xl/worksheets/sheet1.xml");
    expect(table).toMatchObject({ type: "table", target: "xl/tables/table1.xml", external: false });
    expect(relationshipsOf(file, "xl/worksheets/sheet2.xml")).toEqual([]);
  });
});

describe("XML", () => {
  it("is read without its prefixes, with where each element stands", () => {
    const xml = '<x:a xmlns:x="urn:x"><x:b k="1 &amp; 2">t&#10;u</x:b></x:a>';
    const b = only(parseXml(xml, "part").children);
    expect(b).toMatchObject({ name: "b", attributes: { k: "1 & 2" }, text: "t\nu" });
    expect(xml.slice(b.start, b.end)).toBe('<x:b k="1 &amp; 2">t&#10;u</x:b>');
    expect(xml.slice(b.contentStart)).toMatch(/^t/);
  });

  it("knows where an element starts when another follows at once", () => {
    const xml = "<a><b><c>1</c></b></a>";
    const b = only(parseXml(xml, "part").children);
    const c = only(b.children);
    expect(xml.slice(b.start, b.end)).toBe("<b><c>1</c></b>");
    expect(xml.slice(c.start, c.end)).toBe("<c>1</c>");
  });

  it("keeps any text through writing and reading", () => {
    const odd = "a<b>&\"'\r\n\t é😀";
    expect(parseXml(writeXml("t", { k: odd }, []), "part").attributes.k).toBe(odd);
  });

  it("lets go of streamed elements once they are visited", () => {
    const seen: string[] = [];
    const root = parseXml("<s><r>1</r><r>2</r><e/></s>", "part", "r", ({ text: found }) =>
      seen.push(found),
    );
    expect(seen).toEqual(["1", "2"]);
    expect(root.children.map(({ name }) => name)).toEqual(["e"]);
  });

  it("streams elements inside one parent alone: a button's anchor has a row as well", () => {
    const seen: string[] = [];
    const xml = "<s><d><r>1</r></d><control><x:r>7</x:r></control></s>";
    const root = parseXml(xml, "part", "d/r", ({ text: found }) => seen.push(found));
    expect(seen).toEqual(["1"]);
    expect(root.children[1]?.children.map(({ text: found }) => found)).toEqual(["7"]);
  });
});
