import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { hasClosedForm } from "../../src/recalculate/copies/rewriteFormula";
import { ROOT } from "../../src/tools/paths";
import { functions } from "../functions/catalogue";

test("docs/command-line.md lists the functions that portable copies calculate with, in the coach's order", () => {
  const page = readFileSync(join(ROOT, "docs", "command-line.md"), "utf8");
  const [list = ""] = /(?:^> [A-Z0-9, ]+\n)+/m.exec(page) ?? [];
  expect(list.match(/[A-Z][A-Z0-9]+/g)).toEqual(
    functions.map(({ id }) => id).filter((id) => hasClosedForm(id)),
  );
});
