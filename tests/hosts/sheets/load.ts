import { readFileSync } from "node:fs";
import { runInContext } from "node:vm";
import { bareRealm } from "../../bareRealm";
import { built } from "../../built";

/** The built script: its file, and its text. */
export const SCRIPT = built("sheets", "reps-to-spare.gs");
export const script = readFileSync(SCRIPT, "utf8");

/** A script that is open in Apps Script: its globals, and what of them the script itself added. */
export interface Loaded {
  readonly added: readonly string[];
  /** Evaluates an expression among the script's globals. */
  evaluate(expression: string): unknown;
}

/** Loads the script among the language's own built-ins and `services`, and nothing else. `before` runs first. */
export function load(services: Record<string, unknown> = {}, before = ""): Loaded {
  const context = bareRealm(services, before);
  const there = new Set(Object.getOwnPropertyNames(context));
  runInContext(script, context);
  return {
    added: Object.getOwnPropertyNames(context).filter((name) => !there.has(name)),
    evaluate: (expression) => runInContext(expression, context) as unknown,
  };
}
