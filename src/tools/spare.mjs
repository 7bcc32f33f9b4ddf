/**
 * `npm run spare`: the built command line where it is fresh, and its source where it is not. Fresh is a built file that
 * no file of the sources and no list of packages is newer than, which takes some hundredths of a second to find out.
 */
import { launched } from "./launched.mjs";

const { href } = launched(new URL("../../", import.meta.url));

if (href.endsWith(".ts")) {
  const { register } = await import("tsx/esm/api");
  register();
}
await import(href);
