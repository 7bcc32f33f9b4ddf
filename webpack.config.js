/**
 * `npm run build -- --env base=https://your.host/path/` says where dist/ will be hosted.
 *
 * The command line of webpack may `require` this file, so the rest is imported from inside: modules
 * that were loaded both ways would each have their own idea of a cell's error.
 */
export default async ({ base } = {}) => {
  const { configurations } = await import("./src/tools/configurations.ts");
  return configurations(base);
};
