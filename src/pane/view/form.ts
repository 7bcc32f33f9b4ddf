import { onlyCell } from "../../cells";
import type { CatalogueFunction } from "../../functions/catalogue";
import { callOf, formulaOf, missing, type Typed } from "../formula/call";
import { dealColumns } from "../formula/columns";
import { referenceTo } from "../formula/reference";
import { work, type Worked } from "../formula/work";
import type { Target } from "../port";
import type { PaneContext } from "./context";
import { element, liveLine, tell } from "./elements";
import { field } from "./field";
import { cellText, gridTable } from "./grid";

export interface ArgumentForm {
  readonly element: HTMLElement;
  /** Puts these into the fields, and empties the others. */
  readonly fill: (typed: Typed) => void;
}

/** A field for each argument; under them the formula, what it gives, and the button that inserts it. */
export function argumentForm(entry: CatalogueFunction, context: PaneContext): ArgumentForm {
  const { port, data, implementations } = context;
  const formula = element("code", { className: "formula" });
  const preview = element("div", { className: "preview", role: "status" });
  const place = element("p", { className: "quiet" });
  const said = liveLine("said");
  const insert = element("button", { type: "submit", className: "main" }, "Insert");
  let target: Target | undefined;

  const fields = entry.parameters.map((parameter) => field(parameter, data.catalogue.enums));
  const typed = (): Typed =>
    Object.fromEntries(fields.map(({ name, read }) => [name, read()] as const));
  const fill = (values: Typed) => {
    for (const { name, write } of fields) write(values[name] ?? "");
    update();
  };

  // What was typed last is what is shown, whichever answer comes first.
  let turn = 0;
  function update(): void {
    const call = callOf(entry, typed());
    const lacking = missing(call);
    formula.textContent = formulaOf(call, target?.sheet ?? "");
    insert.disabled = lacking.length > 0;
    const mine = ++turn;
    if (lacking.length > 0) {
      preview.replaceChildren(element("p", { className: "quiet" }, stillNeeded(lacking)));
      return;
    }
    setTimeout(() => {
      if (mine !== turn) return;
      void work(call, port, implementations).then((worked) => {
        if (mine === turn) preview.replaceChildren(...resultOf(worked));
      });
    }, PAUSE);
  }

  async function updateTarget(): Promise<void> {
    target = await port.readTarget().catch(() => undefined);
    showTarget();
  }

  function showTarget(): void {
    if (!target) {
      place.textContent = "Select the cell that the formula is to go into.";
      return;
    }
    const hints = tableHints(target, entry, typed());
    place.replaceChildren(targetText(target), ...hints.map((hint) => element("span", {}, hint)));
    insert.textContent = target.filled
      ? `Replace ${target.address}`
      : `Insert in ${target.address}`;
  }

  const unreadable = (error: unknown) => {
    tell(said, `The selection cannot be read: ${reasonOf(error)}`, "failed");
  };

  const form = element(
    "form",
    { noValidate: true, className: "arguments" },
    dealButton(),
    ...fields.map((each) => each.element),
    element("h3", {}, "Formula"),
    formula,
    preview,
    place,
    insert,
    said,
  );

  function dealButton(): HTMLElement | undefined {
    if (entry.parameters.length < 2) return undefined;
    const button = element("button", { type: "button" }, "Fill from the selected columns");
    button.addEventListener("click", () => {
      void port.readSelection().then((selection) => {
        const dealt = dealColumns(entry.parameters, selection, data.headings);
        const names = Object.keys(dealt);
        for (const { name, write } of fields) {
          const columns = dealt[name];
          if (columns !== undefined) write(columns);
        }
        if (names.length > 0) tell(said, `Filled ${names.join(", ")}.`);
        else tell(said, "No selected column has a heading that fits an argument.", "failed");
        update();
      }, unreadable);
    });
    return button;
  }

  for (const each of fields) {
    each.onSelectionWanted(() => {
      void port.readSelection().then(({ sheet, address }) => {
        each.write(referenceTo(sheet, address));
        update();
      }, unreadable);
    });
  }
  form.addEventListener("input", update);
  form.addEventListener("change", () => {
    update();
    showTarget();
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (insert.disabled) return;
    void insertNow();
  });

  async function insertNow(): Promise<void> {
    const announced = target;
    await updateTarget();
    if (!target) return;
    // The selection may have moved since it was last heard of, and nothing is overwritten unasked.
    const wasSaid = announced?.filled && announced.address === target.address;
    if (target.filled && !wasSaid) {
      tell(said, "The cell now holds something. Press again to replace it.", "failed");
      return;
    }
    try {
      await port.insertFormula(formulaOf(callOf(entry, typed()), target.sheet));
      tell(said, `Inserted in ${referenceTo(target.sheet, target.address)}.`);
    } catch (error) {
      tell(said, `It could not be inserted: ${reasonOf(error)}`, "failed");
    }
    await updateTarget();
  }

  port.onSelectionChange(() => {
    if (form.isConnected) void updateTarget().then(update);
  });
  void updateTarget().then(update);
  return { element: form, fill };
}

/** How long, in milliseconds, the keys have to rest before the result is worked out and read out. */
const PAUSE = 150;

const reasonOf = (error: unknown) => (error instanceof Error ? error.message : String(error));

const stillNeeded = (names: readonly string[]) => `Still needed: ${names.join(", ")}.`;

const targetText = ({ sheet, address, filled }: Target) =>
  filled
    ? `${referenceTo(sheet, address)} holds something, which the formula would replace. `
    : `The formula goes into ${referenceTo(sheet, address)}. `;

/** Inside a Table one formula is one cell: say how to get there. */
function tableHints(target: Target, { parameters }: CatalogueFunction, typed: Typed): string[] {
  if (!target.inTable) return [];
  const part = parameters.find(({ name }) => name === "part");
  if (!part) return ["It is in a Table, where results do not spill: point at single cells."];
  if (typed.part) return [];
  return ["It is in a Table, where results do not spill: choose one value under “part”."];
}

function resultOf(worked: Worked): HTMLElement[] {
  switch (worked.kind) {
    case "unknown":
      return [element("p", { className: "quiet" }, `No preview: ${worked.reason}.`)];
    case "error":
      return [
        element(
          "p",
          { className: "trouble" },
          element("strong", {}, worked.code),
          ` ${worked.message}`,
        ),
      ];
    case "result": {
      const only = onlyCell(worked.grid);
      if (only === undefined) return [gridTable(worked.grid, "What the formula gives")];
      if (only === "")
        return [element("p", { className: "quiet" }, "Nothing yet: a cell is blank.")];
      return [element("p", {}, "gives ", element("output", {}, cellText(only)))];
    }
  }
}
