/** A typed word as it may have been meant: words that are known, and how far to trust the reading. */
export interface Meant {
  readonly words: readonly string[];
  readonly trust: number;
}

/** A beginning of a word, as while typing, and a word with a slip in it count for less than the word itself. */
const BEGUN = 0.85;
const SLIPPED = 0.75;

/** Shorter than this, a word has too many neighbours to be taken for one of them. */
const LONG_ENOUGH = 3;

/** Reads a word that was typed: as it stands if it is known, else as the beginning of known words, else as the nearest. */
export function readWord(typed: string, known: ReadonlySet<string>): Meant {
  if (known.has(typed)) return { words: [typed], trust: 1 };
  if (typed.length < LONG_ENOUGH) return { words: [], trust: 0 };
  const words = [...known];
  const begun = words.filter((word) => word.startsWith(typed));
  if (begun.length > 0) return { words: begun, trust: BEGUN };
  return { words: nearest(typed, words), trust: SLIPPED };
}

function nearest(typed: string, words: readonly string[]): string[] {
  let least = typed.length < 4 ? 0 : typed.length < 8 ? 1 : 2;
  let best: string[] = [];
  if (least === 0) return best;
  for (const word of words) {
    // The first letter is seldom the wrong one.
    if (word.length < LONG_ENOUGH || word[0] !== typed[0]) continue;
    const slips = slipsBetween(typed, word, least);
    if (slips < least) best = [];
    if (slips <= least) {
      least = slips;
      best.push(word);
    }
  }
  return best;
}

/**
 * How many slips of the finger lie between two words: a letter too many, too few, another one, or two
 * that changed places (Damerau and Levenshtein, no letter edited twice). More than `most` is `Infinity`.
 */
export function slipsBetween(from: string, to: string, most: number): number {
  if (Math.abs(from.length - to.length) > most) return Infinity;
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, at) => at);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const other = from[i - 1] === to[j - 1] ? 0 : 1;
      let slips = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + other);
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) {
        slips = Math.min(slips, beforeLast[j - 2]! + 1);
      }
      row.push(slips);
    }
    if (Math.min(...row) > most) return Infinity;
    beforeLast = last;
    last = row;
  }
  const slips = last[to.length]!;
  return slips <= most ? slips : Infinity;
}
