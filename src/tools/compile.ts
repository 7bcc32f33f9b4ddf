import { EsbuildPlugin } from "esbuild-loader";
import type { RuleSetRule } from "webpack";

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
