import { tokensOf, type Token } from "./tokens";

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

/** How much may be made of names. */
export interface NameBudget {
  /** Pieces of a formula, all names in it written out. */
  readonly pieces: number;
  /** How often names may be made of names. */
  readonly depth: number;
}

/** What has been found of a workbook's names, by the name in lower case. */
export interface JudgedNames {
  /** Those that cannot be computed. */
  readonly unusable: ReadonlyMap<string, Unusable>;
  /** Of how many pieces each is, written out. */
  readonly sizes: ReadonlyMap<string, number>;
  readonly budget: NameBudget;
}

/**
 * Finds the names that cannot be computed: those that refer to themselves, by way of others or not, those that would
 * be too long with what they are made of written out, and all that are made of such names. Every name is gone through
 * once, however often others refer to it.
 */
export function judgeNames(names: readonly Definition[], budget: NameBudget): JudgedNames {
  const meanings = new Map(names.map(({ name, text }) => [name.toLowerCase(), { name, text }]));
  const unusable = new Map<string, Unusable>();
  const sizes = new Map<string, number>();
  const open: string[] = [];
  for (const key of meanings.keys()) sizeOf(key);
  return { unusable, sizes, budget };

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
      const other = nameIn(token);
      const isName = other !== undefined && meanings.has(other);
      size += isName && open.length < budget.depth ? sizeOf(other) : 1;
      const inOther = isName ? unusable.get(other) : undefined;
      if (inOther && !unusable.has(key)) unusable.set(key, inOther);
      if (isName && open.length >= budget.depth) size = Infinity;
    }
    open.pop();
    if (size > budget.pieces && !unusable.has(key)) {
      const reason = `the name ${name} is made of too many others`;
      unusable.set(key, { isCircle: false, reason });
    }
    sizes.set(key, size);
    return size;
  }
}

/** The first name in a formula that cannot be computed there, by itself or with those before it. */
export function unusableIn(
  formula: string,
  { unusable, sizes, budget }: JudgedNames,
): { readonly name: string; readonly why: Unusable } | undefined {
  if (sizes.size === 0) return undefined;
  let pieces = 0;
  for (const token of tokensOf(formula)) {
    const key = nameIn(token);
    const name = token.text;
    const why = key === undefined ? undefined : unusable.get(key);
    if (why) return { name, why };
    const size = key === undefined ? undefined : sizes.get(key);
    pieces += size ?? 1;
    if (size !== undefined && pieces > budget.pieces) {
      const reason = `the formula is too long with the name ${name} written out`;
      return { name, why: { isCircle: false, reason } };
    }
  }
  return undefined;
}

const nameIn = ({ kind, text }: Token): string | undefined =>
  kind === "name" || kind === "call" ? text.toLowerCase() : undefined;
