import { zipSync } from "fflate";
import { randomBelow, type Random } from "../random";
import { bookWith, type HostileFile } from "./file";

/** Archives that are damaged, or that say of themselves what is not so. */
export function zipFiles(random: Random): HostileFile[] {
  const whole = bookWith({ data: `<row r="1"><c r="A1"><v>5</v></c></row>` });
  const end = whole.length - 22;
  const directory = new DataView(whole.buffer, whole.byteOffset).getUint32(end + 16, true);

  const changed = (change: (bytes: Uint8Array, view: DataView) => void) => () => {
    const bytes = whole.slice();
    change(bytes, new DataView(bytes.buffer));
    return bytes;
  };
  const withPart = (path: string) => () => bookWith({ parts: { [path]: ["x", "text/plain"] } });

  return [
    { name: "nothing at all", bytes: () => new Uint8Array(), refused: /empty/ },
    { name: "two bytes of an archive", bytes: () => whole.slice(0, 2), refused: /damaged/ },
    { name: "an archive of nothing", bytes: () => zipSync({}), refused: /damaged|not an/ },
    { name: "random bytes behind an archive's first two", bytes: noise, refused: /damaged/ },
    ...Array.from({ length: 12 }, (_, index): HostileFile => {
      const length = 3 + randomBelow(random, whole.length - 3);
      return { name: `cut ${index + 1}`, bytes: () => whole.slice(0, length), refused: /damaged/ };
    }),
    ...Array.from({ length: 24 }, (_, index): HostileFile => {
      const at = randomBelow(random, whole.length);
      const mask = 1 + randomBelow(random, 255);
      return { name: `byte changed ${index + 1}`, bytes: changed((bytes) => (bytes[at]! ^= mask)) };
    }),
    {
      name: "something in front of the archive",
      bytes: () => Uint8Array.from([...new TextEncoder().encode("PK, a note\n"), ...whole]),
    },
    {
      name: "something behind the archive",
      bytes: () => Uint8Array.from([...whole, ...new Uint8Array(5000)]),
    },
    { name: "a part twice", bytes: twice, refused: /twice/ },
    {
      name: "fewer parts than it says",
      bytes: changed((_, view) => view.setUint16(end + 10, 200, true)),
      refused: /damaged/,
    },
    {
      name: "as many parts as can be said",
      bytes: changed((_, view) => view.setUint16(end + 10, 0xffff, true)),
      refused: /parts/,
    },
    {
      name: "a directory that lies outside",
      bytes: changed((_, view) => view.setUint32(end + 16, 0xfffffff0, true)),
      refused: /damaged/,
    },
    {
      name: "a part that lies outside",
      bytes: changed((_, view) => view.setUint32(directory + 42, 0xfffffff0, true)),
      refused: /damaged/,
    },
    {
      name: "a part of 4 GB",
      bytes: changed((_, view) => view.setUint32(directory + 24, 0xfffffffe, true)),
      refused: /unpacks to 4096 MB/,
    },
    {
      name: "a part whose size is said in 64 bits, elsewhere",
      bytes: changed((_, view) => view.setUint32(directory + 24, 0xffffffff, true)),
      refused: /damaged/,
    },
    {
      name: "a part that is larger than it says",
      bytes: changed((_, view) => view.setUint32(directory + 24, 3, true)),
      refused: /damaged/,
    },
    {
      name: "a part packed in an unknown way",
      bytes: changed((_, view) => view.setUint16(directory + 10, 99, true)),
      refused: /packed/,
    },
    {
      name: "a password",
      bytes: changed((_, view) => view.setUint16(directory + 8, 1, true)),
      refused: /password/,
    },
    {
      name: "64 MB of zeros",
      bytes: () => zipSync({ "xl/a.xml": new Uint8Array(64 << 20) }),
      refused: /64 MB/,
    },
    {
      name: "an archive in an archive",
      bytes: () => zipSync({ "a.xlsx": whole }),
      refused: /not an \.xlsx/,
    },
    { name: "2,000 parts that nobody asks for", bytes: manyParts, opened: true },
    ...[
      "__proto__",
      "constructor",
      "xl/toString",
      "hasOwnProperty",
      "a b/ü.xml",
      "x".repeat(3000),
    ].map((path): HostileFile => ({
      name: `a part called ${path.slice(0, 20)}`,
      bytes: withPart(path),
      opened: true,
    })),
    ...["../evil.xml", "/etc/passwd", "C:\\evil.xml", "a/../../b", "a\0b", "\\\\host\\share"].map(
      (path): HostileFile => ({
        name: `a part called ${JSON.stringify(path)}`,
        bytes: withPart(path),
        refused: /outside itself/,
      }),
    ),
    {
      name: "a part outside whose name drives a terminal",
      bytes: withPart("../\u001b[2J\u001b]0;owned\u0007.xml"),
      refused: /outside itself/,
    },
  ];

  function noise(): Uint8Array {
    const bytes = Uint8Array.from({ length: 4000 }, () => randomBelow(random, 256));
    bytes.set([0x50, 0x4b]);
    return bytes;
  }

  /** The name of one part written over that of another, in both places. */
  function twice(): Uint8Array {
    const text = Buffer.from(whole).toString("latin1");
    return new Uint8Array(
      Buffer.from(text.replaceAll("worksheets/sheet1.xml", "worksheets/sheet2.xml"), "latin1"),
    );
  }

  function manyParts(): Uint8Array {
    const parts = Array.from({ length: 2000 }, (_, index) => [
      `xl/x${index}.bin`,
      ["x", "text/plain"] as const,
    ]);
    return bookWith({
      parts: Object.fromEntries(parts) as Record<string, readonly [string, string]>,
    });
  }
}
