import { seededRandom } from "../../../src/core/statistics/seededRandom";
import { readPackage, writePackage } from "../../../src/xlsx";
import { oneOf, randomBelow, type Random } from "../random";
import { bookWith, type HostileFile } from "./file";

/** What stands in the place of a number or a word. */
const values = [
  "-1",
  "0",
  "1e308",
  "NaN",
  "99999999999",
  "A1:XFD1048576",
  "",
  "__proto__",
  "_x001B_[2J",
  "💥",
  "1.5",
];

/** A workbook of many kinds of things, of which something is changed at random in one part's XML. */
export function mutatedFiles(random: Random, count: number): HostileFile[] {
  const paths = [...readPackage(whole()).parts.keys()];
  return Array.from({ length: count }, (_, index) => {
    const seed = randomBelow(random, 2 ** 31);
    const path = oneOf(random, paths);
    return {
      name: `something changed ${index + 1}`,
      bytes: () => mutated(path, seededRandom(seed)),
      hasCheck: mayNotChange.test(path),
    };
  });
}

/** What is changed in these parts changes nothing that is checked; elsewhere it may be what is checked itself. */
const mayNotChange = /sheet2|styles|sharedStrings/;

function mutated(path: string, random: Random): Uint8Array {
  const file = readPackage(whole());
  let xml = new TextDecoder().decode(file.parts.get(path));
  for (let times = 1 + randomBelow(random, 4); times > 0; times--) xml = change(xml, random);
  file.parts.set(path, new TextEncoder().encode(xml));
  return writePackage(file);
}

/** One value, element or stretch of a text changed. */
function change(xml: string, random: Random): string {
  const pattern = oneOf(random, [/"[^"]*"/g, /<[^>]*>/g, />[^<]+</g]);
  const found = [...xml.matchAll(pattern)];
  if (found.length === 0) return xml;
  const { 0: text, index } = oneOf(random, found);
  const value = oneOf(random, values);
  const instead = pattern.source.startsWith('"')
    ? `"${value}"`
    : pattern.source.startsWith(">")
      ? `>${value}<`
      : oneOf(random, ["", text + text]);
  return xml.slice(0, index) + instead + xml.slice(index + text.length);
}

const whole = () =>
  bookWith({
    workbook: `<definedNames><definedName name="reps">Log!$B$2:$B$9</definedName></definedNames>`,
    before: `<sheetFormatPr defaultRowHeight="15"/><cols><col min="1" max="3" width="12" customWidth="1"/></cols>`,
    data:
      `<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c></row>` +
      Array.from(
        { length: 8 },
        (_, n) =>
          `<row r="${n + 2}"><c r="A${n + 2}" s="1"><v>${100 + n}</v></c><c r="B${n + 2}"><v>5</v></c><c r="C${n + 2}"><f>_xldudf_SPARE_E1RM(A${n + 2},B${n + 2})</f></c></row>`,
      ).join("") +
      `<row r="10"><c r="A10" cm="1"><f t="array" ref="A10:A17">_xldudf_SPARE_E1RM(A2:A9,reps)</f></c></row>` +
      `<row r="20"><c r="A20"><f>SUM(C2:C9)</f><v>5</v></c></row>`,
    after: `<mergeCells><mergeCell ref="D1:E2"/></mergeCells>`,
    parts: {
      "xl/sharedStrings.xml": [
        `<sst xmlns="x"><si><t>load</t></si><si><t>reps</t></si></sst>`,
        "application/xml",
      ],
      "xl/styles.xml": [
        `<styleSheet xmlns="x"><numFmts><numFmt numFmtId="164" formatCode="0.0"/></numFmts><fonts><font><sz val="11"/></font></fonts><cellXfs><xf/><xf numFmtId="164"/></cellXfs></styleSheet>`,
        "application/xml",
      ],
    },
    references: {
      "xl/workbook.xml": [
        ["sharedStrings", "sharedStrings.xml"],
        ["styles", "styles.xml"],
      ],
    },
  });
