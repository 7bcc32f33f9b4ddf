import { createHash } from "node:crypto";
import {
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { loadedBy, type Loaded } from "./importGraph";
import { DIST, ROOT } from "./paths";
import { products, type Product, type ProductName } from "./products";

/** Beside the built files, the state of the sources that each product was made of. */
const STAMPS = join(DIST, ".made");

/** What every product depends on: our own version, and the packages'. */
const ALWAYS = ["package.json", "package-lock.json"];

/** Whether the last build of a product is still what its sources, in this state, would give. */
export function isFresh(name: ProductName, state: string): boolean {
  const stamp = join(STAMPS, name);
  return existsSync(stamp) && readFileSync(stamp, "utf8") === state;
}

/** Notes, after a build, what it was made of. */
export function markFresh(name: ProductName, state: string): void {
  mkdirSync(STAMPS, { recursive: true });
  writeFileSync(join(STAMPS, name), state);
}

/** For each product a text that changes with anything it is made of, and with the `base` it is made for. */
export async function statesOf(
  names: readonly ProductName[],
  base: string,
): Promise<ReadonlyMap<ProductName, string>> {
  const loaded = await loadedBy(names.flatMap((name) => products[name].code));
  return new Map(
    names.map((name) => [name, stateOf(sourcesOf(products[name], loaded), base)] as const),
  );
}

/** The files that a product is made of, given what each file of its code loads. */
export function sourcesOf({ code, data }: Product, loaded: ReadonlyMap<string, Loaded>): string[] {
  return [
    ...code.flatMap((entry) => [...(loaded.get(entry)?.files ?? [])]),
    ...[...ALWAYS, ...data].flatMap(filesUnder),
  ];
}

/** A text that changes with the content of any of some files, and with whatever else counts. */
export function stateOf(files: readonly string[], besides: string): string {
  const hash = createHash("sha256").update(besides);
  for (const file of [...new Set(files)].sort()) {
    hash.update(file).update(readFileSync(join(ROOT, file)));
  }
  return hash.digest("hex");
}

/** The files in a folder of the project and in its folders; a file is its own. */
export function filesUnder(path: string): string[] {
  const full = join(ROOT, path);
  const kind = lstatSync(full);
  // An editor's lock is a link that leads nowhere.
  if (kind.isSymbolicLink()) return [];
  if (!kind.isDirectory()) return [path];
  return readdirSync(full).flatMap((name) => filesUnder(join(path, name)));
}
