import { onlyCell } from "../../cells";
import type { CatalogueFunction } from "../../functions/catalogue";
import { callOf, typedIn } from "../formula/call";
import { formatsIn } from "../insert/insertion";
import { planInsertion } from "../insert/plan";
import { work } from "../formula/work";
import type { PaneContext } from "./context";
import { element } from "../../elements/element";
import { argumentForm } from "./form";
import { cellText, gridTable } from "./grid";

/** One function: what it is for, a form that makes a formula of it, an example, and its sources. */
export function functionView(
  entry: CatalogueFunction,
  context: PaneContext,
  back: () => void,
  open: (id: string) => void,
): HTMLElement {
  const backButton = element(
    "button",
    { type: "button", className: "plain" },
    "‹ Back to the list",
  );
  backButton.addEventListener("click", back);
  const form = argumentForm(entry, context, open);
  const view = element(
    "article",
    {},
    backButton,
    element("h2", { tabIndex: -1 }, entry.id),
    element("p", {}, entry.description),
    form.element,
    ...entry.examples.map((formula) => example(entry, formula, context, form.fill)),
    aside("Result", entry.returns),
    aside("Errors", entry.errors),
    aside("Source", entry.source),
    element(
      "details",
      {},
      element("summary", {}, "Cautions"),
      element("ul", {}, ...context.data.cautions.map((text) => element("li", {}, text))),
    ),
    element(
      "p",
      {},
      element(
        "a",
        { href: `${context.helpPage}#${entry.id}`, target: "_blank", rel: "noopener" },
        `${entry.id} in the help`,
      ),
    ),
  );
  view.addEventListener("keydown", (event) => {
    if (event.key === "Escape") back();
  });
  return view;
}

const aside = (title: string, text: string) =>
  element("section", {}, element("h3", {}, title), element("p", {}, text));

/** Where an example would go, to show it as it would look there: a sheet that has nothing yet. */
const NEW_SHEET = { sheet: "", address: "A1", filled: false, inTable: false };
const EMPTY = {
  readRange: () => Promise.resolve([]),
  firstFilled: () => Promise.resolve(undefined),
};

/** A formula of the catalogue with what it gives, worked here and now; one press puts it in the form. */
function example(
  entry: CatalogueFunction,
  formula: string,
  { data, port, implementations }: PaneContext,
  fill: (typed: Readonly<Record<string, string>>) => void,
): HTMLElement {
  const shown = element("div");
  const section = element(
    "section",
    { className: "example" },
    element("h3", {}, "Example"),
    element("p", {}, element("code", {}, formula)),
    shown,
  );
  const typed = typedIn(entry, formula);
  if (typed === undefined) return section;
  const call = callOf(entry, typed);
  if (call.args.every(({ kind }) => kind !== "cells" && kind !== "formula")) {
    void work(call, port, implementations).then(async (worked) => {
      if (worked.kind !== "result") return;
      const plan = await planInsertion(call, worked, NEW_SHEET, { data, port: EMPTY });
      const insertion = "insertion" in plan ? plan.insertion : undefined;
      const only = onlyCell(worked.grid);
      shown.replaceChildren(
        only === undefined
          ? gridTable(worked.grid, "What the example gives", insertion)
          : element(
              "p",
              {},
              "gives ",
              element("strong", {}, cellText(only, formatsIn(insertion)(0, 0))),
            ),
      );
    });
    const use = element("button", { type: "button", className: "plain" }, "Put it in the form");
    use.addEventListener("click", () => fill(typed));
    section.append(use);
  }
  return section;
}
