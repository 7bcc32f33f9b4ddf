import { join } from "node:path";
import type { Compiler, Configuration } from "webpack";
import { filesUnder, markFresh, stateOf, statesOf } from "./freshness";
import { emitLicences } from "./notices";
import { CACHE, DEVELOPMENT_BASE } from "./paths";
import { productNames, products, type Product, type ProductName } from "./products";

/** How webpack makes some products, or all that goes into dist/, to be hosted at `base`. */
export async function configurations(
  base = DEVELOPMENT_BASE,
  names: readonly ProductName[] = productNames,
): Promise<Configuration[]> {
  const states = await statesOf(names, base);
  return Promise.all(
    names.map(async (name) => {
      const product: Product = products[name];
      const configuration = await product.configure(base);
      return {
        ...configuration,
        cache: cacheOf(name, base),
        plugins: [
          ...(configuration.plugins ?? []),
          ...(product.carriesNotices === true ? [] : [emitLicences(name)]),
          new MarkFresh(name, states.get(name)!),
        ],
      };
    }),
  );
}

/** What webpack made of each module the last time, unless how it is made has changed. */
const cacheOf = (name: ProductName, base: string): Configuration["cache"] => ({
  type: "filesystem",
  name,
  cacheDirectory: join(CACHE, "webpack"),
  version: stateOf(["package-lock.json", ...filesUnder("src/tools")], base),
});

class MarkFresh {
  constructor(
    private readonly name: ProductName,
    private readonly state: string,
  ) {}

  apply(compiler: Compiler): void {
    compiler.hooks.done.tap("MarkFresh", (stats) => {
      if (!stats.hasErrors()) markFresh(this.name, this.state);
    });
  }
}
