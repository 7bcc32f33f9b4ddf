import type { BaseFunction } from "@univerjs/engine-formula";
import { cellByCell } from "./plain";
import { wrongValue } from "./numbers";

/** A picture from an address would tell its server what a cell holds, so none is fetched. */
export const image = (): BaseFunction => cellByCell("IMAGE", [1, 5], () => wrongValue);
