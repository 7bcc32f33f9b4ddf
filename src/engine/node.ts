import { register } from "node:module";

/**
 * Lets Node load the spreadsheet's modules. One of them imports `opentype.js`, a package that names
 * its ES module in a way bundlers understand and Node does not, so Node has to be told the file.
 *
 * Call it before the first (dynamic) import of anything that reaches `@univerjs/sheets`.
 */
export function prepareNode(): void {
  if (prepared) return;
  prepared = true;
  register(`data:text/javascript,${encodeURIComponent(HOOKS)}`);
}

let prepared = false;

const HOOKS = `
  export function resolve(specifier, context, next) {
    return next(specifier === "opentype.js" ? "opentype.js/dist/opentype.mjs" : specifier, context);
  }
`;
