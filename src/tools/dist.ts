import { isFresh, statesOf } from "./freshness";
import { DEVELOPMENT_BASE } from "./paths";
import { productNames, type ProductName } from "./products";

/** Builds those of some products, or of all, whose sources have changed since they were built last. */
export async function buildIfStale(
  names: readonly ProductName[] = productNames,
  onBuild: (stale: readonly ProductName[]) => void = () => undefined,
): Promise<void> {
  const states = await statesOf(names, DEVELOPMENT_BASE);
  const stale = names.filter((name) => !isFresh(name, states.get(name)!));
  if (stale.length === 0) return;
  onBuild(stale);
  const [{ bundle }, { configurations }] = await Promise.all([
    import("./bundle"),
    import("./configurations"),
  ]);
  await bundle(await configurations(DEVELOPMENT_BASE, stale));
}
