import { join } from "node:path";
import CopyPlugin from "copy-webpack-plugin";
import webpack, { type Configuration } from "webpack";
import { CONTENT_SECURITY_POLICY } from "../hosts/page/policy";
import { readCatalogue } from "./catalogue";
import { compiledPage } from "./compile";
import { readDemo } from "./demo";
import { emitting } from "./emitting";
import { FillServiceWorker } from "./offlinePlugin";
import { ROOT } from "./paths";

const PAGE = join(ROOT, "src", "hosts", "page");

/** Browsers of the last few years: the spreadsheet itself asks for no less. */
const TARGET = "es2022";

/** The page with the embedded workbook: its bundle, the catalogue and the demo it opens on. */
export function workbookConfig(): Configuration {
  const page = compiledPage("workbook", TARGET);
  return {
    ...page,
    entry: {
      workbook: join(PAGE, "main.ts"),
      "service-worker": join(PAGE, "offline", "serviceWorker.ts"),
    },
    module: { ...page.module, parser: { javascript: { dynamicImportMode: "eager" } } },
    // What is fetched later is one file: shared parts of it would be files of their own.
    optimization: { ...page.optimization, splitChunks: false },
    plugins: [
      withoutHyphenation,
      withStandIns,
      ...page.plugins,
      new CopyPlugin({
        patterns: [
          {
            from: join(PAGE, "index.html"),
            transform: (source) => String(source).replace("{{policy}}", CONTENT_SECURITY_POLICY),
          },
          { from: join(PAGE, "offline", "manifest.webmanifest") },
          { from: join(PAGE, "offline", "icons"), to: "app-icons" },
        ],
      }),
      // What the page fetches when it opens.
      emitting("data", (emit) => {
        emit("catalogue.json", JSON.stringify(readCatalogue()));
        emit("demo.json", JSON.stringify(readDemo()));
      }),
      new FillServiceWorker(),
    ],
  };
}

/**
 * The spreadsheet's text layout brings hyphenation for seventy languages, more bytes than all the
 * rest. Cells are not hyphenated, and it copes with a language that has no patterns.
 */
const withoutHyphenation = new webpack.NormalModuleReplacementPlugin(
  /^\.\/[\w-]+-[\w-]{8}\.js$/,
  (resource: { context: string; request: string }) => {
    if (/@univerjs[\\/]engine-render/.test(resource.context)) {
      resource.request = "data:text/javascript,export default null";
    }
  },
);

/** Packages that the spreadsheet loads, by what stands in for them: `dates/` reads dates as the browser's language writes them. */
const standIns: Readonly<Record<string, string>> = {
  numfmt: join(PAGE, "dates", "numfmt.ts"),
  "cjk-regex": join(PAGE, "lean", "cjk.ts"),
  "franc-min": join(PAGE, "lean", "franc.ts"),
  "opentype.js": join(PAGE, "lean", "opentype.ts"),
};

const withStandIns = new webpack.NormalModuleReplacementPlugin(
  new RegExp(`^(?:${Object.keys(standIns).join("|").replaceAll(".", "\\.")})$`),
  (resource: { context: string; request: string }) => {
    if (/@univerjs[\\/]/.test(resource.context)) {
      resource.request = standIns[resource.request] ?? resource.request;
    }
  },
);
