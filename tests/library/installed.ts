import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ROOT } from "../../src/tools/paths";

/** A file of the packed package. */
export interface PackedFile {
  readonly path: string;
  readonly size: number;
}

/** The package as `npm pack` packs it, installed without a network into a folder that held nothing. */
export interface Installed {
  readonly files: readonly PackedFile[];
  readonly folder: string;
  /** Runs a program of the folder's own, or of this machine's, in it. */
  run(program: string, ...args: readonly string[]): string;
  put(name: string, content: string | Uint8Array): string;
  remove(): void;
}

export function installPackage(): Installed {
  const folder = mkdtempSync(join(tmpdir(), "spare-package-"));
  const runIn = (cwd: string, program: string, args: readonly string[]) => {
    const { status, stdout, stderr } = spawnSync(program, args, { cwd, encoding: "utf8" });
    if (status !== 0) throw new Error(`${program} ended with ${status}:\n${stdout}${stderr}`);
    return stdout;
  };
  const put = (name: string, content: string | Uint8Array) => {
    writeFileSync(join(folder, name), content);
    return join(folder, name);
  };
  // What it packs is built already.
  const packing = ["pack", "--json", "--ignore-scripts", "--pack-destination", folder];
  const [packed] = JSON.parse(runIn(ROOT, "npm", packing)) as [
    { readonly filename: string; readonly files: readonly PackedFile[] },
  ];
  put("package.json", JSON.stringify({ name: "empty", private: true, type: "module" }));
  runIn(folder, "npm", ["install", "--offline", "--ignore-scripts", `./${packed.filename}`]);
  return {
    files: packed.files,
    folder,
    run: (program, ...args) => runIn(folder, program, args),
    put,
    remove() {
      rmSync(folder, { recursive: true });
    },
  };
}
