import { inspect } from "node:util";
import { CellError, type Content } from "../../src/cells";

/** Errors that a function may only pass on from a cell, with what in the arguments shows that one was there. */
const PASSED_ON: Readonly<Record<string, RegExp>> = {
  "#DIV/0!": /#DIV\/0!/,
  "#NUM!": /#NUM!|NaN|Infinity|Invalid Date/,
  "#NULL!": /#NULL!/,
};

/** What a computation that went wrong unseen leaves in a text. */
const DEBRIS = /NaN|Infinity|undefined|\[object |could not be computed/;

/** A message is a line or two, however long the text is that a cell holds. */
const LONGEST = 500;

/** What is wrong with a result, whatever the function; nothing where a host can show every cell of it. */
export function faultOf(result: unknown, args: readonly unknown[]): string | undefined {
  if (!Array.isArray(result) || result.length === 0) return "the result has no rows";
  const rows = result as unknown[];
  if (!rows.every(Array.isArray)) return "a row of the result is no row";
  const width = (rows[0] as unknown[]).length;
  if (width === 0) return "the result has no columns";
  if (rows.some((row) => (row as unknown[]).length !== width)) return "the rows differ in width";
  return (rows as Content[][])
    .flat()
    .map((content) => faultOfCell(content, args))
    .find((fault) => fault !== undefined);
}

function faultOfCell(content: Content, args: readonly unknown[]): string | undefined {
  if (content instanceof CellError) return faultOfError(content, args);
  if (typeof content === "number") {
    return Number.isFinite(content) && !Object.is(content, -0) ? undefined : `a cell is ${content}`;
  }
  if (typeof content !== "string") return `a cell is ${JSON.stringify(content)}`;
  return DEBRIS.test(content) ? `a cell reads ${content}` : undefined;
}

function faultOfError({ code, message }: CellError, args: readonly unknown[]): string | undefined {
  const shown = `${code} "${message}"`;
  if (message.trim() === "") return `${shown} has no message`;
  if (DEBRIS.test(message)) return `${shown} is no message for a coach`;
  if (message.length > LONGEST) return `${code} ${message.slice(0, 60)}… is longer than a line`;
  if (/\p{Cc}/u.test(message)) return `${code} ${JSON.stringify(message)} could drive a terminal`;
  if (message.endsWith(".")) return `${shown} ends in a full stop`;
  if (code === "#VALUE!" || code === "#N/A") return undefined;
  return PASSED_ON[code]?.test(asText(args)) ? undefined : `${shown} was in no argument`;
}

/** Arguments as text, with the blanks, dates and numbers that JSON does not show. */
export const asText = (args: readonly unknown[]): string =>
  inspect(args, { depth: 6, breakLength: Infinity, maxStringLength: 60 });
