import webpack, { type Compiler } from "webpack";
import { demoFile } from "./samples";

/** Puts sample workbooks beside the built page. */
export class EmitSamples {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("EmitSamples", (compilation) => {
      compilation.hooks.processAssets.tapPromise("EmitSamples", async () => {
        const bytes = Buffer.from(await demoFile());
        compilation.emitAsset("demo.xlsx", new webpack.sources.RawSource(bytes));
      });
    });
  }
}
