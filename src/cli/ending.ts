import { extname } from "node:path";
import { attributeOf, childrenOf, findWorkbook, xmlAt, type Package } from "../xlsx/package";

/** What a file can hold, by the ending that its name has then. */
export type Kind = "xlsx" | "xlsm" | "xltx" | "xltm" | "csv" | "tsv";

/** The ending of a file's name in small letters, without its dot; "" where there is none. */
export const endingOf = (path: string): string => extname(path).slice(1).toLowerCase();

/** Whether an ending promises values parted by commas, or by tabs. */
export const isText = (ending: string): ending is "csv" | "tsv" =>
  ending === "csv" || ending === "tsv";

/** Which kind of workbook a file is, as it says itself: with macros, to start others from, both or neither. */
export function kindOf(file: Package): Kind {
  const main = `/${findWorkbook(file)}`.toLowerCase();
  const types = xmlAt(file, "[Content_Types].xml");
  const said = childrenOf(types, "Override").find(
    (element) => attributeOf(element, "PartName")?.toLowerCase() === main,
  );
  const type = (said && attributeOf(said, "ContentType")) ?? "";
  const macros = /macroEnabled/i.test(type);
  return /template/i.test(type) ? (macros ? "xltm" : "xltx") : macros ? "xlsm" : "xlsx";
}

/** Why a name does not fit what is to go under it; nothing where it does, or has no ending to go by. */
export function misfit(path: string, kind: Kind): string | undefined {
  const ending = endingOf(path);
  if (ending === "" || ending === kind) return undefined;
  return `its name ends in .${ending}, and what it holds is ${NAMES[kind]}`;
}

const NAMES: Readonly<Record<Kind, string>> = {
  xlsx: "an .xlsx workbook",
  xlsm: "an .xlsm workbook, which has macros",
  xltx: "an .xltx workbook to start from",
  xltm: "an .xltm workbook to start from, which has macros",
  csv: "values parted by commas (.csv)",
  tsv: "values parted by tabs (.tsv)",
};
