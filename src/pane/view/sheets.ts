import type { SheetOffer } from "../data";
import type { PaneContext, View } from "./context";
import { element, liveLine, tell } from "./elements";

/** Ready sheets, each added to the user's own workbook with one press. */
export const sheetsView: View = {
  name: "Sheets",
  build: (context) => {
    return element(
      "div",
      {},
      element("h2", {}, "Ready sheets"),
      element(
        "p",
        {},
        "Each is added to the end of your workbook, with an invented squad's numbers in the " +
          "tinted cells. Put yours in their place. All formulas are live and in sight.",
      ),
      element(
        "ul",
        { className: "offers" },
        ...context.data.sheets.map((offer) => item(offer, context)),
      ),
    );
  },
  holds: "sheet",
  reveal: (panel, id) => {
    const button = panel.querySelector<HTMLElement>(`[data-sheet="${id}"] button`);
    button?.scrollIntoView({ block: "center" });
    button?.focus();
  },
};

function item(offer: SheetOffer, { port }: PaneContext): HTMLElement {
  const status = liveLine("said");
  const button = element(
    "button",
    { type: "button", "aria-label": `Add the sheet ${offer.title}` },
    "Add",
  );
  button.addEventListener("click", () => {
    button.disabled = true;
    void port
      .addSheet(offer.sheet)
      .then(
        (name) => tell(status, `Added as “${name}”.`),
        (error: unknown) => tell(status, `It could not be added: ${reasonOf(error)}`, "failed"),
      )
      .then(() => {
        button.disabled = false;
        button.focus();
      });
  });
  const shown = element(
    "li",
    {},
    element("div", {}, element("h3", {}, offer.title), element("p", {}, offer.purpose)),
    button,
    status,
  );
  shown.dataset["sheet"] = offer.id;
  return shown;
}

const reasonOf = (error: unknown) => (error instanceof Error ? error.message : String(error));
