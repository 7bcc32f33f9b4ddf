import { isFresh, statesOf } from "./freshness";
import { DEVELOPMENT_BASE } from "./paths";
import { productNames, type ProductName } from "./products";

/** Builds those of some products, or of all, whose sources have changed since they were built last. */
export async function buildIfStale(
  names: readonly ProductName[] = productNames,
  onBuild: (stale: readonly ProductName[]) => void = () => undefined,
): Promise<void> {
  const stale = await staleOf(names);
  if (stale.length === 0) return;
  onBuild(stale);
  const [{ bundle }, { configurations }] = await Promise.all([
    import("./bundle"),
    import("./configurations"),
  ]);
  await bundle(await configurations(DEVELOPMENT_BASE, stale));
}

/** Those of some products whose sources have changed since they were built last. */
export async function staleOf(names: readonly ProductName[]): Promise<readonly ProductName[]> {
  const states = await statesOf(names, DEVELOPMENT_BASE);
  return names.filter((name) => !isFresh(name, states.get(name)!));
}
