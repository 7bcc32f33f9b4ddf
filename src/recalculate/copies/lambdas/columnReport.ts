import { whereGood } from "./columns";
import { letting, type Names } from "./lambda";
import { chosenOf, LABEL_IN, oneLabel, reportOf } from "./lifted";

/**
 * A report on columns, or the parts of it that are named; nothing while an argument is not filled in. Where there are
 * too few rows to answer, that is said before what the others are not fit for.
 */
export const columnReport = (
  names: Names,
  waits: string,
  refused: string,
  parts: Names,
  unfit = "",
) => {
  const answer = `IF(named,${chosenOf(parts)},${reportOf(parts)})`;
  const fit = unfit === "" ? answer : `IF(${unfit},#VALUE!,${answer})`;
  return letting(
    { label: LABEL_IN, named: oneLabel(Object.keys(parts)), ...names },
    whereGood(`IF(${waits}>0,"",IF(${refused},#N/A,${fit}))`),
  );
};
