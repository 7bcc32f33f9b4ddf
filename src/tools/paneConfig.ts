import { join } from "node:path";
import CopyPlugin from "copy-webpack-plugin";
import MiniCssExtractPlugin from "mini-css-extract-plugin";
import webpack, { type Compiler, type Configuration } from "webpack";
import { PANE_DATA } from "../pane/data";
import { readPaneData } from "./paneData";
import { compileTypeScript, minimize } from "./compile";
import { DIST, ROOT } from "./paths";

const EXCEL = join(ROOT, "src", "hosts", "excel");

/** What the browsers inside Excel have all had for years. */
const target = "es2020";

/** The pane's page for Excel, and the data that it and the workbook's page fetch. */
export function paneConfig(): Configuration {
  return {
    name: "pane",
    mode: "production",
    target: ["web", target],
    devtool: false,
    entry: { pane: join(EXCEL, "pane.ts") },
    output: { path: DIST, filename: "[name].js" },
    resolve: { extensions: [".ts", ".js"] },
    module: {
      rules: [
        compileTypeScript(target),
        { test: /\.css$/, use: [MiniCssExtractPlugin.loader, "css-loader"] },
      ],
    },
    optimization: minimize(target),
    performance: { hints: false },
    plugins: [
      new MiniCssExtractPlugin({ filename: "[name].css" }),
      new CopyPlugin({ patterns: [{ from: join(EXCEL, "pane.html") }] }),
      new EmitPaneData(),
    ],
  };
}

class EmitPaneData {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("EmitPaneData", (compilation) => {
      compilation.hooks.processAssets.tap("EmitPaneData", () => {
        const text = JSON.stringify(readPaneData());
        compilation.emitAsset(PANE_DATA, new webpack.sources.RawSource(text));
      });
    });
  }
}
