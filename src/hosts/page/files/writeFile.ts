import { choosePlace, WORKBOOK_TYPE } from "./chosenFile";

/** Where a workbook went: a file that later saves write to as well, or the downloads. */
export type Written =
  { readonly to: "file"; readonly handle: FileSystemFileHandle } | { readonly to: "downloads" };

/**
 * Writes a workbook back to its file where it has one, else to a file that somebody chooses, else,
 * where the browser writes to no file, to the downloads. Nothing where they think better of it.
 */
export async function writeFileTo(
  handle: FileSystemFileHandle | undefined,
  name: string,
  bytes: () => Promise<Uint8Array>,
): Promise<Written | undefined> {
  const place = handle && (await mayWrite(handle)) ? handle : await choosePlace(name);
  if (place === undefined) return undefined;
  if (place === "unsupported") {
    download(await bytes(), name);
    return { to: "downloads" };
  }
  // The file keeps what it held until all of the new is written.
  const writable = await place.createWritable();
  try {
    await writable.write((await bytes()) as Uint8Array<ArrayBuffer>);
  } catch (error) {
    await writable.abort();
    throw error;
  }
  await writable.close();
  return { to: "file", handle: place };
}

interface AskedHandle extends FileSystemFileHandle {
  queryPermission?(mode: object): Promise<PermissionState>;
  requestPermission?(mode: object): Promise<PermissionState>;
}

async function mayWrite(handle: AskedHandle): Promise<boolean> {
  const mode = { mode: "readwrite" };
  if (!handle.queryPermission || !handle.requestPermission) return true;
  if ((await handle.queryPermission(mode)) === "granted") return true;
  return (await handle.requestPermission(mode)) === "granted";
}

function download(bytes: Uint8Array, name: string): void {
  const blob = new Blob([bytes as Uint8Array<ArrayBuffer>], { type: WORKBOOK_TYPE });
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  Object.assign(link, { href: address, download: name });
  link.click();
  // The browser has taken hold of the file by the time it does anything else.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
