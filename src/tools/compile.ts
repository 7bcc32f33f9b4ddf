import { join } from "node:path";
import { EsbuildPlugin } from "esbuild-loader";
import MiniCssExtractPlugin from "mini-css-extract-plugin";
import type { Configuration } from "webpack";
import { DIST } from "./paths";

/**
 * What all our bundles have in common: our TypeScript compiled and minified for one language level, a file in dist/ for
 * each entry, and no word on its size.
 */
export const compiled = (name: string, platform: "web" | "node20", target: string) =>
  ({
    name,
    mode: "production",
    target: [platform, target],
    devtool: false,
    output: { path: DIST, filename: "[name].js" },
    resolve: { extensions: [".ts", ".js"] },
    module: {
      rules: [
        { test: /\.tsx?$/, loader: "esbuild-loader", options: { target } },
        { test: /@univerjs[\\/].*\.js$/, loader: join(import.meta.dirname, "fieldsLoader.mjs") },
      ],
    },
    optimization: { minimizer: [minimizer(target)] },
    performance: { hints: false },
  }) satisfies Configuration;

/** The same for a page, whose style sheets become a file beside the script's. */
export function compiledPage(name: string, target: string) {
  const common = compiled(name, "web", target);
  const styles = { test: /\.css$/, use: [MiniCssExtractPlugin.loader, "css-loader"] };
  return {
    ...common,
    module: { rules: [...common.module.rules, styles] },
    plugins: [new MiniCssExtractPlugin({ filename: "[name].css" })],
  } satisfies Configuration;
}

/** Minifies for this language level, style sheets too. */
const minimizer = (target: string) =>
  new EsbuildPlugin({ target, css: true, legalComments: "none" });
