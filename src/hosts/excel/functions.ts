/** The bundle that Excel's JavaScript-only runtime loads: no DOM, no network, nothing but CustomFunctions. */
import { implementations } from "../../functions/implementations";
import { toExcel } from "./result";
import type { CustomFunctionsHost } from "./runtime";

declare const CustomFunctions: CustomFunctionsHost;

for (const [id, implementation] of Object.entries(implementations)) {
  CustomFunctions.associate(id, (...args) => toExcel(implementation(...args), CustomFunctions));
}
