import { tokensOf } from "./tokens";

/** A name with what it stands for. */
export interface Definition {
  readonly name: string;
  readonly text: string;
}

/** Why a name stands for nothing that could be computed. */
export interface Unusable {
  readonly isCircle: boolean;
  readonly reason: string;
}

/** More pieces than this no formula of a person's has, all names in it written out. */
const MOST_PIECES = 20_000;
/** Nor are names made of names so many times over. */
const MOST_DEEP = 200;

/**
 * The names, in lower case, that cannot be computed: those that refer to themselves, by way of others or not, those
 * that would be too long with what they are made of written out, and all that are made of such names. Every name is
 * gone through once, however often others refer to it.
 */
export function unusableNames(names: readonly Definition[]): ReadonlyMap<string, Unusable> {
  const meanings = new Map(names.map(({ name, text }) => [name.toLowerCase(), { name, text }]));
  const unusable = new Map<string, Unusable>();
  const sizes = new Map<string, number>();
  const open: string[] = [];
  for (const key of meanings.keys()) sizeOf(key);
  return unusable;

  /** How many pieces a name has, written out. */
  function sizeOf(key: string): number {
    const known = sizes.get(key);
    if (known !== undefined) return known;
    const { name, text } = meanings.get(key)!;
    if (open.includes(key)) {
      for (const each of open.slice(open.indexOf(key))) {
        const own = meanings.get(each)!.name;
        unusable.set(each, { isCircle: true, reason: `the name ${own} refers to itself` });
      }
      return 0;
    }
    open.push(key);
    let size = 0;
    for (const token of tokensOf(text)) {
      const other = token.text.toLowerCase();
      const isName = (token.kind === "name" || token.kind === "call") && meanings.has(other);
      size += isName && open.length < MOST_DEEP ? sizeOf(other) : 1;
      const inOther = isName ? unusable.get(other) : undefined;
      if (inOther && !unusable.has(key)) unusable.set(key, inOther);
      if (isName && open.length >= MOST_DEEP) size = Infinity;
    }
    open.pop();
    if (size > MOST_PIECES && !unusable.has(key)) {
      const reason = `the name ${name} is made of too many others`;
      unusable.set(key, { isCircle: false, reason });
    }
    sizes.set(key, size);
    return size;
  }
}

/** The first name in a formula that cannot be computed. */
export function unusableIn(
  formula: string,
  unusable: ReadonlyMap<string, Unusable>,
): { readonly name: string; readonly why: Unusable } | undefined {
  if (unusable.size === 0) return undefined;
  for (const { kind, text } of tokensOf(formula)) {
    const why = kind === "name" || kind === "call" ? unusable.get(text.toLowerCase()) : undefined;
    if (why) return { name: text, why };
  }
  return undefined;
}
