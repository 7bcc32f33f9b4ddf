/** The kinds of picture that browsers show and workbooks hold, by the ending of their files. */
const typesByEnding: ReadonlyMap<string, string> = new Map([
  ["png", "image/png"],
  ["jpeg", "image/jpeg"],
  ["jpg", "image/jpeg"],
  ["gif", "image/gif"],
  ["bmp", "image/bmp"],
]);

/** A picture's bytes and the ending of its file. */
export interface ImageFile {
  readonly bytes: Uint8Array;
  readonly ending: string;
}

/** The media type of a picture in a file of that name; nothing for what a browser does not show. */
export function imageTypeOf(path: string): string | undefined {
  return typesByEnding.get(endingOf(path).toLowerCase());
}

/** What follows the last dot of a file's name. */
export function endingOf(path: string): string {
  return /[^.]*$/.exec(path)![0];
}

/** A picture as an address that holds the whole of it. */
export function toDataAddress(type: string, bytes: Uint8Array): string {
  let binary = "";
  // In pieces: a function takes only so many arguments.
  for (let start = 0; start < bytes.length; start += piece) {
    binary += String.fromCharCode(...bytes.subarray(start, start + piece));
  }
  return `data:${type};base64,${btoa(binary)}`;
}

const piece = 0x8000;

/** The picture in such an address; nothing where it is some other address. */
export function fromDataAddress(address: string): ImageFile | undefined {
  const [, type, base64] = /^data:(image\/[a-z]+);base64,([\w+/=]+)$/.exec(address) ?? [];
  const ending = [...typesByEnding].find(([, each]) => each === type)?.[0];
  if (base64 === undefined || ending === undefined) return undefined;
  const binary = atob(base64);
  const bytes = new Uint8Array(binary.length);
  for (let at = 0; at < bytes.length; at++) bytes[at] = binary.charCodeAt(at);
  return { bytes, ending };
}
