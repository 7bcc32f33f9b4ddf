import type { Name } from "./names";
import { tokensOf } from "./tokens";

/**
 * Names that stand, by themselves or by way of others, for themselves: no formula with them has a
 * result. A function of a workbook's own that calls itself is none of them.
 */
export function circularNames(names: readonly Name[]): string[] {
  const named = new Map<string, Set<string>>();
  const keys = new Set(names.map(({ name }) => name.toLowerCase()));
  for (const { name, text } of names) {
    const reads = named.get(name.toLowerCase()) ?? new Set<string>();
    named.set(name.toLowerCase(), reads);
    for (const token of tokensOf(text)) {
      const key = token.text.toLowerCase();
      if (token.kind === "name" && keys.has(key)) reads.add(key);
    }
  }
  const circular = [...named.keys()].filter((key) => reaches(key, key));
  return [
    ...new Set(
      names.filter(({ name }) => circular.includes(name.toLowerCase())).map(({ name }) => name),
    ),
  ];

  function reaches(from: string, to: string): boolean {
    const seen = new Set<string>();
    const waiting = [from];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      for (const read of named.get(next) ?? []) {
        if (read === to) return true;
        if (!seen.has(read)) waiting.push(read);
        seen.add(read);
      }
    }
    return false;
  }
}
