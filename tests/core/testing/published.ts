import { dataSet } from "../../reference/rows";

const numbers = (name: string) => dataSet(name) as number[];

/** Student 1908, Biometrika 6:1-25 (R's `sleep`), 10 added to both columns. */
export const sleep = { before: numbers("sleep.before"), after: numbers("sleep.after") };

/** Weir 2005, J Strength Cond Res 19:231-240, data set A: a row an athlete, a column a trial. */
export const weir = sideBySide("weir.trial1", "weir.trial2");

/** Shrout and Fleiss 1979, Psychol Bull 86:420-428: a row a target, a column a judge. */
export const ratings = dataSet("shrout-fleiss.ratings") as number[][];

/** Bland and Altman 1986, Lancet i:307-310: peak flow, two readings of each meter. */
export const wright = sideBySide("peak-flow.wright1", "peak-flow.wright2");
export const mini = sideBySide("peak-flow.mini1", "peak-flow.mini2");

/** Potthoff and Roy 1964, Biometrika 51:313-326 (R's `nlme::Orthodont`): a distance at two ages. */
export function orthodont(sex: "boys" | "girls", first: number, last: number) {
  const group = dataSet("orthodont.group") as string[];
  const at = (age: number) => numbers(`orthodont.age${age}`).filter((_, i) => group[i] === sex);
  return { name: sex, before: at(first), after: at(last) };
}

function sideBySide(...names: string[]): number[][] {
  const columns = names.map(numbers);
  return columns[0]!.map((_, row) => columns.map((column) => column[row]!));
}
