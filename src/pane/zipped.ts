import { strToU8, zipSync } from "fflate";

/** Files of text in one archive. */
export function zipped(
  files: readonly { readonly name: string; readonly text: string }[],
): Uint8Array<ArrayBuffer> {
  const archive = zipSync(Object.fromEntries(files.map(({ name, text }) => [name, strToU8(text)])));
  return new Uint8Array(archive);
}
