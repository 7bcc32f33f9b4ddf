import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { ROOT } from "../../../src/tools/paths";
import { families } from "./registry";
import { rowsIn, rowsOf } from "./tables";

const document = readFileSync(join(ROOT, "docs", "accuracy.md"), "utf8");

it.each(families)(
  "what $name promises stands in docs/accuracy.md, row for row (npm run coverage writes it)",
  (family) => {
    expect(rowsIn(document, family)).toEqual(rowsOf(family));
  },
);
