import { readWholeRows } from "../pairs";
import * as quantities from "../quantities";

/** Studies, a row each: those with an effect and a standard error, and whatever else is asked for. */
export const readStudies = <K extends string = never>(
  effects: unknown,
  standardErrors: unknown,
  others = {} as Record<K, { given: unknown; quantity: ReturnType<typeof quantities.spread> }>,
) =>
  readWholeRows<K | "effects" | "standardErrors">({
    ...others,
    effects: { given: effects ?? "", quantity: quantities.anyNumber("effects", "an effect") },
    standardErrors: { given: standardErrors ?? "", quantity: quantities.spread("standardErrors") },
  });
