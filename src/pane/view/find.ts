import type { CatalogueFunction } from "../../functions/catalogue";
import { familyTitle } from "../../functions/familyTitle";
import { firstSentence } from "../../functions/firstSentence";
import { createSearch } from "../search/search";
import type { View } from "./context";
import { element, liveLine, newId } from "./elements";
import { functionView } from "./function";

/** Search in plain words, or the families to browse; a function that is chosen takes the view over. */
export const findView: View = {
  name: "Find",
  build: (context) => {
    const { functions } = context.data.catalogue;
    const search = createSearch(functions, context.data.phrases);
    const count = liveLine("quiet");
    const results = element("div");
    const inputId = newId("search");
    const input = element("input", {
      id: inputId,
      type: "search",
      autocomplete: "off",
      placeholder: "how much for five reps with two left",
    });
    const list = element(
      "div",
      {},
      element("label", { htmlFor: inputId }, "What do you want to know?"),
      input,
      count,
      results,
    );
    const chosen = element("div", { hidden: true });

    const open = (entry: CatalogueFunction) => {
      const from = document.activeElement;
      const back = () => {
        chosen.hidden = true;
        list.hidden = false;
        chosen.replaceChildren();
        if (from instanceof HTMLElement) from.focus();
      };
      const view = functionView(entry, context, back, (id) => {
        const other = functions.find((each) => each.id === id);
        if (other) open(other);
      });
      chosen.replaceChildren(view);
      list.hidden = true;
      chosen.hidden = false;
      view.querySelector("h2")?.focus();
    };

    const update = () => {
      const question = input.value.trim();
      if (question === "") {
        count.textContent = "";
        results.replaceChildren(...families(functions, open));
        return;
      }
      const found = search(question)
        .slice(0, SHOWN)
        .map((id) => functions.find((entry) => entry.id === id)!);
      count.textContent = foundText(found);
      results.replaceChildren(functionList(found, open));
    };
    input.addEventListener("input", update);
    input.addEventListener("keydown", (event) => {
      if (event.key === "Enter") results.querySelector<HTMLElement>("button")?.click();
    });
    update();
    return element("div", {}, list, chosen);
  },
};

/** The rest of a long list is further from what was asked than another way of asking. */
const SHOWN = 8;

function foundText(found: readonly CatalogueFunction[]): string {
  const [first] = found;
  if (!first) return "Nothing found. Say it in other words, or empty the field to browse.";
  const likeliest = `The likeliest is ${first.id}.`;
  return found.length === 1 ? likeliest : `${found.length} found. ${likeliest}`;
}

type Open = (entry: CatalogueFunction) => void;

function families(functions: readonly CatalogueFunction[], open: Open): HTMLElement[] {
  const names = [...new Set(functions.map(({ family }) => family))];
  return names.map((name) =>
    element(
      "section",
      {},
      element("h2", {}, familyTitle(name)),
      functionList(
        functions.filter(({ family }) => family === name),
        open,
      ),
    ),
  );
}

function functionList(functions: readonly CatalogueFunction[], open: Open): HTMLElement {
  const items = functions.map((entry) => {
    const button = element(
      "button",
      { type: "button", className: "entry" },
      element("strong", {}, entry.id),
      element("span", {}, firstSentence(entry.description)),
    );
    button.addEventListener("click", () => open(entry));
    return element("li", {}, button);
  });
  return element("ul", { className: "entries" }, ...items);
}
