import { readFileSync } from "node:fs";
import { join } from "node:path";
import CopyPlugin from "copy-webpack-plugin";
import type { Configuration } from "webpack";
import { readMetadata } from "./catalogue";
import { helpPage } from "./help";
import { compiled } from "./compile";
import { emitting } from "./emitting";
import { DEVELOPMENT_BASE, ROOT } from "./paths";

const EXCEL = join(ROOT, "src", "hosts", "excel");

/** What Excel loads: the functions' bundle, its metadata and page, the icons and the manifest. */
export function excelConfig(base: string): Configuration {
  return {
    ...compiled("excel", "web", "es2020"),
    entry: { functions: join(EXCEL, "functions.ts") },
    performance: {
      maxAssetSize: 250 * 1024,
      maxEntrypointSize: 250 * 1024,
      // What Excel loads to compute; the help page beside it is read by who asks for it.
      assetFilter: (file) => file.endsWith(".js"),
      hints: "error",
    },
    plugins: [
      // From the JSDoc of the functions.
      emitting("reference", async (emit) => {
        const help = new URL("help.html", folderOf(base)).href;
        emit("functions.json", JSON.stringify(readMetadata(help), null, 2));
        emit("help.html", await helpPage());
      }),
      new CopyPlugin({
        patterns: [
          { from: join(EXCEL, "functions.html") },
          {
            from: join(EXCEL, "help.css"),
            transform: (source) => `${readFileSync(COLORS, "utf8")}\n${String(source)}`,
          },
          { from: join(EXCEL, "icons", "*.png"), to: "icons/[name][ext]" },
          { from: join(ROOT, "docs", "images", "pictures"), to: "pictures" },
          { from: join(ROOT, "manifest.xml"), transform: (source) => rebase(source, base) },
        ],
      }),
    ],
  };
}

/** The manifest with every address moved from the development server to where the add-in is hosted. */
export function rebase(manifest: Buffer | string, base: string): string {
  const folder = folderOf(base);
  const appDomain = (address: string) => `<AppDomain>${new URL(address).origin}<`;
  return String(manifest)
    .replaceAll(DEVELOPMENT_BASE, folder)
    .replaceAll(appDomain(DEVELOPMENT_BASE), appDomain(folder));
}

/** The colours that the help shares with the pane and the page. */
const COLORS = join(ROOT, "src", "pane", "colors.css");

const folderOf = (base: string) => (base.endsWith("/") ? base : `${base}/`);
