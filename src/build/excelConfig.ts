import { join } from "node:path";
import CopyPlugin from "copy-webpack-plugin";
import webpack, { type Compiler, type Configuration } from "webpack";
import { readMetadata } from "./catalogue";
import { compileTypeScript, DIST, minimize, ROOT } from "./paths";

/** Where the manifest at the top of the project points: the development server of `npm run excel`. */
export const DEVELOPMENT_BASE = "https://localhost:3000/";

const EXCEL = join(ROOT, "src", "hosts", "excel");

/** What Excel loads: the functions' bundle, its metadata and page, the icons and the manifest. */
export function excelConfig(base: string): Configuration {
  return {
    name: "excel",
    mode: "production",
    target: ["web", "es2020"],
    devtool: false,
    entry: { functions: join(EXCEL, "functions.ts") },
    output: { path: DIST, filename: "[name].js" },
    resolve: { extensions: [".ts", ".js"] },
    module: { rules: [compileTypeScript("es2020")] },
    optimization: minimize("es2020"),
    performance: { maxAssetSize: 250 * 1024, maxEntrypointSize: 250 * 1024, hints: "error" },
    plugins: [
      new EmitMetadata(new URL("help.html", base).href),
      new CopyPlugin({
        patterns: [
          { from: join(EXCEL, "functions.html") },
          { from: join(EXCEL, "icons", "*.png"), to: "icons/[name][ext]" },
          { from: join(ROOT, "manifest.xml"), transform: (source) => rebase(source, base) },
        ],
      }),
    ],
  };
}

/** The manifest with every address moved from the development server to where the add-in is hosted. */
export function rebase(manifest: Buffer | string, base: string): string {
  const { href, origin } = new URL(base);
  const folder = href.endsWith("/") ? href : `${href}/`;
  return String(manifest)
    .replaceAll(DEVELOPMENT_BASE, folder)
    .replaceAll(`<AppDomain>${new URL(DEVELOPMENT_BASE).origin}<`, `<AppDomain>${origin}<`);
}

/** Writes functions.json from the JSDoc of the functions. */
class EmitMetadata {
  constructor(private readonly helpPage: string) {}

  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("EmitMetadata", (compilation) => {
      compilation.hooks.processAssets.tap("EmitMetadata", () => {
        const metadata = JSON.stringify(readMetadata(this.helpPage), null, 2);
        compilation.emitAsset("functions.json", new webpack.sources.RawSource(metadata));
      });
    });
  }
}
