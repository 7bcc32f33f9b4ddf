import type { Configuration } from "webpack";
import { filesAlone } from "./emitting";
import { declarationsOf } from "./library/declarations";
import { modulesOf } from "./library/modules";
import { licencesOf } from "./notices";

/** What the package gives to a program: modules that a bundler can shake, their types, and the licences of others. */
export const libraryConfig = (): Configuration => ({
  ...filesAlone("library", async (emit) => {
    const { modules, others } = await modulesOf();
    for (const [path, text] of [...modules, ...declarationsOf()]) emit(`library/${path}`, text);
    emit("licences/library.txt", licencesOf(others));
  }),
  // Whoever uses it may read it; their bundler makes it small.
  optimization: { minimize: false },
});
