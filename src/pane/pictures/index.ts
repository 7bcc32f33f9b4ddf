/** The pictures that the pane offers, in the order it offers them. */
import type { Picture } from "./picture";
import { strengthTrend } from "./strengthTrend";

export { isProblem, type Cells, type DrawOptions, type Picture, type Problem } from "./picture";
export { svgToPng } from "./png";

export const pictures: readonly Picture[] = [strengthTrend];
