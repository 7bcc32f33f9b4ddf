import type { Implementation, Implementations } from "./implementations";

/** What computes a function of the catalogue. */
export function implementationOf(implementations: Implementations, id: string): Implementation {
  const implementation = implementations[id];
  if (!implementation) throw new Error(`the catalogue lists ${id}, which nothing implements`);
  return implementation;
}
