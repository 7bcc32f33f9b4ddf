import { callsOurs } from "../formula/spelling";
import { tokensOf } from "../formula/tokens";
import type { Book } from "./book";

/** Whether a formula calls one of our functions, by itself or by a name. */
export function findNeed({
  names,
}: Pick<Book, "names">): (formula: { readonly text: string }) => boolean {
  const ours = new Set<string>();
  const needs = (text: string) =>
    callsOurs(text) ||
    (ours.size > 0 &&
      tokensOf(text).some(
        ({ kind, text }) => (kind === "name" || kind === "call") && ours.has(text.toLowerCase()),
      ));
  // A name may be made of others, so this goes on until no more are found.
  for (let before = -1; before !== ours.size;) {
    before = ours.size;
    for (const { name, text } of names) if (needs(text)) ours.add(name.toLowerCase());
  }
  return ({ text }) => needs(text);
}
