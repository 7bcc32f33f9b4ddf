/** A formula taken apart: the function's id, and its arguments as a host would pass them. */
export interface Formula {
  readonly id: string;
  readonly args: readonly unknown[];
}

/** Reads a formula of one function on literals; undefined where it holds a reference, a sum or another function. */
export function readFormula(formula: string): Formula | undefined {
  const [, id, inside] = /^=SPARE\.([A-Z0-9]+)\((.*)\)$/.exec(formula) ?? [];
  if (id === undefined || inside === undefined) return undefined;
  const args = inside.trim() === "" ? [] : splitOutside(inside, ",").map(readArgument);
  return args.includes(unreadable) ? undefined : { id, args };
}

const unreadable = Symbol("unreadable");

function readArgument(text: string): unknown {
  const trimmed = text.trim();
  if (trimmed === "") return null;
  if (!trimmed.startsWith("{")) return readLiteral(trimmed);
  const rows = splitOutside(trimmed.slice(1, -1), ";").map((row) =>
    splitOutside(row, ",").map((cell) => readLiteral(cell.trim())),
  );
  return rows.flat().includes(unreadable) ? unreadable : rows;
}

function readLiteral(text: string): unknown {
  if (/^"[^"]*"$/.test(text)) return text.slice(1, -1);
  const [, numerator, denominator = "1"] = /^([-\d.]+)(?:\/([\d.]+))?$/.exec(text) ?? [];
  return numerator === undefined ? unreadable : Number(numerator) / Number(denominator);
}

/** Splits at a separator, except inside quotes and braces. */
function splitOutside(text: string, separator: string): string[] {
  const parts = [""];
  let quoted = false;
  let depth = 0;
  for (const character of text) {
    if (character === '"') quoted = !quoted;
    if (!quoted && character === "{") depth++;
    if (!quoted && character === "}") depth--;
    if (character === separator && !quoted && depth === 0) parts.push("");
    else parts[parts.length - 1] += character;
  }
  return parts;
}
