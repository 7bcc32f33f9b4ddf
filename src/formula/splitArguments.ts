/** Splits at the commas that part arguments, not at those inside texts, brackets and braces. */
export function splitArguments(inside: string): string[] {
  const parts = inside.match(/"(?:[^"]|"")*"|[,(){}]|[^",(){}]+/g) ?? [];
  const found = [""];
  let depth = 0;
  for (const part of parts) {
    if (part === "(" || part === "{") depth++;
    if (part === ")" || part === "}") depth--;
    if (part === "," && depth === 0) found.push("");
    else found[found.length - 1] += part;
  }
  return found;
}
