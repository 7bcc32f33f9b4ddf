import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { spare } from "../cli/support";
import type { Report } from "../../src/cli/report";
import { workbookData } from "../../src/engine/data";
import { openWorkbook, type HeadlessWorkbook } from "../../src/engine/headless";
import { keepFormulas } from "../../src/engine/keptFormulas";
import { knownFunctions } from "../../src/engine/known";
import { implementations } from "../../src/functions/implementations";
import { lossesOf, readPackage, readWorkbook, UnreadableFile } from "../../src/xlsx";
import type { CellValue } from "../../src/xlsx/model";
import { checkSheet, checkValue, type HostileFile } from "./files/file";

/** The two ways a workbook is opened without Excel. */
export type Host = "command line" | "page";

/** What came of a file: what is wrong with that, or nothing. */
export type Attempt = (
  file: HostileFile,
  bytes: Uint8Array,
  folder: string,
) => Promise<string | undefined>;

/** One clear line: what is the matter, without a bare exception, a control character or pages of text. */
const clearLine = /^[^\p{Cc}\u2028\u2029]{8,600}$/u;
const bareException =
  /TypeError|RangeError|\[object|Maximum call stack|of undefined|of null|is not a function|string length|array length/i;

/** What is wrong with a refusal. */
function faultOfRefusal({ refused, opened }: HostileFile, line: string): string | undefined {
  if (opened) return `was refused: ${line.slice(0, 300)}`;
  if (!clearLine.test(line))
    return `the refusal is not one clear line: ${JSON.stringify(line).slice(0, 300)}`;
  if (bareException.test(line)) return `the refusal is a bare exception: ${line}`;
  return refused && !refused.test(line) ? `was refused for another reason: ${line}` : undefined;
}

/** What is wrong with what an opened file holds, as `read` tells it. */
function faultOfCells(
  { refused, hasCheck = true, cells = {} }: HostileFile,
  read: (sheet: string, address: string) => CellValue | undefined,
): string | undefined {
  if (refused) return "was not refused";
  const wanted: [string, CellValue][] = Object.entries(cells);
  if (hasCheck) wanted.push([`${checkSheet}!A1`, checkValue]);
  for (const [place, value] of wanted) {
    const [sheet, address] = place.split("!") as [string, string];
    const found = read(sheet, address);
    if (!isSame(found, value)) return `${place} is ${String(found)} and not ${String(value)}`;
  }
  return undefined;
}

const isSame = (found: CellValue | undefined, value: CellValue) =>
  typeof value === "number" && typeof found === "number"
    ? Math.abs(found - value) <= 1e-12 * Math.abs(value)
    : found === value;

/** Opens, computes and saves a file as `spare calc` does. */
async function onCommandLine(
  file: HostileFile,
  bytes: Uint8Array,
  folder: string,
): Promise<string | undefined> {
  const [input, output] = [join(folder, "book.xlsx"), join(folder, "out.xlsx")];
  writeFileSync(input, bytes);
  const { status, ...printed } = await spare("calc", input, "-o", output, "--json");
  if (status === 2) {
    if (printed.out !== "") return `was refused and printed ${printed.out.slice(0, 100)}`;
    const [, line] = /^spare: (.*)\n$/s.exec(printed.err) ?? [];
    return faultOfRefusal(file, line ?? printed.err);
  }
  if (printed.err !== "") return `was opened and complained: ${printed.err.slice(0, 300)}`;
  const { calculated, failed } = JSON.parse(printed.out) as Report;
  if (failed.some(({ message, error }) => !clearLine.test(message ?? `an error ${error}`))) {
    return `a message is not one clear line: ${JSON.stringify(failed).slice(0, 300)}`;
  }
  const saved = await readSaved(output);
  return faultOfCells(file, (sheet, address) => {
    const own = calculated.find((one) => one.sheet === sheet && one.cell === address);
    return own ? own.values[0]![0]! : saved(sheet, address);
  });
}

async function readSaved(path: string) {
  const { readFile } = await import("node:fs/promises");
  const { parseCell } = await import("../../src/formula/address");
  const { sheets } = readWorkbook(readPackage(new Uint8Array(await readFile(path))));
  return (name: string, address: string) => {
    const { row, column } = parseCell(address)!;
    return sheets.find((sheet) => sheet.name === name)?.cellAt(row, column)?.value ?? null;
  };
}

const metadata = { functions: Object.keys(implementations).map((id) => ({ id, parameters: [] })) };

/** Opens and computes a file as the page does, but for what it draws. */
async function inPage(file: HostileFile, bytes: Uint8Array): Promise<string | undefined> {
  let open: HeadlessWorkbook;
  try {
    const read = readPackage(bytes);
    const { data } = keepFormulas(workbookData(readWorkbook(read)), await knownFunctions());
    lossesOf(read);
    open = await openWorkbook(data, metadata, implementations);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    if (error instanceof UnreadableFile) return faultOfRefusal(file, reason);
    return `failed with ${error instanceof Error ? error.stack?.slice(0, 400) : String(error)}`;
  }
  try {
    return faultOfCells(file, (sheet, address) => {
      const found = open.read(sheet, address);
      return found === undefined ? null : found;
    });
  } finally {
    open.close();
  }
}

export const attempts: Readonly<Record<Host, Attempt>> = {
  "command line": onCommandLine,
  page: inPage,
};
