import { dirname, join, relative } from "node:path";
import ts from "typescript";
import { ROOT } from "../paths";
import { LIBRARY } from "./entries";
import { builtName } from "./modules";

const SOURCE = join(ROOT, "src");

/** The types of what the package gives, by their paths in it; they need those of no other package. */
export function declarationsOf(): ReadonlyMap<string, string> {
  const { options, errors } = ts.getParsedCommandLineOfConfigFile(
    join(ROOT, "tsconfig.json"),
    {
      ...{ noEmit: false, declaration: true, emitDeclarationOnly: true, incremental: false },
      // Whether the types are right is for the typecheck to say, over everything.
      noCheck: true,
      ...{ tsBuildInfoFile: undefined, types: [], lib: ["lib.es2022.d.ts"], rootDir: SOURCE },
    },
    { ...ts.sys, onUnRecoverableConfigFileDiagnostic: complain },
  )!;
  errors.forEach(complain);
  const program = ts.createProgram(
    LIBRARY.map((file) => join(ROOT, file)),
    { ...options, outDir: SOURCE },
  );
  const texts = new Map<string, string>();
  const { diagnostics } = program.emit(undefined, (path, text) => {
    texts.set(relative(SOURCE, path), withEndings(text, dirname(path)));
  });
  diagnostics.forEach(complain);
  return texts;
}

/** Names files with their endings, which Node's own way of resolving asks for. */
const withEndings = (text: string, folder: string) =>
  text.replace(
    /(\bfrom |\bimport\()"(\.[^"]*)"/g,
    (_all, before: string, path: string) => `${before}"${builtName(folder, path)}"`,
  );

function complain(diagnostic: ts.Diagnostic): void {
  throw new Error(ts.flattenDiagnosticMessageText(diagnostic.messageText, "\n"));
}
