import { cellAddress, quoteSheet } from "../../formula/address";
import { dayOfIso } from "../days";
import type { CellValue } from "../model";
import { isError } from "../model";
import type { XmlElement } from "../package";
import { childOf, UnreadableFile } from "../package";
import { fromFileText, textOfItem } from "../strings";

/** Reads what a cell holds; its type says how. */
export type ValueReader = (cell: XmlElement, row: number, column: number) => CellValue;

const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/**
 * The reader of one sheet's values. A value that cannot be what its cell says it is means that the file
 * is damaged: taken for a blank it would change what is computed from it without a word.
 */
export function valueReader(
  sheet: string,
  strings: readonly string[],
  from1904: boolean,
): ValueReader {
  return (cell, row, column) => {
    const type = cell.attributes.t ?? "n";
    const written = childOf(cell, "v")?.text;
    if (type === "inlineStr") {
      const inline = childOf(cell, "is");
      return inline ? textOfItem(inline) : (written ?? null);
    }
    if (written === undefined) return null;
    if (type === "str") return fromFileText(written);
    // Blanks around a value of the other types do not count.
    const plain = written.trim();
    if (plain === "") return null;
    switch (type) {
      case "n":
        return numberIn(plain) ?? damaged("a number");
      case "s":
        return (
          (/^\d+$/.test(plain) ? strings[Number(plain)] : undefined) ?? damaged("a shared text")
        );
      case "b":
        return TRUTHS[plain] ?? damaged("a truth value");
      case "d":
        return dayOfIso(plain, from1904) ?? damaged("a date");
      case "e":
        // Some programs write errors of their own, such as "Err:502".
        return isError(plain) ? plain : "#N/A";
      default:
        return damaged(`the unknown type "${type}"`);
    }

    function damaged(what: string): never {
      const place = `${quoteSheet(sheet)}!${cellAddress(row, column)}`;
      throw new UnreadableFile(`the file is damaged: ${place} holds "${written}" as ${what}`);
    }
  };
}

function numberIn(text: string): number | undefined {
  const number = DECIMAL.test(text) ? Number(text) : NaN;
  return Number.isFinite(number) ? number : undefined;
}

const TRUTHS: Readonly<Record<string, boolean>> = {
  "1": true,
  true: true,
  "0": false,
  false: false,
};
