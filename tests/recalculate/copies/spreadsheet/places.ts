import type { Callable, Value } from "./values";

/*
 * Where the names of a formula are kept. A copy's formulas read names more often than anything else, and most names of a
 * LET stand for what the answer turns out not to need. So each name has its place before anything is worked out, and its
 * value is worked out when it is first read.
 */

/** The values of one call's names, and of the calls around it. */
export interface Frame {
  readonly values: (Value | undefined)[];
  readonly outer: Frame | undefined;
}

export type Code = (frame: Frame) => Value;

/** A name's place in its frame, and what its value comes from where no caller gives it. */
interface Place {
  readonly name: string;
  readonly at: number;
  readonly code?: Code;
}

/** The names known at one point of a formula, those of one LAMBDA or of the whole. */
export class Places {
  /** The name given last is the first. */
  private readonly known: Place[] = [];
  private count = 0;

  constructor(private readonly outer?: Places) {}

  /** Gives a name its place, before all others of that name. */
  add(name: string, code?: Code): void {
    const place = { name, at: this.count++ };
    this.known.unshift(code === undefined ? place : { ...place, code });
  }

  /** Forgets the names given last, as what they are for ends. */
  forget(count: number): void {
    this.known.splice(0, count);
  }

  /** What reads a name, if it is known here. */
  reader(name: string): Code | undefined {
    const place = this.known.find((each) => each.name === name);
    if (place) return readerOf(place);
    const outside = this.outer?.reader(name);
    return outside && ((frame) => outside(frame.outer!));
  }

  /** The function that this code is with the names in it given, of which the first are what it is called with. */
  callable(parameters: number, code: Code): Code {
    return (outer): Callable =>
      (...given) => {
        const values = Array<Value | undefined>(this.count);
        for (let at = 0; at < parameters; at++) values[at] = given[at] ?? null;
        return code({ values, outer });
      };
  }

  /** Works out what stands outside any LAMBDA. */
  run(code: Code): Value {
    return code({ values: Array<Value | undefined>(this.count), outer: undefined });
  }
}

function readerOf({ at, code }: Place): Code {
  if (code === undefined) return ({ values }) => values[at]!;
  return (frame) => {
    const known = frame.values[at];
    return known === undefined ? (frame.values[at] = code(frame)) : known;
  };
}
