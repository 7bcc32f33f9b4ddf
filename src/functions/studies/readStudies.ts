import type { LabelInput } from "../../cells";
import { blankUnlessGiven } from "../blankUnlessGiven";
import { readWholeRows } from "../pairs";
import * as quantities from "../quantities";

type NumberInputs<K extends string> = Readonly<
  Record<K, { given: unknown; quantity: ReturnType<typeof quantities.spread> }>
>;

/** Studies, a row each: those with an effect and a standard error, and whatever else is asked for. */
export const readStudies = <K extends string = never, L extends string = never>(
  effects: unknown,
  standardErrors: unknown,
  others = {} as NumberInputs<K>,
  labels = {} as Readonly<Record<L, LabelInput>>,
) =>
  readWholeRows<K | "effects" | "standardErrors", L>(
    {
      ...others,
      effects: {
        given: blankUnlessGiven(effects),
        quantity: quantities.anyNumber("effects", "an effect"),
      },
      standardErrors: {
        given: blankUnlessGiven(standardErrors),
        quantity: quantities.spread("standardErrors"),
      },
    },
    labels,
  );
