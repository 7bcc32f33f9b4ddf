import "./card.css";
import { CardProblem, type Card } from "../../cards/card";
import { checkCard } from "../../cards/checkCard";
import { cardInFragment } from "../../cards/link";
import { element } from "../../elements/element";
import { show } from "./show";
import { keepAtHand } from "./offline";

/** Shows the card that this file holds, or else the one in the link it was opened by. */
function start(): void {
  const page = document.getElementById("page");
  if (!page) return;
  try {
    const card = cardHere();
    if (card) show(page, card);
    else page.replaceChildren(element("p", { className: "line" }, WITHOUT));
  } catch (error) {
    const reason = error instanceof CardProblem ? error.message : "it cannot be read";
    page.replaceChildren(
      element("p", { className: "line", role: "alert" }, `This is no card we can show: ${reason}.`),
      element("p", { className: "line" }, "Ask your coach for a new one."),
    );
  }
}

const WITHOUT =
  "This page shows a lifter's card from the link a coach sends. It opens no other way.";

function cardHere(): Card | undefined {
  const own = document.getElementById("card")?.textContent ?? "";
  if (own !== "") return checkCard(JSON.parse(own));
  return location.hash.length > 1 ? cardInFragment(location.hash) : undefined;
}

addEventListener("hashchange", start);
start();
keepAtHand();
