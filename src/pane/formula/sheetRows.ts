import type { Argument } from "./argument";
import { areaOf } from "./reference";

/**
 * A function's message with the sheet's own rows: of B2:B25 a function can only say "row 19", which is row 20 of the
 * sheet. Where the columns start in different rows, or only some of their rows are read, it stays as it was said.
 */
export function inSheetRows(message: string, args: readonly Argument[]): string {
  const columns = args.flatMap((argument) => (argument.kind === "cells" ? [argument] : []));
  const firsts = new Set(
    columns.map(({ reference, only }) => (only ? undefined : areaOf(reference)?.startRow)),
  );
  const [first] = firsts;
  if (firsts.size !== 1 || first === undefined || first === 0) return message;
  return message.replaceAll(/\brow (\d+)\b(?! of)/g, (_all, row: string) => {
    return `row ${Number(row) + first} of the sheet`;
  });
}
