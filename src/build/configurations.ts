import type { Configuration } from "webpack";
import { DEVELOPMENT_BASE, excelConfig } from "./excelConfig";
import { sheetsConfig } from "./sheetsConfig";
import { workbookConfig } from "./workbookConfig";

/** Everything that goes into dist/, to be hosted at `base`. */
export const configurations = (base = DEVELOPMENT_BASE): Configuration[] => [
  excelConfig(base),
  workbookConfig(),
  sheetsConfig(),
];
