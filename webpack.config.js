import { DEVELOPMENT_BASE, excelConfig } from "./src/build/excelConfig.ts";
import { workbookConfig } from "./src/build/workbookConfig.ts";

/** Everything that goes into dist/. `--env base=https://your.host/path/` says where it will be hosted. */
export default ({ base = DEVELOPMENT_BASE } = {}) => [excelConfig(base), workbookConfig()];
