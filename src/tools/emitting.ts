import webpack, { type Compilation, type Configuration, type WebpackPluginInstance } from "webpack";
import { DIST } from "./paths";

/** Adds a file to what a build gives. */
export type Emit = (file: string, content: string | Uint8Array) => void;

/** When all bundles of a build are there, and minified. */
export const BUNDLED = webpack.Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE;

/** Writes files beside what a build bundles, or in its place; at the `stage` that it needs. */
export const emitting = (
  name: string,
  write: (emit: Emit, compilation: Compilation) => void | Promise<void>,
  stage?: number,
): WebpackPluginInstance => ({
  apply(compiler) {
    compiler.hooks.thisCompilation.tap(name, (compilation) => {
      const emit: Emit = (file, content) => {
        const text = typeof content === "string" ? content : Buffer.from(content);
        compilation.emitAsset(file, new webpack.sources.RawSource(text));
      };
      compilation.hooks.processAssets.tapPromise({ name, stage }, async () =>
        write(emit, compilation),
      );
    });
  },
});

/** A build that bundles nothing and writes files alone. */
export const filesAlone = (
  name: string,
  write: (emit: Emit) => void | Promise<void>,
): Configuration => ({
  name,
  mode: "production",
  target: "node20",
  entry: {},
  output: { path: DIST },
  performance: { hints: false },
  plugins: [emitting(name, write)],
});
