import type { XmlElement } from "./package";
import { childrenOf, childOf } from "./package";

/*
 * Text in a workbook writes what XML cannot hold as `_x0007_`, and text that looks like that with
 * its first line escaped, `_x005F_x0007_`.
 */

/** Text as a person reads it, of text as a file keeps it. */
export function fromFileText(text: string): string {
  if (!text.includes("_x")) return text;
  return text.replace(/_x([0-9a-f]{4})_/gi, (_, digits: string) =>
    String.fromCharCode(parseInt(digits, 16)),
  );
}

/** Text as a file keeps it, of text as a person reads it. */
export function toFileText(text: string): string {
  return text
    .replace(/_(?=x[0-9a-f]{4}_)/gi, "_x005F_")
    .replace(/\r\n?/g, "\n")
    .replace(UNWRITABLE, (character) => {
      const digits = character.charCodeAt(0).toString(16).toUpperCase();
      return `_x${digits.padStart(4, "0")}_`;
    });
}

const UNWRITABLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/** The text of a string item, whose runs may each look different; readings beside it are left out. */
export function textOfItem(item: XmlElement | undefined): string {
  const plain = childOf(item, "t");
  const runs = childrenOf(item, "r").map((run) => childOf(run, "t")?.text ?? "");
  return fromFileText((plain?.text ?? "") + runs.join(""));
}
