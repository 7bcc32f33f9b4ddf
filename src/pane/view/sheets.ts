import { reading } from "../../readySheets/ownList";
import type { SheetOffer } from "../data";
import { LIST_WORDS, ownList } from "../ownList";
import type { PaneContext, View } from "./context";
import { element } from "../../elements/element";
import { liveLine, tell } from "./elements";

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
        "Each is added to the end of your workbook. Where it can read a list of yours, select that " +
          "first; else it has an invented squad's numbers in the tinted cells, for yours to take " +
          "their place. All formulas are live and in sight.",
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

function item(offer: SheetOffer, context: PaneContext): HTMLElement {
  const status = liveLine("said");
  const button = element(
    "button",
    { type: "button", "aria-label": `Add the sheet ${offer.title}` },
    "Add",
  );
  button.addEventListener("click", () => {
    button.disabled = true;
    void added(offer, context)
      .then(
        (text) => tell(status, text),
        (error: unknown) => tell(status, `It could not be added: ${reasonOf(error)}`, "failed"),
      )
      .then(() => {
        button.disabled = false;
        button.focus();
      });
  });
  const { own } = offer.sheet;
  const shown = element(
    "li",
    {},
    element(
      "div",
      {},
      element("h3", {}, offer.title),
      element("p", {}, offer.purpose),
      own && element("p", { className: "quiet" }, `Reads ${LIST_WORDS[own.list]}.`),
    ),
    button,
    status,
  );
  shown.dataset["sheet"] = offer.id;
  return shown;
}

/** Adds a sheet, reading the selected list where it is one that the sheet asks for, and says which it was. */
async function added({ sheet }: SheetOffer, { port, data }: PaneContext): Promise<string> {
  const { own } = sheet;
  if (own === undefined) return `Added as “${await port.addSheet(sheet)}”.`;
  const selection = await port.readSelection();
  const columns = await ownList(own.list, selection, data.headings, port);
  if (columns !== undefined) {
    const name = await port.addSheet(reading(own, columns));
    return `Added as “${name}”. It reads ${selection.sheet}!${selection.address}, and the rows below as they come.`;
  }
  const name = await port.addSheet(sheet);
  return `Added as “${name}”, with invented numbers. For yours, select ${LIST_WORDS[own.list]}, and add it again.`;
}

const reasonOf = (error: unknown) => (error instanceof Error ? error.message : String(error));
