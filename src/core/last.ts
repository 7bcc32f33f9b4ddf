/** The last of a list that is not empty. (`Array.at` is too new for some of the engines that load us.) */
export const last = <T>(list: readonly T[]): T => list[list.length - 1];
