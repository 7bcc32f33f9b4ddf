import type { CatalogueFunction } from "../../functions/catalogue";
import { argumentWords } from "../formula/argumentWords";
import { callOf, formulaOf, missing, type Call, type Typed } from "../formula/call";
import { dealColumns } from "../formula/columns";
import { mixedColumns } from "../formula/mixed";
import { narrowed } from "../formula/narrowed";
import { referenceTo } from "../formula/reference";
import { work, type Worked } from "../formula/work";
import { planInsertion, type Plan } from "../insert/plan";
import type { Target } from "../port";
import type { PaneContext } from "./context";
import { element } from "../../elements/element";
import { liveLine, tell } from "./elements";
import { field } from "./field";
import { mixedQuestion } from "./mixedQuestion";
import { resultOf } from "./result";

export interface ArgumentForm {
  readonly element: HTMLElement;
  /** Puts these into the fields, and empties the others. */
  readonly fill: (typed: Typed) => void;
}

/** A field for each argument; under them the formula, what it gives, where it goes, and the button that inserts it. */
export function argumentForm(
  entry: CatalogueFunction,
  context: PaneContext,
  open: (id: string) => void,
): ArgumentForm {
  const { port, data, implementations } = context;
  const formula = element("code", { className: "formula" });
  const preview = element("div", { className: "preview", role: "status" });
  const place = element("p", { className: "quiet" });
  const said = liveLine("said");
  const insert = element("button", { type: "submit", className: "main" }, "Insert");
  let target: Target | undefined;
  let worked: Worked | undefined;
  let plan: Plan | undefined;

  const fields = entry.parameters.map((parameter) => field(parameter, data.catalogue.enums));
  const typed = (): Typed =>
    Object.fromEntries(fields.map(({ name, read }) => [name, read()] as const));
  const whose = mixedQuestion(
    data.catalogue.functions.find(({ id }) => id === ANSWERS_FOR_ALL && id !== entry.id),
    open,
    () => void update(),
  );
  const call = (): Call => narrowed(callOf(entry, typed()), whose.answers());
  const fill = (values: Typed) => {
    for (const { name, write } of fields) write(values[name] ?? "");
    whose.ask([]);
    void update();
  };

  // What was typed last is what is shown, whichever answer comes first.
  let turn = 0;
  /** Works the call out once the keys have rested, and finds its place; `said` no longer holds. */
  async function update(): Promise<void> {
    const mine = ++turn;
    tell(said, "");
    insert.disabled = true;
    const now = call();
    formula.textContent = formulaOf(now, target?.sheet ?? "");
    const lacking = missing(now);
    if (lacking.length > 0) {
      preview.replaceChildren(element("p", { className: "quiet" }, stillNeeded(lacking)));
      place.replaceChildren(...tableHints(target, entry, typed()));
      return;
    }
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
    if (mine !== turn) return;
    const result = await work(now, port, implementations);
    if (mine !== turn) return;
    worked = result;
    await updatePlace(mine);
  }

  /** Shows what the call gives; a preview that says nothing new is not read out again. */
  function showResult(result: Worked, planned?: Plan): void {
    const insertion = planned && "insertion" in planned ? planned.insertion : undefined;
    const shown = element("div", {}, ...resultOf(result, insertion));
    if (shown.innerHTML !== preview.innerHTML) preview.replaceChildren(...shown.childNodes);
  }

  async function updatePlace(mine: number): Promise<void> {
    const where = await port.readTarget().catch(() => undefined);
    if (mine !== turn) return;
    target = where;
    if (!target || !worked) {
      if (worked) showResult(worked);
      place.textContent = "Select the cell that the formula is to go into.";
      return;
    }
    const now = call();
    formula.textContent = formulaOf(now, target.sheet);
    plan = await planInsertion(now, worked, target, context).catch((error: unknown) => ({
      refused: `The sheet cannot be read: ${reasonOf(error)}`,
    }));
    if (mine !== turn) return;
    showResult(worked, plan);
    const hints = tableHints(target, entry, typed());
    const text = "refused" in plan ? plan.refused : plan.says;
    place.replaceChildren(text, ...hints.map((hint) => element("span", {}, ` ${hint}`)));
    insert.textContent = "refused" in plan ? "Insert" : plan.button;
    insert.disabled = "refused" in plan || whose.isOpen();
  }

  const unreadable = (error: unknown) => {
    tell(said, `The selection cannot be read: ${reasonOf(error)}`, "failed");
  };

  const form = element(
    "form",
    { noValidate: true, className: "arguments" },
    dealButton(),
    whose.element,
    ...fields.map((each) => each.element),
    element(
      "div",
      { className: "outcome" },
      element("h3", {}, "Formula"),
      formula,
      preview,
      place,
      insert,
      said,
    ),
  );

  function dealButton(): HTMLElement | undefined {
    if (entry.parameters.length < 2) return undefined;
    const button = element("button", { type: "button" }, "Fill from the selected columns");
    button.addEventListener("click", () => {
      void port.readSelection().then(async (selection) => {
        const dealt = dealColumns(entry.parameters, selection, data.headings);
        const names = Object.keys(dealt);
        for (const { name, write } of fields) {
          const columns = dealt[name];
          if (columns !== undefined) write(columns);
        }
        whose.ask(mixedColumns(entry.parameters, selection, data.headings));
        const filled = update();
        if (names.length > 0) tell(said, `Filled ${names.map(argumentWords).join(", ")}.`);
        else tell(said, "No selected column has a heading that fits an argument.", "failed");
        await filled;
      }, unreadable);
    });
    return button;
  }

  for (const each of fields) {
    each.onSelectionWanted(() => {
      void port.readSelection().then(({ sheet, address }) => {
        each.write(referenceTo(sheet, address));
        return update();
      }, unreadable);
    });
  }
  // Leaving a field says "change" once more, just before the button that was pressed is released.
  const updateIfNew = () => {
    if (formulaOf(call(), target?.sheet ?? "") !== formula.textContent) void update();
  };
  form.addEventListener("input", updateIfNew);
  form.addEventListener("change", updateIfNew);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (!insert.disabled) void insertNow();
  });

  async function insertNow(): Promise<void> {
    const announced = plan;
    await updatePlace(turn);
    if (!plan || "refused" in plan || !announced || "refused" in announced) return;
    // The selection may have moved since it was last heard of, and nothing is overwritten unasked.
    if (plan.button !== announced.button) {
      const again = plan.covers
        ? "The cell now holds something. Press again to replace it."
        : "The place has changed. Press again to insert there.";
      tell(said, again, "failed");
      return;
    }
    const { insertion } = plan;
    // It stays said although inserting itself moves the selection.
    const inserted = `Inserted in ${referenceTo(insertion.sheet, insertion.address)}.`;
    try {
      justInserted = insertion.address;
      await port.insert(insertion);
      tell(said, inserted);
    } catch (error) {
      tell(said, `It could not be inserted: ${reasonOf(error)}`, "failed");
    }
  }

  /** The cell just inserted into: as long as it is the selected one, what was said of it holds. */
  let justInserted: string | undefined;
  port.onSelectionChange(() => {
    if (!form.isConnected) return;
    void port.readTarget().then((now) => {
      if (now.address === justInserted) return undefined;
      justInserted = undefined;
      return now.address === target?.address && now.sheet === target.sheet ? undefined : update();
    });
  });
  void port
    .readTarget()
    .catch(() => undefined)
    .then((first) => {
      target = first;
      return update();
    });
  return { element: form, fill };
}

/** The function that answers row by row for every lifter what others answer for one. */
const ANSWERS_FOR_ALL = "SQUADTREND";

/** How long, in milliseconds, the keys have to rest before the result is worked out and read out. */
const PAUSE = 150;

const reasonOf = (error: unknown) => (error instanceof Error ? error.message : String(error));

const stillNeeded = (names: readonly string[]) =>
  `Still needed: ${names.map(argumentWords).join(", ")}.`;

/** Inside a Table one formula is one cell: say how to get there. */
function tableHints(
  target: Target | undefined,
  { parameters }: CatalogueFunction,
  typed: Typed,
): string[] {
  if (!target?.inTable) return [];
  const part = parameters.find(({ name }) => name === "part");
  if (!part) return ["It is in a Table, where results do not spill: point at single cells."];
  if (typed.part) return [];
  return ["It is in a Table, where results do not spill: choose one value under “part”."];
}
