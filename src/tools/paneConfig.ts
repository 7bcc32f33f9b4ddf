import { join } from "node:path";
import CopyPlugin from "copy-webpack-plugin";
import type { Configuration } from "webpack";
import { PANE_DATA } from "../pane/data";
import { readPaneData } from "./paneData";
import { compiledPage } from "./compile";
import { emitting } from "./emitting";
import { ROOT } from "./paths";

const EXCEL = join(ROOT, "src", "hosts", "excel");

/** What the browsers inside Excel have all had for years. */
const TARGET = "es2020";

/** The pane's page for Excel, and the data that it and the workbook's page fetch. */
export function paneConfig(): Configuration {
  const page = compiledPage("pane", TARGET);
  return {
    ...page,
    entry: { pane: join(EXCEL, "pane.ts") },
    plugins: [
      ...page.plugins,
      new CopyPlugin({ patterns: [{ from: join(EXCEL, "pane.html") }] }),
      emitting("pane data", (emit) => emit(PANE_DATA, JSON.stringify(readPaneData()))),
    ],
  };
}
