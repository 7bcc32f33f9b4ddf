/**
 * What the spreadsheet's text layout asks of `opentype.js`: to read the fonts installed on this
 * computer, where the browser lets a page have their files. This page never asks for that.
 */
export function parse(): never {
  throw new Error("fonts are drawn by the browser here");
}
