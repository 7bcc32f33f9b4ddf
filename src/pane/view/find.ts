import type { CatalogueFunction } from "../../functions/catalogue";
import { familyTitle } from "../../functions/familyTitle";
import { findables, KINDS, type Findable } from "../search/findable";
import { createSearch } from "../search/search";
import type { View } from "./context";
import { element } from "../../elements/element";
import { liveLine, newId } from "./elements";
import { functionView } from "./function";

/**
 * Search in plain words for functions, ready sheets and pictures, or the families of functions to browse. A
 * function that is chosen takes the view over; a sheet or a picture is shown in its own.
 */
export const findView: View = {
  name: "Find",
  build: (context, show) => {
    const { functions } = context.data.catalogue;
    const all = findables(context.data);
    const search = createSearch(all);
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

    const choose = (found: Findable) => {
      const entry = functions.find(({ id }) => found.kind === "function" && id === found.id);
      if (entry) open(entry);
      else show(found);
    };

    const update = () => {
      const question = input.value.trim();
      if (question === "") {
        count.textContent = "";
        results.replaceChildren(...families(functions, all, choose));
        return;
      }
      const found = search(question).slice(0, SHOWN);
      count.textContent = foundText(found);
      results.replaceChildren(foundList(found, choose, true));
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

function foundText(found: readonly Findable[]): string {
  const [first] = found;
  if (!first) return "Nothing found. Say it in other words, or empty the field to browse.";
  const likeliest = `The likeliest is ${first.name}.`;
  return found.length === 1 ? likeliest : `${found.length} found. ${likeliest}`;
}

type Choose = (found: Findable) => void;

function families(
  functions: readonly CatalogueFunction[],
  all: readonly Findable[],
  choose: Choose,
): HTMLElement[] {
  const names = [...new Set(functions.map(({ family }) => family))];
  const familyOf = new Map(functions.map(({ id, family }) => [id, family]));
  const within = (name: string) =>
    all.filter(({ kind, id }) => kind === "function" && familyOf.get(id) === name);
  return names.map((name) =>
    element(
      "section",
      {},
      element("h2", {}, familyTitle(name)),
      foundList(within(name), choose, false),
    ),
  );
}

/** A list to choose from, each marked for what it is where kinds are mixed. */
function foundList(found: readonly Findable[], choose: Choose, mixed: boolean): HTMLElement {
  const items = found.map((each) => {
    const button = element(
      "button",
      { type: "button", className: "entry" },
      element(
        "span",
        { className: "named" },
        element("strong", {}, each.name),
        mixed && element("span", { className: "quiet" }, KINDS[each.kind]),
      ),
      element("span", {}, each.summary),
    );
    button.addEventListener("click", () => choose(each));
    return element("li", {}, button);
  });
  return element("ul", { className: "entries" }, ...items);
}
