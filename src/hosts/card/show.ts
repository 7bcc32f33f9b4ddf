import cautions from "../../../shared/cautions.json";
import type { Card, CardLift } from "../../cards/card";
import { calculator } from "./calculator";
import { chart } from "./chart";
import { element } from "../../elements/element";
import { dayShown, shown } from "./words";
import { memoryOf } from "./memory";
import { todayList } from "./today";

/** Lays a card out: who, which lift, what is planned, what a set said, and the chart. */
export function show(page: HTMLElement, card: Card): void {
  const memory = memoryOf(card);
  const body = element("div");
  let chosen = card.lifts.find(({ name }) => name === memory.recall("lift")) ?? card.lifts[0]!;
  document.title = `${card.name}: lifting card`;

  const choose = (lift: CardLift): void => {
    chosen = lift;
    memory.keep("lift", lift.name);
    draw();
  };
  const draw = (): void => {
    body.replaceChildren(
      ...(card.lifts.length > 1 ? [liftPicker(card, chosen, choose)] : []),
      element(
        "p",
        { className: "maximum" },
        element("span", {}, `${chosen.name}, one-rep max`),
        element("strong", {}, `${shown(chosen.oneRepMax)} ${card.unit}`),
      ),
      ...(card.today.length > 0 ? [todayList(card, chosen, choose)] : []),
      calculator(card, chosen, memory),
      chart(card, chosen),
    );
  };
  draw();
  page.replaceChildren(
    element("h1", {}, card.name),
    element(
      "p",
      { className: "made" },
      `Loads in ${card.unit}, in steps of ${shown(card.increment)}. Made ${dayShown(card.made)}.`,
    ),
    cautionsLine(),
    body,
    forget(() => {
      memory.forget();
      draw();
    }),
  );
}

function liftPicker(card: Card, chosen: CardLift, choose: (lift: CardLift) => void): HTMLElement {
  return element(
    "div",
    { className: "lifts", role: "group", "aria-label": "Lift" },
    ...card.lifts.map((lift) => {
      const button = element(
        "button",
        { type: "button", "aria-pressed": String(lift === chosen) },
        lift.name,
      );
      button.addEventListener("click", () => {
        choose(lift);
        // The buttons were drawn anew: whoever works by keys stays where they were.
        document.querySelector<HTMLElement>('.lifts [aria-pressed="true"]')?.focus();
      });
      return button;
    }),
  );
}

/** In short on the first screen, in full one tap away. */
function cautionsLine(): HTMLElement {
  return element(
    "details",
    { className: "cautions" },
    element(
      "summary",
      {},
      "An estimate is not a clearance to lift. Use spotters or safeties; stop at pain. ",
      element("span", { className: "more" }, "Read all"),
    ),
    element("ul", {}, ...cautions.map((caution) => element("li", {}, caution))),
  );
}

function forget(onForget: () => void): HTMLElement {
  const said = element("span", { role: "status" });
  const button = element("button", { type: "button", className: "forget" }, "Forget what I typed");
  button.addEventListener("click", () => {
    onForget();
    said.textContent = "Forgotten.";
  });
  return element(
    "p",
    { className: "kept" },
    "What you type stays on this phone. ",
    button,
    " ",
    said,
  );
}
