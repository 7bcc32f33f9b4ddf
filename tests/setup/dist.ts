import { build } from "./build";

/** Builds what the tests outside a browser read. */
export default () =>
  build(["excel", "pane", "sheets", "cli", "samples", "card", "library", "warehouse"]);
