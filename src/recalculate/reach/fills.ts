import type { Area } from "../../formula/address";
import type { FormulaCell } from "../book";
import { indexAreas, type AreaIndex } from "./areaIndex";

/** Finds formulas by the cells they fill. */
export type Fills = AreaIndex<FormulaCell>;

/** What formulas fill, or are said to. */
export const indexFills = (
  formulas: Iterable<FormulaCell>,
  areaOf: (cell: FormulaCell) => Area = ({ area }) => area,
): Fills => indexAreas(formulas, (cell) => ({ sheet: cell.sheet.name, area: areaOf(cell) }));
