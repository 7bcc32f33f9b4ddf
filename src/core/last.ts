/** The last of a list that is not empty. (`Array.at` is too new for some of the engines that load us.) */
export function last<T>(list: readonly T[]): T {
  const item = list[list.length - 1];
  if (item === undefined) throw new Error("an empty list has no last item");
  return item;
}
