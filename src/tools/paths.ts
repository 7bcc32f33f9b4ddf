import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { EsbuildPlugin } from "esbuild-loader";
import type { RuleSetRule } from "webpack";

/** The project's top level, and where everything built goes. */
export const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
export const DIST = join(ROOT, "dist");

/** Compiles our TypeScript for this language level. */
export const compileTypeScript = (target: string): RuleSetRule => ({
  test: /\.tsx?$/,
  loader: "esbuild-loader",
  options: { target },
});

/** Minifies for this language level, style sheets too. */
export const minimize = (target: string) => ({
  minimizer: [new EsbuildPlugin({ target, css: true, legalComments: "none" })],
});
