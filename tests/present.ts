/*
 * What must be there for a test to say anything. Each of these stops the test and says what is missing, where a plain
 * index would carry an undefined on.
 */

/** The element in a place of a list, counted from 0. */
export function elementAt<T>(list: ArrayLike<T>, place: number): T {
  const element = list[place];
  if (element === undefined) throw new Error(`no element ${place} in a list of ${list.length}`);
  return element;
}

/** The cell in a row and a column of a grid, counted from 0. */
export const cellAt = <T>(rows: ArrayLike<ArrayLike<T>>, row: number, column: number): T =>
  elementAt(elementAt(rows, row), column);

/** The last element of a list. */
export const lastOf = <T>(list: ArrayLike<T>): T => elementAt(list, list.length - 1);

/** The only element of a list. */
export function only<T>(list: ArrayLike<T>): T {
  if (list.length !== 1) throw new Error(`${list.length} elements instead of one`);
  return elementAt(list, 0);
}

/** What stands under a name. */
export function named<T>(things: Readonly<Record<string, T>>, name: string): T {
  const thing = things[name];
  if (thing === undefined) throw new Error(`no ${name} among ${Object.keys(things).join(", ")}`);
  return thing;
}

/** What the first group of a pattern catches, match by match. */
export const caught = (text: string, pattern: RegExp): string[] =>
  [...text.matchAll(pattern)].map((match) => elementAt(match, 1));
