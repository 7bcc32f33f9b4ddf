/**
 * A webpack loader that has the spreadsheet's classes set their fields by plain assignments. They come compiled for
 * browsers without class fields, each set by a call of a helper that the engine makes millions of times.
 */

/** @param {string} source */
export default function fieldsLoader(source) {
  return source.replace(/\b_defineProperty\(this, "([\w$]+)",\s*/g, "this.$1 = (");
}
