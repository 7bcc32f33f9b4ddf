/** The kinds of picture that browsers show and workbooks hold, by the ending of their files. */
export const IMAGE_TYPES: ReadonlyMap<string, string> = new Map([
  ["png", "image/png"],
  ["jpeg", "image/jpeg"],
  ["jpg", "image/jpeg"],
  ["gif", "image/gif"],
  ["bmp", "image/bmp"],
]);

/** The media type of a picture in a file of that name; nothing for what a browser does not show. */
export function imageTypeOf(path: string): string | undefined {
  return IMAGE_TYPES.get(endingOf(path).toLowerCase());
}

/** What follows the last dot of a file's name. */
export function endingOf(path: string): string {
  return /[^.]*$/.exec(path)![0];
}
