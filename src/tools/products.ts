import type { Configuration } from "webpack";
import { LIBRARY } from "./library/entries";

/** One thing the build makes: how, and of what, so that it is made again only where that has changed. */
export interface Product {
  /** What goes into it and what makes it; whatever these files load counts too. */
  readonly code: readonly string[];
  /** Files and folders that are read while it is made, beyond what is loaded. */
  readonly data: readonly string[];
  /** Whether it says itself what in it comes from others, so that no file beside it has to. */
  readonly carriesNotices?: boolean;
  /** How webpack makes it; only then is what it takes to make it loaded. */
  configure(base: string): Promise<Configuration>;
}

/** The functions' JSDoc is read as text, for the catalogue. */
const CATALOGUE = "src/functions";
const CAUTIONS = "shared/cautions.json";
const LOOK = "shared/look.json";
const COLORS = "src/pane/colors.css";

/** Everything that goes into dist/. */
export const products = {
  excel: {
    code: ["src/hosts/excel/functions.ts", "src/tools/excelConfig.ts"],
    data: [
      ...[CATALOGUE, CAUTIONS, "shared/methods", "src/hosts/excel", COLORS],
      ...["docs/images/pictures", "manifest.xml"],
    ],
    configure: async (base) => (await import("./excelConfig")).excelConfig(base),
  },
  workbook: {
    code: [
      "src/hosts/page/main.ts",
      "src/hosts/page/offline/serviceWorker.ts",
      "src/tools/workbookConfig.ts",
    ],
    data: [CATALOGUE, CAUTIONS, "src/hosts/page", LOOK, "shared/demo", "shared/pane"],
    configure: async () => (await import("./workbookConfig")).workbookConfig(),
  },
  samples: {
    code: ["src/tools/samplesConfig.ts"],
    data: [CATALOGUE, LOOK, "shared/demo"],
    configure: async () => (await import("./samplesConfig")).samplesConfig(),
  },
  pane: {
    code: ["src/hosts/excel/pane.ts", "src/tools/paneConfig.ts"],
    data: [CATALOGUE, CAUTIONS, "src/hosts/excel", LOOK, "shared/pane"],
    configure: async () => (await import("./paneConfig")).paneConfig(),
  },
  cli: {
    code: ["src/cli/main.ts", "src/tools/cliConfig.ts"],
    data: [],
    configure: async () => (await import("./cliConfig")).cliConfig(),
  },
  library: {
    code: [...LIBRARY, "src/tools/libraryConfig.ts"],
    data: [CATALOGUE, "src/cells", "src/core"],
    carriesNotices: true,
    configure: async () => (await import("./libraryConfig")).libraryConfig(),
  },
  sheets: {
    code: ["src/hosts/sheets/script.ts", "src/tools/sheetsConfig.ts"],
    data: [CATALOGUE, CAUTIONS, "src/tools/commentedLoader.mjs"],
    carriesNotices: true,
    configure: async () => (await import("./sheetsConfig")).sheetsConfig(),
  },
  warehouse: {
    code: ["src/hosts/warehouse/answer.ts", "src/tools/warehouseConfig.ts"],
    data: [],
    carriesNotices: true,
    configure: async () => (await import("./warehouseConfig")).warehouseConfig(),
  },
  card: {
    code: ["src/hosts/card/main.ts", "src/hosts/card/worker.ts", "src/tools/cardConfig.ts"],
    data: [CAUTIONS, COLORS, "src/hosts/card"],
    configure: async () => (await import("./cardConfig")).cardConfig(),
  },
} satisfies Readonly<Record<string, Product>>;

export type ProductName = keyof typeof products;
export const productNames = Object.keys(products) as ProductName[];
