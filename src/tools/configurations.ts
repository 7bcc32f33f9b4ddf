import type { Configuration } from "webpack";
import { cardConfig } from "./cardConfig";
import { cliConfig } from "./cliConfig";
import { DEVELOPMENT_BASE, excelConfig } from "./excelConfig";
import { EmitLicences } from "./notices";
import { paneConfig } from "./paneConfig";
import { sheetsConfig } from "./sheetsConfig";
import { workbookConfig } from "./workbookConfig";

/** Everything that goes into dist/, to be hosted at `base`. */
export const configurations = (base = DEVELOPMENT_BASE): Configuration[] => [
  ...[excelConfig(base), workbookConfig(), paneConfig(), cliConfig(), cardConfig()].map(
    withLicences,
  ),
  // The script for Sheets is one file, so it carries its notices itself.
  sheetsConfig(),
];

const withLicences = (configuration: Configuration): Configuration => ({
  ...configuration,
  plugins: [...(configuration.plugins ?? []), new EmitLicences()],
});
