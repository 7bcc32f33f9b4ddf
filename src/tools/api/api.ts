/** Writes docs/api/ from the types of the package: `npm run api`. */
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { declarationsOf } from "../library/declarations";
import { ROOT } from "../paths";
import { apiPages } from "./pages";

const FOLDER = join(ROOT, "docs", "api");

const types = declarationsOf();
rmSync(FOLDER, { recursive: true, force: true });
mkdirSync(FOLDER, { recursive: true });
for (const [name, text] of apiPages((path) => types.get(path) ?? "")) {
  writeFileSync(join(FOLDER, name), text);
}
