import { callsOurs } from "../../formula/spelling";
import { tokensOf } from "../../formula/tokens";
import type { Book } from "../book";
import { findNeed } from "../need";
import { oursIn, type Rewritten } from "./rewriteFormula";

/** A formula of a copy, as a file keeps it; or that it is lost, and why. */
export type Verdict = Rewritten | { readonly lost: string };

/** What becomes of the formulas of a workbook in a copy, wherever they stand. */
export interface Judge {
  /** Nothing for a formula that has no need of ours. */
  verdictOn(formula: string): Verdict | undefined;
  /** The functions of ours that a formula calls, by itself or by names. */
  functionsIn(formula: string): string[];
  /** The names, in lower case, that a formula refers to, by itself or by others. */
  namesIn(formula: string): ReadonlySet<string>;
}

/** Rewrites a formula that calls our functions, or says why it cannot. */
export type Rewrite = (formula: string) => Verdict;

export function judgeOf(book: Book, rewrite: Rewrite): Judge {
  const needsOurs = findNeed(book);
  const meanings = new Map<string, string[]>();
  for (const { name, text } of book.names) {
    const key = name.toLowerCase();
    meanings.set(key, [...(meanings.get(key) ?? []), text]);
  }
  const lostNames = new Map<string, string>();
  // A name may be made of others, so this goes on until no more are lost.
  for (let before = -1; before !== lostNames.size;) {
    before = lostNames.size;
    for (const { name, text } of book.names) {
      const verdict = verdictOn(text);
      if (verdict && "lost" in verdict) lostNames.set(name.toLowerCase(), name);
    }
  }
  return { verdictOn, functionsIn, namesIn };

  function verdictOn(text: string): Verdict | undefined {
    if (!needsOurs({ text })) return undefined;
    for (const name of namesAt(text)) {
      const lost = lostNames.get(name);
      if (lost !== undefined)
        return { lost: `it uses the name ${lost}, which the copy has no more` };
    }
    return callsOurs(text) ? rewrite(text) : { text, calls: new Set() };
  }

  function namesAt(text: string): string[] {
    if (meanings.size === 0) return [];
    return tokensOf(text)
      .filter(({ kind }) => kind === "name" || kind === "call")
      .map((token) => token.text.toLowerCase())
      .filter((name) => meanings.has(name));
  }

  function namesIn(text: string): ReadonlySet<string> {
    const found = new Set<string>();
    const visit = (formula: string) => {
      for (const name of namesAt(formula)) {
        if (found.has(name)) continue;
        found.add(name);
        meanings.get(name)!.forEach(visit);
      }
    };
    visit(text);
    return found;
  }

  function functionsIn(text: string): string[] {
    const formulas = [text, ...[...namesIn(text)].flatMap((name) => meanings.get(name)!)];
    return [...new Set(formulas.flatMap((formula) => oursIn(tokensOf(formula))))];
  }
}
