/** Builds those of the products that are named whose sources have changed: `tsx src/tools/freshen.ts excel pane`. */
import { buildIfStale } from "./dist";
import { productNames } from "./products";

const asked = process.argv.slice(2);
await buildIfStale(productNames.filter((name) => asked.includes(name)));
