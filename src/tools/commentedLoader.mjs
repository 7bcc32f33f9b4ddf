/** A webpack loader that takes the types out of TypeScript and leaves the comments in, for code that is to be read. */
import ts from "typescript";

/** @param {string} source */
export default function commentedLoader(source) {
  const compilerOptions = {
    target: ts.ScriptTarget.ES2019,
    module: ts.ModuleKind.ESNext,
    removeComments: false,
  };
  return ts.transpileModule(source, { compilerOptions }).outputText;
}
