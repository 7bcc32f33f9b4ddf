import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The project's top level, where everything built goes, and where tools keep what they can make again. */
export const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
export const DIST = join(ROOT, "dist");
export const CACHE = join(ROOT, "node_modules", ".cache");

/** For Google Sheets: the folder to push, and the file in it to paste. */
export const SHEETS = join(DIST, "sheets");
export const SCRIPT = "reps-to-spare.gs";

/** Where the manifest at the top level points: the development server of `npm run excel`. */
export const DEVELOPMENT_BASE = "https://localhost:3000/";
