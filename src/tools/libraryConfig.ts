import webpack, { type Compiler, type Configuration } from "webpack";
import { declarationsOf } from "./library/declarations";
import { modulesOf } from "./library/modules";
import { licencesOf } from "./notices";
import { DIST } from "./paths";

/** What the package gives to a program: modules that a bundler can shake, their types, and the licences of others. */
export function libraryConfig(): Configuration {
  return {
    name: "library",
    mode: "production",
    target: "node20",
    entry: {},
    output: { path: DIST },
    // Whoever uses it may read it; their bundler makes it small.
    optimization: { minimize: false },
    performance: { hints: false },
    plugins: [new EmitLibrary()],
  };
}

class EmitLibrary {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("EmitLibrary", (compilation) => {
      compilation.hooks.processAssets.tapPromise("EmitLibrary", async () => {
        const emit = (file: string, text: string) =>
          compilation.emitAsset(file, new webpack.sources.RawSource(text));
        const { modules, others } = await modulesOf();
        for (const [path, text] of [...modules, ...declarationsOf()]) emit(`library/${path}`, text);
        emit("licences/library.txt", licencesOf(others));
      });
    });
  }
}
