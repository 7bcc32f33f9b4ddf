import type { Area } from "../../formula/address";
import type { CellValue } from "../../xlsx/model";

/** What a formula is made of, as far as it can be worked out without the spreadsheet's engine. */
export type Expression =
  | { readonly kind: "value"; readonly value: number | string | boolean }
  | CellReference
  | OurCall
  | { readonly kind: "negative" | "percent"; readonly of: Expression }
  | {
      readonly kind: "operator";
      readonly operator: Operator;
      readonly left: Expression;
      readonly right: Expression;
    }
  | WrapperCall;

export interface CellReference {
  readonly kind: "cell";
  /** The sheet's name; nothing where no sheet is called so. */
  readonly sheet: string | undefined;
  readonly row: number;
  readonly column: number;
  /** Whether it moves along where its formula is filled down. */
  readonly moves: boolean;
}

/** A call of one of our functions. */
export interface OurCall {
  readonly kind: "ours";
  readonly id: string;
  readonly given: readonly DirectArgument[];
}

/** A call of one of the spreadsheet's functions that are written around ours. */
export interface WrapperCall {
  readonly kind: "wrapper";
  readonly name: WrapperName;
  readonly given: readonly Expression[];
}

/** An argument of ours. */
export type DirectArgument =
  | { readonly kind: "omitted" }
  | { readonly kind: "value"; readonly value: CellValue }
  | { readonly kind: "array"; readonly rows: readonly (readonly CellValue[])[] }
  | { readonly kind: "computed"; readonly expression: Expression }
  | RangeArgument;

export interface RangeArgument extends DirectRead {
  readonly kind: "range";
  /** Whether these are whole columns or rows, which end where the sheet's contents do. */
  readonly whole?: "columns" | "rows";
  /** Whether each cell is made a text, `D2:D9&""`. */
  readonly asText: boolean;
}

/** Cells that an expression reads. */
export interface DirectRead {
  /** The sheet's name; nothing where no sheet is called so. */
  readonly sheet: string | undefined;
  readonly area: Area;
  readonly moves: Moves;
}

/**
 * Which rows of a reference move along where its formula is filled down: of `A2:A9` both, of `A$2:A2` the last, of `A$2:A$9`
 * none. Those of `A2:A$9` change places on the way.
 */
export type Moves = "both" | "last" | "none" | "in places";

/** A formula that needs no engine, with all the cells that it may read. */
export interface DirectFormula {
  readonly expression: Expression;
  readonly reads: readonly DirectRead[];
}

export const COMPARISONS = ["=", "<>", "<", "<=", ">", ">="] as const;
export type Comparison = (typeof COMPARISONS)[number];
export type Arithmetic = "+" | "-" | "*" | "/" | "^";
export type Operator = Comparison | Arithmetic | "&";

/** The functions that coaches write around ours, each with the least and the most arguments it takes here. */
export const WRAPPERS = {
  IF: [2, 3],
  IFERROR: [2, 2],
  IFNA: [2, 2],
  AND: [1, 255],
  OR: [1, 255],
  NOT: [1, 1],
  ISBLANK: [1, 1],
  ISNUMBER: [1, 1],
  ISTEXT: [1, 1],
  ISERROR: [1, 1],
  ISNA: [1, 1],
  ROUND: [2, 2],
  MROUND: [2, 2],
  INDEX: [2, 3],
} as const satisfies Readonly<Record<string, readonly [number, number]>>;
export type WrapperName = keyof typeof WRAPPERS;

/** All calls of ours in an expression, those in arguments too. */
export function callsOf(expression: Expression): OurCall[] {
  switch (expression.kind) {
    case "value":
    case "cell":
      return [];
    case "ours": {
      const inside = expression.given.flatMap((argument) =>
        argument.kind === "computed" ? callsOf(argument.expression) : [],
      );
      return [expression, ...inside];
    }
    case "negative":
    case "percent":
      return callsOf(expression.of);
    case "operator":
      return [...callsOf(expression.left), ...callsOf(expression.right)];
    case "wrapper":
      return expression.given.flatMap(callsOf);
  }
}
