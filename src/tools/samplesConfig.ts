import webpack, { type Compiler, type Configuration } from "webpack";
import { DIST } from "./paths";
import { demoFile, portableDemoFile } from "./samples";

/** The sample workbooks beside the built page. Nothing is bundled. */
export function samplesConfig(): Configuration {
  return {
    name: "samples",
    mode: "production",
    target: "node20",
    entry: {},
    output: { path: DIST },
    performance: { hints: false },
    plugins: [new EmitSamples()],
  };
}

class EmitSamples {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("EmitSamples", (compilation) => {
      compilation.hooks.processAssets.tapPromise("EmitSamples", async () => {
        const emit = (file: string, bytes: Uint8Array) =>
          compilation.emitAsset(file, new webpack.sources.RawSource(Buffer.from(bytes)));
        const demo = await demoFile();
        emit("demo.xlsx", demo);
        emit("demo-portable.xlsx", await portableDemoFile(demo));
      });
    });
  }
}
