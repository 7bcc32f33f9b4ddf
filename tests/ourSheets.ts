import { join } from "node:path";
import { readSheets } from "../src/readySheets";
import { readPaneData } from "../src/tools/paneData";
import { ROOT } from "../src/tools/paths";
import { once } from "./once";

/** The sheets of a folder in `shared`, as they are laid out: the demo's, or the Toolbox's ready ones. */
export const ourSheets = once((folder: "demo" | "pane") =>
  readSheets(join(ROOT, "shared", folder)),
);

/** What the Toolbox fetches. */
export const paneData = once(readPaneData);
