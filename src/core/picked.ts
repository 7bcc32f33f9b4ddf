/** The items of a list at some places, in the order of these. */
export function picked<T>(list: readonly T[], places: readonly number[]): T[] {
  return places.map((place) => {
    const item = list[place];
    if (item === undefined) throw new Error(`a list of ${list.length} has no place ${place}`);
    return item;
  });
}
