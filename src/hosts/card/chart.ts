import type { Card, CardLift } from "../../cards/card";
import { CHART_RESERVES, chartOf } from "../../cards/loads";
import { element } from "../../elements/element";
import { shown } from "./words";

/** The chart of a lift: reps down, reps left across, the load in each cell. */
export function chart(card: Card, lift: CardLift): HTMLElement {
  return element(
    "section",
    { "aria-labelledby": "chart" },
    element("h2", { id: "chart" }, `${lift.name}, ${card.unit}`),
    element(
      "table",
      {},
      element("caption", {}, "Reps down, reps left in reserve across"),
      element(
        "thead",
        {},
        element(
          "tr",
          {},
          element("th", { scope: "col" }, "reps"),
          ...CHART_RESERVES.map((reserve) =>
            element("th", { scope: "col", "aria-label": `${reserve} left` }, String(reserve)),
          ),
        ),
      ),
      element(
        "tbody",
        {},
        ...chartOf(card, lift).map(({ reps, loads }) =>
          element(
            "tr",
            {},
            element("th", { scope: "row", "aria-label": `${reps} reps` }, String(reps)),
            ...loads.map((load) => element("td", {}, load === undefined ? "" : shown(load))),
          ),
        ),
      ),
    ),
  );
}
