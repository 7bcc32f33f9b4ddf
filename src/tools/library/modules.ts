import { build, type BuildOptions, type Plugin } from "esbuild";
import { existsSync } from "node:fs";
import { join, relative } from "node:path";
import { isOfOthers } from "../bundledPackage";
import { readCatalogue } from "../catalogue";
import { loadedBy } from "../importGraph";
import { ROOT } from "../paths";
import { LIBRARY } from "./entries";

/** JavaScript by its path in the package, and the files of others that it is made of. */
export interface Modules {
  readonly modules: ReadonlyMap<string, string>;
  readonly others: readonly string[];
}

const SOURCE = join(ROOT, "src");

/** Where in the package the code of others lies. */
const OTHERS = "others";

const COMMON = {
  absWorkingDir: ROOT,
  bundle: true,
  format: "esm",
  target: "es2022",
  platform: "neutral",
  mainFields: ["module", "main"],
  charset: "utf8",
  legalComments: "none",
  metafile: true,
  write: false,
  outdir: SOURCE,
} satisfies BuildOptions;

/**
 * Our files one by one, so that a bundler keeps only those that are asked for, and the packages of others bundled, so
 * that nothing has to be installed beside ours.
 */
export async function modulesOf(): Promise<Modules> {
  const loaded = [...(await loadedBy(LIBRARY)).values()];
  const files = new Set(loaded.flatMap((each) => [...each.files]));
  const packages = new Set<string>();
  const own = await build({
    ...COMMON,
    entryPoints: [...files].filter((file) => file.endsWith(".ts")),
    outbase: SOURCE,
    define: { CATALOGUE: JSON.stringify(readCatalogue()) },
    plugins: [fileByFile(packages)],
  });
  const others = await build({
    ...COMMON,
    entryPoints: [...packages].map((name) => ({ in: entryFor(name), out: pathFor(name) })),
    splitting: true,
    chunkNames: `${OTHERS}/shared-[hash]`,
    plugins: [defaultsOnly],
  });
  const outputs = [...own.outputFiles, ...others.outputFiles];
  return {
    modules: new Map(outputs.map(({ path, text }) => [relative(SOURCE, path), shakable(text)])),
    others: Object.keys(others.metafile.inputs)
      .map((path) => join(ROOT, path))
      .filter((path) => isOfOthers(path) && existsSync(path))
      .sort(),
  };
}

/** Without imports that take nothing: what they name only says what it is, and bundlers warn of them. */
const shakable = (text: string) => text.replace(/^import "\.\/shared-[^"]*";\n/gm, "");

/** Leaves every import an import: of ours by the name of the built file, of others by where they are bundled. */
const fileByFile = (packages: Set<string>): Plugin => ({
  name: "file by file",
  setup({ onResolve }) {
    onResolve({ filter: /./ }, ({ path, kind, resolveDir }) => {
      if (kind === "entry-point" || path.endsWith(".json")) return undefined;
      if (path.startsWith(".")) return { path: builtName(resolveDir, path), external: true };
      packages.add(path);
      const way = relative(resolveDir, join(SOURCE, `${pathFor(path)}.js`));
      return { path: way.startsWith(".") ? way : `./${way}`, external: true };
    });
  },
});

/** How a built file names another: with its ending, and a folder's index by name. */
export function builtName(folder: string, path: string): string {
  const isFolder = !existsSync(join(folder, `${path}.ts`)) && existsSync(join(folder, path));
  return isFolder ? `${path}/index.js` : `${path}.js`;
}

const pathFor = (name: string) => `${OTHERS}/${name.replace("@", "").replaceAll("/", "-")}`;
const entryFor = (name: string) => `others:${name}`;

/** Entries that hand on what a package gives by default. */
const defaultsOnly: Plugin = {
  name: "defaults only",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^others:/ }, ({ path }) => ({
      path: path.slice("others:".length),
      namespace: "others",
    }));
    onLoad({ filter: /./, namespace: "others" }, ({ path }) => ({
      contents: `export { default } from ${JSON.stringify(path)};`,
      resolveDir: ROOT,
    }));
  },
};
