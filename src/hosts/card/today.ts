import type { Card, CardLift } from "../../cards/card";
import { plannedLoad, sideFor } from "../../cards/loads";
import { element } from "../../elements/element";
import { plateWords, shown } from "./words";

/** Today's planned sets, the chosen lift's marked; a tap on one chooses its lift. */
export function todayList(
  card: Card,
  chosen: CardLift,
  choose: (lift: CardLift) => void,
): HTMLElement {
  return element(
    "section",
    { "aria-labelledby": "today" },
    element("h2", { id: "today" }, "Today"),
    element(
      "ul",
      { className: "today" },
      ...card.today.map((planned) => {
        const load = plannedLoad(card, planned);
        const lift = card.lifts.find(({ name }) => name === planned.lift);
        const button = element(
          "button",
          {
            type: "button",
            className: "planned",
            "aria-current": planned.lift === chosen.name ? "true" : "false",
          },
          element("span", { className: "what" }, planned.lift),
          element(
            "span",
            { className: "how" },
            `${planned.sets} × ${planned.reps}, leave ${shown(planned.reserve)}`,
          ),
          element("strong", {}, load === undefined ? "–" : `${shown(load)} ${card.unit}`),
          element(
            "span",
            { className: "plates" },
            load === undefined ? "too many reps for this chart" : plateWords(sideFor(card, load)),
          ),
        );
        if (lift) button.addEventListener("click", () => choose(lift));
        return element("li", {}, button);
      }),
    ),
  );
}
