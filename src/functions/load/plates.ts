import {
  firstCell,
  choice,
  invalid,
  isSingle,
  matchWord,
  numberInText,
  quoted,
  readCell,
  readTable,
  required,
  requiredIn,
  setting,
  toRange,
} from "../../cells";
import { barLoader, plateSets, type BarLoader, type Plate } from "../../core/load/plates";
import { lift } from "../answer";
import * as quantities from "../quantities";

/**
 * @customenum {string}
 */
export enum NearestChoice {
  /** Only the load itself; #N/A with the nearest loads if the plates do not make it. */
  exact = "exact",
  /** The plates of the nearest load below. */
  below = "below",
  /** The plates of the nearest load above. */
  above = "above",
}

/**
 * The plates for one side of the bar, largest first and as few as can be: "20 + 5 + 1.25". An empty bar is "bar only".
 *
 * @customfunction PLATES
 * @param load The load, bar included, above 0.
 * @param [bar] The bar's weight; 20 if omitted, 45 with the "lb" plates.
 * @param [plates] "kg" if omitted (25, 20, 15, 10, 5, 2.5, 1.25), "lb" (45, 35, 25, 10, 5, 2.5), or your own: a column of plates, and beside it how many pairs there are (blank for no limit).
 * @param [nearest] "exact" if omitted, or "below" or "above" for the nearest load that can be made.
 * @returns Text: the plates on each side, joined with " + ".
 * @errors #N/A naming the nearest loads below and above where the plates do not make the load.
 * @example =SPARE.PLATES(142.5)
 * @example =SPARE.PLATES(110, 20, {25,1;15,3;10,1})
 * @source Plates of 25 to 2.5 and bars of 20 and 15 kg: IWF Technical and Competition Rules; 1.25 and the pound plates: common practice, no source.
 */
export function plates(
  load: unknown[][],
  bar?: unknown[][],
  plates?: unknown[][],
  nearest?: NearestChoice[][],
): unknown[][] {
  const rack = readPlates(plates);
  const loaders = new Map<number, BarLoader>();
  const loaderFor = (bar: number) => {
    const known = loaders.get(bar) ?? barLoader({ bar, plates: rack.plates });
    loaders.set(bar, known);
    return known;
  };
  return lift(
    {
      load: required(load, quantities.load()),
      bar: setting(bar, quantities.above0("bar", "a bar's weight above 0"), rack.bar),
      nearest: choice(nearest, "nearest", NearestChoice, NearestChoice.exact),
    },
    ({ load, bar, nearest }) => loaderFor(bar)(load, nearest).join(" + ") || "bar only",
  );
}

const WEIGHT = quantities.above0("plate", "a plate's weight above 0");
const PAIRS = quantities.whole("pairs", "a whole number of pairs, or a blank for no limit", 1000);

/** The plates that were asked for, with the bar that goes with them. */
function readPlates(given: unknown): { readonly bar: number; readonly plates: readonly Plate[] } {
  const range = toRange(given);
  const value = readCell(firstCell(range));
  if (isSingle(range) && (value === null || value === 0)) return plateSets.kg;
  if (isSingle(range) && typeof value === "string" && numberInText(value) === undefined) {
    const name = matchWord(value, Object.keys(plateSets)) as keyof typeof plateSets | undefined;
    if (name !== undefined) return plateSets[name];
    throw invalid(`plates is ${quoted(value)}; expected "kg", "lb" or a column of plates`);
  }
  const rows = readTable(given, { name: "plates", columns: [WEIGHT, PAIRS], least: 1 });
  return {
    bar: plateSets.kg.bar,
    plates: rows.map((row) => {
      const [, pairs = null] = row.numbers;
      const weight = requiredIn(row, 0, WEIGHT);
      return { weight, ...(pairs !== null && { pairs }), row: row.row };
    }),
  };
}
