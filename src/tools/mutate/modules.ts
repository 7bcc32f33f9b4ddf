import { readFileSync } from "node:fs";
import { dirname, extname, join } from "node:path";
import { compileFunction } from "node:vm";
import { pathToFileURL } from "node:url";
import { transformSync, type Loader } from "esbuild";
import { graphOf } from "../importGraph";
import { ROOT } from "../paths";
import { withCountedLoops } from "./loops";

/** Our own files as modules of one process, of which one can be changed and only what loads it is loaded anew. */
export interface Modules {
  /** What a file exports. */
  load(file: string): unknown;
  /** Gives a file another source; whatever loads it is loaded anew. */
  change(file: string, source: string): void;
  /** Has the loops of changed files end after so many turns, counted from now; says how many there were before. */
  limitTurns(most: number): number;
  /** Forgets a file, so that it is loaded anew. */
  forget(file: string): void;
}

type Code = (
  module: { exports: unknown },
  exports: unknown,
  require: (name: string) => unknown,
  folder: string,
  url: string,
  performance: { now(): number },
  turn: () => void,
) => void;

/** What a test times itself by: the time spent computing, whatever else the machine has to do. */
const spent = {
  now() {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
};

/** The modules of some files and of whatever they load. Packages are loaded once, and stay. */
export async function modulesOf(entries: readonly string[]): Promise<Modules> {
  const { inputs } = await graphOf(entries);
  const loadersOf = new Map<string, string[]>();
  const packages = new Map<string, unknown>();
  for (const [file, { imports }] of Object.entries(inputs)) {
    for (const { path, external } of imports) {
      // What is imported for its types alone counts as outside too, by its relative path.
      if (external === true && !path.startsWith(".")) packages.set(path, undefined);
      if (external !== true) loadersOf.set(path, [...(loadersOf.get(path) ?? []), file]);
    }
  }
  for (const name of packages.keys()) {
    packages.set(name, { ...((await import(name)) as object), __esModule: true });
  }

  let turns = 0;
  let most = Infinity;
  const turn = () => {
    if (++turns > most) throw new Error("a loop goes on for ever");
  };
  const limitTurns = (limit: number) => {
    const before = turns;
    [turns, most] = [0, limit];
    return before;
  };

  const codes = new Map<string, Code>();
  const modules = new Map<string, { exports: unknown }>();

  function load(file: string): unknown {
    const known = modules.get(file);
    if (known) return known.exports;
    const module = { exports: {} as unknown };
    modules.set(file, module);
    const code = codes.get(file) ?? compiled(file, readFileSync(join(ROOT, file), "utf8"));
    codes.set(file, code);
    const imports = inputs[file]?.imports ?? [];
    const require = (name: string) => {
      const found = imports.find(({ path, original }) => (original ?? path) === name);
      if (!found) throw new Error(`${file} loads ${name}, which was not foreseen`);
      return found.external === true ? packages.get(found.path) : load(found.path);
    };
    const path = join(ROOT, file);
    code(module, module.exports, require, dirname(path), pathToFileURL(path).href, spent, turn);
    return module.exports;
  }

  function change(file: string, source: string): void {
    codes.set(file, compiled(file, withCountedLoops(source, "__turn")));
    const stale = new Set([file]);
    // What is added while a set is walked is walked too.
    for (const each of stale) {
      modules.delete(each);
      for (const loader of loadersOf.get(each) ?? []) stale.add(loader);
    }
  }

  return { load, change, limitTurns, forget: (file) => modules.delete(file) };
}

const LOADERS: Readonly<Record<string, Loader>> = { ".ts": "ts", ".json": "json", ".css": "empty" };

function compiled(file: string, source: string): Code {
  const { code } = transformSync(source, {
    loader: LOADERS[extname(file)] ?? "js",
    format: "cjs",
    target: "es2022",
    supported: { "dynamic-import": false },
    define: { "import.meta.dirname": "__folder", "import.meta.url": "__url" },
    logLevel: "silent",
  });
  const names = ["module", "exports", "require", "__folder", "__url", "performance", "__turn"];
  return compileFunction(code, names, { filename: join(ROOT, file) }) as Code;
}
