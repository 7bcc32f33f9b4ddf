import { build, type Metafile } from "esbuild";
import { ROOT } from "./paths";

/** What a file loads, and whatever that loads in turn. */
export interface Loaded {
  /** Files of ours, by their path from the project's top level; the file itself is among them. */
  readonly files: ReadonlySet<string>;
  /** Packages by name, and what Node brings. */
  readonly packages: ReadonlySet<string>;
}

/** What each of some files loads. What is imported as a type only is not loaded. */
export async function loadedBy(entries: readonly string[]): Promise<ReadonlyMap<string, Loaded>> {
  const graph = await graphOf(entries);
  return new Map(entries.map((entry) => [entry, reachedFrom(entry, graph)]));
}

/** Some files and whatever they load, each with what it imports itself. */
export async function graphOf(entries: readonly string[]): Promise<Metafile> {
  const { metafile } = await build({
    absWorkingDir: ROOT,
    entryPoints: [...new Set(entries)],
    bundle: true,
    splitting: true,
    format: "esm",
    target: "es2022",
    platform: "node",
    packages: "external",
    loader: { ".css": "empty" },
    metafile: true,
    write: false,
    outdir: "nowhere",
    logLevel: "silent",
  });
  return metafile;
}

function reachedFrom(entry: string, { inputs }: Metafile): Loaded {
  const files = new Set([entry]);
  const packages = new Set<string>();
  // What is added while a set is walked is walked too.
  for (const file of files) {
    for (const { path, external } of inputs[file]?.imports ?? []) {
      if (external === true) packages.add(packageOf(path));
      else files.add(path);
    }
  }
  return { files, packages };
}

/** The package that an import names: "@univerjs/core" for "@univerjs/core/facade". */
const packageOf = (specifier: string) => /^(?:@[^/]+\/)?[^/]+/.exec(specifier)?.[0] ?? specifier;
