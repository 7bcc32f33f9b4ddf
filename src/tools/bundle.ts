import type { Configuration } from "webpack";
import webpack from "webpack";

/** Runs webpack over several configurations; rejects with what it says when one of them fails. */
export async function bundle(configurations: Configuration[]): Promise<void> {
  const compiler = webpack(configurations);
  await new Promise<void>((resolve, reject) => {
    compiler.run((error, stats) => {
      if (error) reject(error);
      else if (stats?.hasErrors()) reject(new Error(stats.toString("errors-only")));
      else resolve();
    });
  });
  await new Promise((closed) => compiler.close(closed));
}
