/** The pictures that the pane offers, in the order it offers them. */
import { athleteChanges } from "./athleteChanges";
import { blocksCompared } from "./blocksCompared";
import { doseResponse } from "./doseResponse";
import { forest } from "./forest";
import { groupChanges } from "./groupChanges";
import type { Picture } from "./picture";
import { reserveAgreement } from "./reserveAgreement";
import { squadRises } from "./squadRises";
import { strengthTrend } from "./strengthTrend";
import { weeklyLoad } from "./weeklyLoad";

export { isProblem, type Cells, type DrawOptions, type Picture, type Problem } from "./picture";
export { svgToPng } from "./png";

export const pictures: readonly Picture[] = [
  strengthTrend,
  squadRises,
  blocksCompared,
  weeklyLoad,
  reserveAgreement,
  athleteChanges,
  groupChanges,
  forest,
  doseResponse,
];
