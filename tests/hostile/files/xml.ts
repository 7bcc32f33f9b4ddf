import { bookWith, logPath, type HostileFile } from "./file";

const main = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`;
const sheetOf = (inside: string) => `<worksheet ${main}>${inside}</worksheet>`;
const cellOf = (text: string) =>
  sheetOf(`<sheetData><row r="1"><c r="A1" t="str"><v>${text}</v></c></row></sheetData>`);

/** A workbook whose sheet "Log" is this text, or these bytes. */
function logOf(content: string | Uint8Array): Uint8Array {
  return bookWith({ parts: { [logPath]: [content, "application/xml"] } });
}

/** The text in an encoding of two bytes a character, most significant first or last. */
function utf16(text: string, littleEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(2 * text.length + 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, littleEndian);
  [...text].forEach((letter, at) => view.setUint16(2 * at + 2, letter.charCodeAt(0), littleEndian));
  return bytes;
}

const laughs = Array.from(
  { length: 12 },
  (_, n) => `<!ENTITY l${n + 1} "${`&l${n};`.repeat(10)}">`,
);

/** Sheets whose XML is none, or is more of it than anybody means. */
export function xmlFiles(): HostileFile[] {
  const refused = (name: string, content: string | Uint8Array, why: RegExp): HostileFile => ({
    name,
    bytes: () => logOf(content),
    refused: why,
  });
  const opened = (
    name: string,
    content: string | Uint8Array,
    cell: string | null = "load",
  ): HostileFile => ({
    name,
    bytes: () => logOf(content),
    opened: true,
    cells: { "Log!A1": cell },
  });
  const bytesOf = (text: string) => new TextEncoder().encode(text);
  return [
    refused("a sheet of nothing", "", /empty|well-formed/),
    refused("a sheet that is no XML", "load,reps\n100,5\n", /well-formed|empty/),
    refused("a sheet that is cut off", cellOf("load").slice(0, -30), /well-formed/),
    refused("a sheet with a document type", `<!DOCTYPE x>${cellOf("load")}`, /document type/),
    refused(
      "a sheet of a billion laughs",
      `<!DOCTYPE x [<!ENTITY l0 "ha">${laughs.join("")}]>${cellOf("&l12;")}`,
      /document type/,
    ),
    refused(
      "a sheet that reads a file of the computer",
      `<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/passwd">]>${cellOf("&f;")}`,
      /document type/,
    ),
    refused("an entity that nobody declared", cellOf("&load;"), /well-formed/),
    refused("a character that there is not", cellOf("&#x110000;"), /well-formed/),
    refused("a character that XML does not allow", cellOf("&#0;"), /well-formed/),
    refused("a control character", cellOf("\u0007"), /well-formed/),
    refused("elements 100,000 deep", sheetOf("<a>".repeat(1e5) + "</a>".repeat(1e5)), /too deeply/),
    refused(
      "elements 150 deep, in a cell",
      cellOf("<a>".repeat(150) + "</a>".repeat(150)),
      /too deeply/,
    ),
    refused("an attribute twice", sheetOf(`<sheetData a="1" a="2"/>`), /well-formed/),
    refused(
      "an undeclared encoding",
      bytesOf(`<?xml version="1.0"?>`).map((b) => b ^ 0x80),
      /well-formed|encoding|empty/,
    ),
    refused(
      "bytes that are no UTF-8",
      Uint8Array.from([...bytesOf("<a>"), 0xc3, 0x28]),
      /encoding/,
    ),
    refused(
      "an encoding that nobody knows",
      `<?xml version="1.0" encoding="x-spare"?>${cellOf("load")}`,
      /encoding/,
    ),
    refused("two roots", cellOf("load") + cellOf("load"), /well-formed/),
    opened("a byte order mark", `\ufeff${cellOf("load")}`),
    opened("two bytes a letter, the least first", utf16(cellOf("load"), true)),
    opened("two bytes a letter, the most first", utf16(cellOf("load"), false)),
    opened("text in CDATA", cellOf("<![CDATA[load]]>")),
    opened("a comment in a value", cellOf("lo<!-- a -->ad")),
    opened(
      "100,000 comments",
      sheetOf("<!--a-->".repeat(1e5) + cellOf("load").slice(sheetOf("").length - 12, -12)),
    ),
    opened(
      "a comment that looks like page setup, over and over",
      cellOf("load").replace("<sheetData", `<!--${"<pageSetup ".repeat(2e5)}--><sheetData`),
    ),
    opened(
      "a comment that looks like headers and margins",
      cellOf("load").replace(
        "<sheetData",
        `<!--${"<oddHeader <pageMargins ".repeat(1e5)}--><sheetData`,
      ),
    ),
    opened(
      "100,000 instructions",
      cellOf("load").replace("<sheetData", `${"<?a b?>".repeat(1e5)}<sheetData`),
    ),
    opened(
      "an element with 20,000 attributes",
      cellOf("load").replace(
        "<sheetData",
        `<sheetData${Array.from({ length: 2e4 }, (_, n) => ` a${n}="1"`).join("")}`,
      ),
    ),
    opened(
      "an attribute of 5 MB",
      cellOf("load").replace("<sheetData", `<sheetData a="${"x".repeat(5e6)}"`),
    ),
    opened(
      "attributes called as objects' own are",
      cellOf("load").replace("<c ", `<c __proto__="1" constructor="2" toString="3" `),
    ),
    opened(
      "elements called as objects' own are",
      cellOf("load").replace("<sheetData", "<__proto__/><constructor/><toString/><sheetData"),
    ),
    opened(
      "a prefix before every name",
      `<x:worksheet xmlns:x="a"><x:sheetData><x:row r="1"><x:c r="A1" t="str"><x:v>load</x:v></x:c></x:row></x:sheetData></x:worksheet>`,
    ),
    opened(
      "elements of somebody else's",
      cellOf("load").replace("<row", `<own xmlns="urn:x"><row/></own><row`),
    ),
    opened("a sheet that is something else", "<chartsheet/>", null),
    opened(
      "500,000 line feeds",
      cellOf("load").replace("<sheetData", `${"\n".repeat(5e5)}<sheetData`),
    ),
    { name: "a text of 5 MB", bytes: () => logOf(cellOf("x".repeat(5e6))), opened: true },
    {
      name: "100,000 empty rows",
      bytes: () => logOf(sheetOf(`<sheetData>${"<row/>".repeat(1e5)}</sheetData>`)),
      opened: true,
    },
  ];
}
