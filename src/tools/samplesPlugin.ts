import webpack, { type Compiler } from "webpack";
import { demoFile, portableDemoFile } from "./samples";

/** Puts sample workbooks beside the built page. */
export class EmitSamples {
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
