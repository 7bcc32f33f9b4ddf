import { buildIfStale } from "../../src/tools/dist";
import type { ProductName } from "../../src/tools/products";

/** Builds, before any test that reads them, those of some products that are older than their sources. */
export const build = (products: readonly ProductName[]): Promise<void> =>
  buildIfStale(products, (stale) => process.stderr.write(`Building ${stale.join(", ")} …\n`));
