/**
 * The three ways the hosts write the same function: Excel shows `SPARE.E1RM(` in its formula bar,
 * keeps `_xldudf_SPARE_E1RM(` in the file, and Google Sheets, which allows no dot, has `SPARE_E1RM(`.
 * No function's name holds a dot or an underscore, so one spelling can be read off another.
 */
export type Spelling = "excel" | "excel file" | "sheets";

const PREFIXES: Record<Spelling, string> = {
  excel: "SPARE.",
  "excel file": "_xldudf_SPARE_",
  sheets: "SPARE_",
};

/** A function's name by its id: `spell("E1RM", "sheets")` is `SPARE_E1RM`. */
export function spell(id: string, spelling: Spelling): string {
  return PREFIXES[spelling] + id;
}

/*
 * Either a stretch that is to be kept as it is (text in double quotes, a sheet's name in single
 * quotes, where a doubled quote stands for the quote itself), or one of our functions being called.
 * A name is ours only where no longer name ends in it: `MY_SPARE_E1RM(` is somebody else's.
 */
const KEPT_OR_CALL =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|(?<![\p{L}\p{N}_.\\])(?:_xldudf_SPARE_|SPARE[._])([A-Z][A-Z0-9]*)(?=\s*\()/giu;

/** Writes a formula's calls of our functions, however they are spelled, in the spelling `to`. */
export function respell(formula: string, to: Spelling): string {
  return formula.replace(KEPT_OR_CALL, (match: string, id: string | undefined) =>
    id === undefined ? match : spell(id.toUpperCase(), to),
  );
}

/** Whether a formula calls one of our functions, in whatever spelling. */
export function callsOurs(formula: string): boolean {
  if (!/spare/i.test(formula)) return false;
  KEPT_OR_CALL.lastIndex = 0;
  for (let match = KEPT_OR_CALL.exec(formula); match; match = KEPT_OR_CALL.exec(formula)) {
    if (match[1] !== undefined) return true;
  }
  return false;
}
